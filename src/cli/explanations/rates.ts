import { PRACTICE, type Explanations } from './explanation.js'

const DATABASE = {
  document: 'Documentation of the public utility rate database, versions 3 to 8, as public clients copy it',
  standing: 'secondary',
} as const
const SHEETS = {
  document:
    'Billing procedures and rate sheets of six utilities (Seattle, River Falls, Seymour, Goodland, Park Electric)',
  standing: 'read',
} as const

/** Findings about rates that are imported, and about printed bills. */
export const RATES: Explanations = {
  'rates.label-needed': {
    means: 'The file holds several rates, and none is named.',
    rule: 'A utility has a dozen rates, old ones among them; the wrong one gives wrong bills.',
    sources: [DATABASE],
    fix: 'Look the name of the rate up on the bill, and state its label with --label.',
  },
  'rates.not-carried': {
    means: 'The record holds something that would change a bill and that no key of a tariff can say.',
    rule: 'What would change a bill in silence is refused, all of it at once.',
    sources: [DATABASE],
    fix: 'Write that part by hand, or leave it out with --anyway, knowing that bills are then wrong by it.',
  },
  'rates.left-out': {
    means: 'The tariff was written without a part of the record, as you agreed.',
    rule: 'Bills are wrong by what was left out.',
    sources: [DATABASE],
    fix: 'Add it by hand where you can, and compare with printed bills with `gablewatt check-bill`.',
  },
  'rates.assumed': {
    means: 'The record does not say this, and the tariff takes what saves least, or leaves it to you.',
    rule: 'A record has no taxes, no rounding, no true-up month and no rules for banks and credits.',
    sources: [DATABASE],
    fix: 'Look it up on the rate sheet or a bill, and change the key.',
  },
  'rates.check': {
    means: 'Something in the record is to be compared with the rate sheet.',
    rule: 'Records are typed in by people; those that are not approved were checked by nobody.',
    sources: [DATABASE],
    fix: 'Compare it with the rate sheet, then state the day as tariff.checked.',
  },
  'rates.comments': {
    means: 'The record has words beside its numbers.',
    rule: 'Real rules hide in comments: holidays, discounts, who may take the rate.',
    sources: [DATABASE],
    fix: 'Read them, and add what changes the bill by hand.',
  },
  'rates.dates': {
    means: 'The rate does not hold on the day that is asked for, or does not say from when it holds.',
    rule: 'Dates are compared as days with one day of slack, as stamps are midnights of some zone.',
    sources: [DATABASE],
    fix: 'Save the record that followed or went before.',
  },
  'rates.eligibility': {
    means: 'Only some customers may take this rate.',
    rule: 'Limits of power, use, voltage and phases stand in the record; the house is not known here.',
    sources: [DATABASE],
    fix: 'Compare them with the bills and the service of the house.',
  },
  'rates.ignored': {
    means: 'A field of the record is left out, as it changes no bill of a house, or nobody knows what it means.',
    rule: 'Nothing of a record is left out without a word.',
    sources: [DATABASE],
    fix: 'Look whether it matters for this house.',
  },
  'rates.implausible': {
    means: 'A price of energy is above 2 USD/kWh or below 0.01 USD/kWh.',
    rule: 'Cents typed as dollars, or a price of delivery alone, are frequent slips.',
    sources: [DATABASE],
    fix: 'Compare it with the rate sheet and a bill.',
  },
  'rates.tier-count': {
    means: 'Tiers are stated by time-of-use period, and the record does not say what they count.',
    rule: 'The usual rate sheet counts all kWh of the bill and shares each tier over the periods in proportion.',
    sources: [DATABASE],
    fix: 'Look at the rate sheet, then state --tiers-count.',
  },
  'bill.demand-interval': {
    means: 'The utility averages demand over less than an hour, and the use is known by hours.',
    rule: 'The highest quarter of an hour is higher than the highest hour, so the demand charge is understated.',
    sources: [PRACTICE],
    fix: 'Take the demand of a printed bill as the better figure.',
  },
  'bill.split-hours': {
    means: 'A period of the tariff begins or ends within an hour.',
    rule: 'Use and output are known by hours; they are spread evenly over the quarters of that hour.',
    sources: [PRACTICE],
    fix: 'Nothing.',
  },
  'bills.differ': {
    means: 'Printed bills are not those that the tariff gives for the same kWh.',
    rule: 'Both are compared to the cent; half a cent goes up, on each line or on the total as tariff.rounding says.',
    sources: [SHEETS],
    fix: 'Correct the key that is named, or compare the lines of the smallest bill one by one.',
  },
  'bills.several-explanations': {
    means: 'More than one single change of the tariff explains all bills.',
    rule: 'Bills of much the same kWh cannot tell a fixed charge from a tax on it.',
    sources: [PRACTICE],
    fix: 'Add bills of other seasons, or the lines of the bills as columns.',
  },
  'bills.unexplained': {
    means: 'No single change of the tariff explains all bills to the cent.',
    rule: 'Each number, base, date and rule of the tariff was changed by itself.',
    sources: [PRACTICE],
    fix: 'Look for a change of the rate within the year, a second slip, or a charge that is missing.',
  },
  'bills.gap': {
    means: 'Days lie between two bills, or the days are counted otherwise than the bills show.',
    rule: 'Bills follow each other: one begins on the reading that ended the last, or the day after.',
    sources: [SHEETS],
    fix: 'Add the missing bill, or state --days.',
  },
  'bills.banks-empty': {
    means: 'What earlier bills left in the banks of kWh and credit is not known.',
    rule: 'The first bill begins with empty banks, as after a true-up.',
    sources: [PRACTICE],
    fix: 'Begin the table with the bill after the true-up.',
  },
}
