import { BAYES_SOURCE, REVIEW_DESIGN_SOURCE, REVIEW_SOURCE } from '../../tables/fieldwork/index.js'
import { PRACTICE, type Explanations } from './explanation.js'

/** Findings of the review of measured production. */
export const OUTPUT: Explanations = {
  'output.rows-out-of-order': {
    means: 'Some rows of the table stand before an earlier time; they were sorted.',
    rule: 'Exports that were joined by hand often look so.',
    sources: [PRACTICE],
    fix: 'Nothing, unless the times themselves are wrong.',
  },
  'output.rows-repeated': {
    means: 'Some times stand twice with the same value.',
    rule: 'Each time counts once.',
    sources: [PRACTICE],
    fix: 'Nothing.',
  },
  'output.rows-contradict': {
    means: 'Some times stand twice with different values; they were left out.',
    rule: 'Nobody can know from the table which one is right.',
    sources: [PRACTICE],
    fix: 'Find out which reading is right and delete the other.',
  },
  'output.meter-reset': {
    means: 'A counter that should only rise went back.',
    rule: 'It was reset or exchanged; what was made between the two readings is unknown and left out.',
    sources: [PRACTICE],
    fix: 'Nothing, or split the table at that place and add the lost energy by hand.',
  },
  'output.reading-impossible': {
    means: 'Some readings are more than the system can give, or below zero, and were left out.',
    rule: 'The rating of modules and inverters sets a bound that no weather passes.',
    sources: [REVIEW_SOURCE],
    fix: 'A value a thousand times too large is a slip of the unit: correct it in the file, or state --unit.',
  },
  'output.cells-empty': {
    means: 'Some rows hold no reading.',
    rule: 'An empty cell is not zero: the day counts as incomplete.',
    sources: [PRACTICE],
    fix: 'Nothing, or fill the gaps from another export.',
  },
  'output.weather-of-some-days': {
    means: 'The weather file covers a part of the measured days.',
    rule: 'Covered days are held against what is modelled from their own weather, the others against the long-term kinds of day of their month.',
    sources: [PRACTICE],
    fix: 'Nothing, or give a file that covers all measured days.',
  },
  'output.days-missing': {
    means: 'Some days lack complete readings and are not counted.',
    rule: 'Measured and expected energy are compared over the same days only.',
    sources: [PRACTICE],
    fix: 'Nothing, or fill the gaps from another export.',
  },
  'output.sign-outage': {
    means: 'Whole days, or bright hours of a day, have given nothing.',
    rule: 'Even the dullest day gives about a tenth of a clear one, so that nothing at all is no weather; in months of snow the chance of snow is weighed against it.',
    sources: [REVIEW_DESIGN_SOURCE],
    fix: 'Read the display of the inverter and its error memory, then look at breakers and labelled disconnects. Do not switch on again what has tripped; call an electrician.',
  },
  'output.sign-snow': {
    means: 'Days without output, or with little, in a season of snow.',
    rule: 'New snow of the month at the nearest built-in site, about a day of cover an inch, against two stops in a thousand days: our own judgement.',
    sources: [REVIEW_DESIGN_SOURCE, PRACTICE],
    fix: 'See from the ground whether snow lies on the modules. If none does, the system is off.',
  },
  'output.sign-string-or-inverter': {
    means: 'For a stretch of days the output is lower by the share of one inverter or one string.',
    rule: 'All days of the stretch are judged together against what each may have given; days that hang together count less. The limit lets about 3 healthy systems in a thousand through in a year.',
    sources: [REVIEW_DESIGN_SOURCE],
    fix: 'See whether that inverter is on and shows an error. Leave connectors on the roof to an electrician.',
  },
  'output.sign-module': {
    means: 'For a stretch of days the output is lower by about one to three modules.',
    rule: 'As for a string; so small a share shows only with the weather of the days, or over long stretches.',
    sources: [REVIEW_DESIGN_SOURCE],
    fix: 'Compare the modules with each other where the inverters show them; look for new shade from the ground.',
  },
  'output.sign-level-drop': {
    means: 'For a stretch of days the output is lower than in the others, by a share that fits no single part.',
    rule: 'All days of the stretch are judged together; a season may lie 13 % off the estimate (5 % with the weather of the days) without a sign.',
    sources: [REVIEW_DESIGN_SOURCE],
    fix: 'Compare inverters, strings and modules with each other; look for new shade and dirt.',
  },
  'output.sign-low-level': {
    means: 'The system has been below the estimate from the first day, by more than weather and method explain.',
    rule: 'Fewer than 3 healthy systems in a thousand give so little; weather, years and how sure the estimate is are in that.',
    sources: [REVIEW_DESIGN_SOURCE],
    fix: 'Compare modules, directions and shade with the project file, then inverters and strings with each other.',
  },
  'output.sign-shade': {
    means: 'At certain hours even clear weather gives too little beside the other hours of the same days.',
    rule: 'For two months in a row an hour is below 60 % of the best hours, each measured by what a clear day gives then.',
    sources: [REVIEW_DESIGN_SOURCE],
    fix: 'Look at these hours what throws shade: trees that have grown, a mast, a building. If it is to stay, put it into the scene of the project.',
  },
  'output.sign-trips': {
    means: 'The output falls to nothing in the sun and comes back within two hours, on several days.',
    rule: 'No cloud takes all; an inverter that leaves the utility because of its voltage, or an insulation or arc fault, does.',
    sources: [REVIEW_DESIGN_SOURCE, PRACTICE],
    fix: 'Stop, do not climb. If the error memory names ground, insulation or arc, switch off at the labelled place and call an electrician. Voltage too high is for the utility.',
  },
  'output.sign-degradation': {
    means: 'Days a year apart fall by clearly more than the loss with age that the project states.',
    rule: 'Year on year: the median change between days a year apart, its interval by drawing blocks of days anew; tested on simulated years only.',
    sources: [REVIEW_DESIGN_SOURCE],
    fix: 'Look for dirt that stays and shade that grows; hold the loss against the warranty of the modules.',
  },
  'output.sign-daylight-saving': {
    means: 'The clock of the readings is an hour later in summer than in winter.',
    rule: 'The middle of clear days is compared with the sun, apart for the months of daylight saving time.',
    sources: [REVIEW_SOURCE],
    fix: 'State --clock local.',
  },
  'output.sign-unit': {
    means: 'All days together are off by a factor that only a slip of the unit makes.',
    rule: 'A thousand, 3.6, or the part of an hour that an interval is.',
    sources: [PRACTICE],
    fix: 'Compare one reading with the display and state --unit.',
  },
  'output.worth-unknown': {
    means: 'Losses are told in kWh only, as the bill of the project cannot be worked out.',
    rule: 'A kWh is worth the difference of two yearly bills by the tariff; that wants tariff and usage.',
    sources: [PRACTICE],
    fix: 'State tariff and usage in the project file.',
  },
  'output.below-share': {
    means: 'The present output is below the share that --fail-below asks for.',
    rule: 'Present output over what is expected of the same days; days of faults that are over do not count.',
    sources: [REVIEW_DESIGN_SOURCE],
    fix: 'See the signs; without any, compare again with more days or with their weather.',
  },
  'output.dirt': {
    means: 'What clear days give falls from week to week, as dirt on the modules makes it.',
    rule: 'Clear days show the system without the luck of the weather. The fall must be larger than chance would make it.',
    sources: [REVIEW_SOURCE],
    fix: 'Look for dirt, leaves and growing plants from the ground, and see whether it recovers after heavy rain.',
  },
  'output.clock-shift': {
    means: 'On clear days the middle of the production does not fall where the sun puts it.',
    rule: 'The stamps may run on daylight saving time or UTC, or the azimuth of the roof may be wrong.',
    sources: [REVIEW_SOURCE],
    fix: 'State --clock and --stamps-mark as the data logger writes them, and check roof_planes.*.azimuth_deg.',
  },
  'output.module-dead': {
    means: 'One module has given nothing for days while its neighbours work.',
    rule: 'Compared with its neighbours under the same sky, only a fault explains it.',
    sources: [REVIEW_SOURCE],
    fix: 'Have its inverter, connectors and communication checked. A silent communication looks the same in the data.',
  },
  'output.module-weak': {
    means: 'One module gives clearly less than its place should give.',
    rule: 'It is compared with its neighbours and with the shade that the project file knows.',
    sources: [REVIEW_SOURCE],
    fix: 'Look for shade that the project file does not know, dirt on this module, or a failed part of it.',
  },
  'output.clipping': {
    means: 'The power stands at the same level for hours on several days.',
    rule: 'At the rating of the inverters that is as designed; below it something limits the power.',
    sources: [REVIEW_SOURCE],
    fix: 'Below the rating, ask the installer or utility for an export or power limit.',
  },
  'output.below-range': {
    means: 'The measured energy lies below the range in which 80 percent of good systems would lie.',
    rule: 'Weather luck and what is not known of the method are both in the range. One good system in ten lies below it.',
    sources: [REVIEW_SOURCE],
    fix: 'Check inverter lights, breakers, error messages and new shade; compare again when more days are in, best with --weather.',
  },
  'output.low-for-the-weather': {
    means: 'The energy is low for weather luck alone, but within what is not known of the method.',
    rule: 'Two ranges are compared: that of the weather, and that of the weather and the method together.',
    sources: [REVIEW_SOURCE],
    fix: 'Compare again when more days are in.',
  },
  'output.calibration': {
    means:
      'What the measured days say of the estimate of a mean year: its factor, and the energy that nine years in ten exceed.',
    rule: 'The lasting terms of the estimate are normal before; measured over expected is their sum and the error of weather, season and meter. The weather of a year stays as unsure as it is.',
    sources: [BAYES_SOURCE],
    fix: 'Look at signs of a fault first: one in the same readings would be taken for an error of the estimate. No key of the project takes the result.',
  },
  'output.calibration-refused': {
    means: 'The measured days are not carried into the estimate.',
    rule: 'A sure sign of a fault, or a sum that estimate, weather and meter explain in fewer than 2.5 of 100 cases on its side, is no error of the estimate.',
    sources: [BAYES_SOURCE],
    fix: 'Mend what is wrong with the plant, the table or the project file, and calibrate with readings from after it.',
  },
  'output.above-range': {
    means: 'The measured energy is more than nearly any weather gives.',
    rule: 'A good year is possible; a wrong scale of the meter or a module that the file does not know is likelier.',
    sources: [REVIEW_SOURCE],
    fix: 'Be glad, or check the scale of the meter and the number of modules in the project file.',
  },
}
