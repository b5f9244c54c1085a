import { PRACTICE, type Explanations } from './explanation.js'

const CREDIT_LAW = {
  document: 'Public Law 119-21 (26 USC 25D)',
  edition: '2025-07-04',
  place: 'IRS FS-2025-05',
  standing: 'read',
} as const
const PRICES = {
  document: 'Published US residential prices 2018 to 2023 (NREL/TP-7A40-87303; LBNL distributed PV price reports)',
  standing: 'secondary',
} as const
const ESPI = { document: 'NAESB REQ.21 (ESPI) as public code and sample files show it', standing: 'secondary' } as const

/** Findings about usage, bills, payback and size. */
export const MONEY: Explanations = {
  'bill.exports-unpaid': {
    means: 'The tariff says nothing about exported energy, so it is worth nothing here.',
    rule: 'What a utility pays for exports is a rule of its own, and it is never guessed.',
    sources: [PRACTICE],
    fix: 'State net_metering, net_billing or buy_all_sell_all as the utility grants it.',
  },
  'bill.hourly-netting': {
    means: 'Own use of solar energy is worked out by hours, which overstates it a little.',
    rule: 'Within an hour a kettle draws more than the roof gives, and a minute later the roof exports; a meter that looks more often sees both.',
    sources: [PRACTICE],
    fix: 'Nothing; take the saving as the upper end when exports are paid much less than use costs.',
  },
  'bill.hourly-demand': {
    means: 'The demand charge is worked out from hourly means of typical days.',
    rule: 'Demand is the highest power of a month: one cloudy hour can undo the whole saving.',
    sources: [PRACTICE],
    fix: 'Count on no saving of demand charges.',
  },
  'bill.credit-unused': {
    means: 'In a year some export credit is given up or stays unused.',
    rule: 'Credits that the tariff lets lapse, or that no later bill uses up, save nothing.',
    sources: [PRACTICE],
    fix: 'Compare a smaller system with `gablewatt choose-size`.',
  },
  'money.leap-day': {
    means: 'The weather file has a 29 February, which is left out of the bills.',
    rule: 'Bills are those of a year of 365 days.',
    sources: [PRACTICE],
    fix: 'Nothing.',
  },
  'incentive.none-assumed': {
    means: 'No incentive is counted that the project file does not state.',
    rule: 'The federal residential credit ended for installations completed after 2025; state and utility programs change often.',
    sources: [CREDIT_LAW],
    fix: 'State each program that you have in writing under incentives, with its source and the day on which you checked it.',
  },
  'incentive.unchecked': {
    means: 'An incentive is taken as the project file states it.',
    rule: 'Programs end, run out of money and have conditions; nothing here checks them.',
    sources: [PRACTICE],
    fix: 'Check it again before buying.',
  },
  'incentive.credit-unused': {
    means: 'Part of a tax credit finds no tax to reduce within the years of the study.',
    rule: 'A credit that is not refundable is worth no more than the tax that is owed.',
    sources: [PRACTICE],
    fix: 'Check tax_liability_usd_per_year of the incentive, and ask a tax adviser what carries forward.',
  },
  'incentive.above-cost': {
    means: 'The incentives of the project file come to more than the price.',
    rule: 'A percentage typed twice, or two programs that exclude each other, look like this.',
    sources: [PRACTICE],
    fix: 'Check amounts and percentages, and state cap_usd where a program has one.',
  },
  'incentive.key-unused': {
    means: 'An incentive states a value that its kind has no use for.',
    rule: 'Each kind has its own amount: upfront amount_usd, per_watt usd_per_w, share_of_cost and tax_credit percent, per_kwh usd_per_kwh.',
    sources: [PRACTICE],
    fix: 'Remove the key, or correct the kind.',
  },
  'payback.running-costs-missing': {
    means:
      'The project says nothing of a new inverter or of upkeep, so neither is counted; the message tells what they would change.',
    rule: 'Inverters often last half as long as modules. The figures of the message are round ones without a source, and count for nothing else.',
    sources: [PRACTICE],
    fix: 'State finance.replacements and finance.maintenance_usd_per_year from quotes or warranties; [] and 0 say that there are none.',
  },
  'payback.replacement-after-study': {
    means: 'A stated replacement comes after the years that are studied and is not counted.',
    rule: 'Only the years of the study count, their costs and their savings alike.',
    sources: [PRACTICE],
    fix: 'Study more years, or remove the replacement.',
  },
  'payback.escalation-high': {
    means: 'The stated rise of electricity prices is far above what is published, and the savings rest on it.',
    rule: 'The rate is the rise above inflation. A few percent more a year multiply the savings of the last years.',
    sources: [PRACTICE],
    fix: 'State the rise above inflation, or 0 to let prices follow inflation.',
  },
  'payback.later-sheet-unpaid': {
    means: 'A later rate sheet says nothing of exported energy, which is unpaid from its day on.',
    rule: 'Each rate sheet stands for itself; nothing of an earlier one is carried over.',
    sources: [PRACTICE],
    fix: 'Copy the solar rule into the later sheet when it goes on.',
  },
  'payback.path-after-study': {
    means: 'A price path has more years than the study.',
    rule: 'Years after the study are in no cash flow.',
    sources: [PRACTICE],
    fix: 'Nothing, or study more years (finance.years).',
  },
  'payback.cost-after-study': {
    means: 'A one-off cost falls after the last year of the study and is not counted.',
    rule: 'Years after the study are in no cash flow.',
    sources: [PRACTICE],
    fix: 'Study more years (finance.years), or leave the cost out.',
  },
  'payback.contract-outlives-study': {
    means:
      'A lease or a power purchase runs on after the last year of the study, and its later payments are not counted.',
    rule: 'What is still to be paid is a debt of the household, whether the study sees it or not.',
    sources: [PRACTICE],
    fix: 'Study as many years as the contract runs (finance.years).',
  },
  'payback.contract-costs-more': {
    means: 'From some year on the payments of a lease or a power purchase are more than the bills go down.',
    rule: 'Payments that rise faster than prices overtake the savings; rises of 1 to 3 % a year are usual, up to 5 % are seen.',
    sources: [{ document: 'Guide of a nonprofit to solar contracts', standing: 'secondary' }],
    fix: 'Ask for a smaller rise, or compare with buying: `gablewatt payback --versus`.',
  },
  'payback.never': {
    means: 'Within the years of the study the savings never add up to the cost.',
    rule: 'Simple payback adds up net yearly savings without interest.',
    sources: [PRACTICE],
    fix: 'Compare other sizes, prices and tariffs; or do not build it for money.',
  },
  'payback.dips-again': {
    means: 'The system is paid back, and a later cost turns the sum negative again.',
    rule: 'A new inverter in later years is a cost like the first.',
    sources: [PRACTICE],
    fix: 'Use the later year of the message, or look at the net present value.',
  },
  'payback.no-single-irr': {
    means: 'There is no single internal rate of return.',
    rule: 'When yearly sums change sign more than once, or never, the equation has several answers or none.',
    sources: [PRACTICE],
    fix: 'Use the net present value or the adjusted internal rate of return.',
  },
  'payback.loan-outlives-study': {
    means: 'The loan is still being paid off when the study ends; what is owed then is counted as paid at once.',
    rule: 'A debt does not end with the years that are looked at. Leaving it out would make a dear loan look like a gain.',
    sources: [PRACTICE],
    fix: 'Study at least as many years as the loan runs (finance.years).',
  },
  'payback.loan-above-need': {
    means: 'The loan is more than what the incentives at purchase leave to pay.',
    rule: 'What is borrowed beyond the need lies in hand and costs interest. Often the incentive really arrives later, and its year is not stated.',
    sources: [PRACTICE],
    fix: 'Borrow less, or state year_received of the incentive.',
  },
  'payback.bom-not-used': {
    means: 'Both a price of the whole system and a bill of materials are known; the stated price was used.',
    rule: 'What somebody has agreed to pay counts more than a sum of list prices.',
    sources: [PRACTICE],
    fix: 'Nothing, or leave finance.installed_cost_usd out to use the bill of materials.',
  },
  'payback.cost-implausible': {
    means: 'The installed cost per watt lies outside what is usual.',
    rule: 'A missing zero or a price per kilowatt looks like this.',
    sources: [PRICES],
    fix: 'Check the cost; a system that you install yourself may well be below.',
  },
  'size.limit-reached': {
    means: 'The largest size that is possible is also the best one.',
    rule: 'Roof, panel or inverter stops more modules, not their worth.',
    sources: [PRACTICE],
    fix: 'See whether the limit of the message can be moved at little cost.',
  },
  'size.none-pays': {
    means: 'No size has a net present value above zero.',
    rule: 'At the stated discount rate the savings are worth less than the cost, for every number of modules.',
    sources: [PRACTICE],
    fix: 'Check price, tariff and discount rate.',
  },
  'size.loan-capped': {
    means: 'The stated loan is more than what the smaller sizes cost, so they are reckoned with a smaller one.',
    rule: 'A loan above the price would be money for something else and would spoil the comparison.',
    sources: [PRACTICE],
    fix: 'Nothing, or state the loan that you would take for the size that you choose.',
  },
  'size.left-out': {
    means: 'Some numbers of modules cannot be built and are not compared.',
    rule: 'Strings have a shortest and a longest length, and not every sum can be made of them.',
    sources: [PRACTICE],
    fix: 'Nothing; module-level inverters have no such gaps.',
  },
  'size.refused': {
    means: 'Sizes below the largest are left out, because inverter or panel do not take them.',
    rule: 'Each size is judged as the wiring stage judges it. Where a rule counts breakers, a smaller size on more branches can fail where a larger one on fuller branches passes.',
    sources: [PRACTICE],
    fix: 'State electrical.branches for the size when other branches would fit.',
  },
  'size.cost-differs': {
    means: 'The price by the module and the stated price of the whole system do not agree.',
    rule: 'Sizes are compared by the price by the module; two prices for one system cannot both hold.',
    sources: [PRACTICE],
    fix: 'Make cost_fixed_usd and cost_usd_per_module agree with installed_cost_usd.',
  },
  'size.roof-rule': {
    means: 'A roof with all modules that fit would break a rule that the present layout keeps.',
    rule: 'Larger sizes are taken from a roof that is filled up; setbacks and pathways hold there too.',
    sources: [PRACTICE],
    fix: 'Arrange the modules anew before deciding on a larger size.',
  },
  'size.roof-unmeasured': {
    means: 'What else fits beside an array is not known.',
    rule: 'Free places are found from the outline of the plane and the dimensions of the module.',
    sources: [PRACTICE],
    fix: 'State the outline of the plane, and length and width of the module.',
  },
  'size.panel-not-checked': {
    means: 'Whether the panel takes the larger sizes was not checked, because the wiring stage cannot run.',
    rule: 'The busbar of the panel is often what limits the size of a system.',
    sources: [PRACTICE],
    fix: 'Run `gablewatt size-wire` and do what it asks for.',
  },
  'size.branches-unknown': {
    means: 'How many branch circuits a size needs is not known, so sizes with several branches are priced too low.',
    rule: 'Inverter and trunk cable limit how many inverters a branch holds; each further branch costs a breaker and a run.',
    sources: [PRACTICE],
    fix: 'State what the finding names: mostly the trunk cable, or the largest breaker on the data sheet.',
  },
  'size.strings-not-checked': {
    means: 'How many modules a string takes is not known, so sizes were not limited by it.',
    rule: 'Cold voltage sets the longest string, hot voltage the shortest.',
    sources: [PRACTICE],
    fix: "Do what the finding's own fix says; mostly a value of a data sheet is missing.",
  },
  'usage.shape-poor-fit': {
    means: 'No built-in load shape fits the climate of the house.',
    rule: 'When a house uses energy depends on its heating and cooling, and so on the climate.',
    sources: [PRACTICE],
    fix: 'Use a meter export (usage.green_button or usage.interval_csv), or name the shape yourself.',
  },
  'usage.hours-estimated': {
    means: 'The hours of use come from a load shape, not from this house.',
    rule: 'A shape is the mean of many homes and smoother than one of them, so own use of solar energy is overstated.',
    sources: [PRACTICE],
    fix: 'Use a meter export when the tariff pays exports less than it charges.',
  },
  'usage.time-zone-differs': {
    means: "The meter file and the site name different time zones; the site's is used.",
    rule: 'A wrong zone moves evening use into the afternoon sun.',
    sources: [ESPI],
    fix: 'Check site.utc_offset_h (standard time), or whether the file belongs to this house.',
  },
  'usage.gaps-filled': {
    means: 'Missing hours of the meter file were filled.',
    rule: 'The mean of the same hour and kind of day in that month is taken.',
    sources: [PRACTICE],
    fix: 'Nothing when the gaps are short; otherwise export the data again.',
  },
  'usage.duplicates': {
    means: 'Some readings stand twice with the same value; each counts once.',
    rule: 'Exports of neighbouring months often share a day.',
    sources: [PRACTICE],
    fix: 'Nothing.',
  },
  'usage.overlaps': {
    means: 'Some readings of one interval differ; one of them was taken as usage.overlaps says.',
    rule: 'Utilities send corrected readings after the first ones.',
    sources: [PRACTICE],
    fix: 'Check that first or last is what the utility means.',
  },
  'usage.estimated': {
    means: 'Some readings were estimated by the utility.',
    rule: 'When a meter does not answer, the utility fills in.',
    sources: [ESPI],
    fix: 'Nothing when they are few.',
  },
  'usage.export-present': {
    means: 'The meter also shows exports, so what it delivered is not what the house used.',
    rule: 'Use is what was delivered plus what was generated less what was exported.',
    sources: [PRACTICE],
    fix: 'Use data from before the existing system, or add its generation to the use.',
  },
  'usage.implausible': {
    means: 'The house uses far less or far more in a year than houses usually do.',
    rule: 'A wrong unit, a half year of data or a meter of another building look like this. Outside 300 to 150,000 kWh a year nothing is reckoned.',
    sources: [PRACTICE],
    fix: 'Compare with the yearly total on a bill.',
  },
  'usage.hour-implausible': {
    means: 'An hour of use is more than the service of a large house carries.',
    rule: 'A service of 200 A at 240 V carries 48 kW. A wrong reading of one hour moves the bills of its month.',
    sources: [PRACTICE],
    fix: 'Look for the reading in the file, and check its unit.',
  },
  'usage.month-unlike': {
    means: 'A month of use lies far from the mean of the other months.',
    rule: 'Below a tenth or above five times the mean of the other months a digit is more likely wrong than the house empty.',
    sources: [PRACTICE],
    fix: 'Compare with the bill of that month.',
  },
  'usage.accumulation-unstated': {
    means: 'The meter file does not say whether its values are the use of each interval or readings of a dial.',
    rule: 'Readings of a dial that are added up give a use far too large; readings that never fall are refused.',
    sources: [ESPI],
    fix: 'Compare the yearly total with the bills.',
  },
  'usage.flow-unstated': {
    means: 'The meter file does not say whether its energy was delivered to the house or sent from it.',
    rule: 'Energy sent from the house is no use of it.',
    sources: [ESPI],
    fix: 'Compare the yearly total with the bills.',
  },
  'usage.left-out': {
    means: 'Part of the meter file was left out; the message says which.',
    rule: 'Only delivered and exported electric energy of the finest interval is used.',
    sources: [ESPI],
    fix: 'Nothing, unless the part that you want is the one that was left out.',
  },
}
