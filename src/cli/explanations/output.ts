import { REVIEW_SOURCE } from '../../tables/fieldwork/index.js'
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
  'output.days-missing': {
    means: 'Some days lack complete readings and are not counted.',
    rule: 'Measured and expected energy are compared over the same days only.',
    sources: [PRACTICE],
    fix: 'Nothing, or fill the gaps from another export.',
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
  'output.above-range': {
    means: 'The measured energy is more than nearly any weather gives.',
    rule: 'A good year is possible; a wrong scale of the meter or a module that the file does not know is likelier.',
    sources: [REVIEW_SOURCE],
    fix: 'Be glad, or check the scale of the meter and the number of modules in the project file.',
  },
}
