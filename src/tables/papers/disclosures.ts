import type { RuleSet } from './rule-sets.js'

/** Who can supply what is missing. */
export type Supplier = 'seller' | 'customer' | 'utility' | 'project'

/** A point that a written offer must or should have. */
export interface Disclosure {
  readonly id: string
  readonly says: string
  /** Rule sets that ask for it; `all` for a federal rule; none: it is good practice. */
  readonly mustIn: readonly RuleSet[] | 'all' | 'none'
  /** As it is cited. */
  readonly rule: string
  readonly supplier: Supplier
}

type Row = readonly [id: string, says: string, mustIn: Disclosure['mustIn'], rule: string, supplier: Supplier]

const NV: readonly RuleSet[] = ['nevada']
const MOST: readonly RuleSet[] = ['utah', 'nevada', 'california', 'rhode_island', 'idaho', 'florida']

const ROWS: readonly Row[] = [
  ['date', 'date, number and last day of the offer', 'none', 'practice', 'seller'],
  [
    'seller',
    'name, address, telephone, mail and licence number of the seller',
    MOST,
    'NRS 598.9814; Utah 13-52-201',
    'seller',
  ],
  ['customer', 'name of the customer and address of the site', MOST, 'NRS 598.9814; Utah 13-52-201', 'customer'],
  ['equipment', 'maker, model and number of modules and inverters', MOST, 'NRS 598.9814; California BPC', 'project'],
  ['size', 'size in kW DC at standard test conditions and in kW AC', MOST, 'NRS 598.9814', 'project'],
  [
    'production',
    'energy of the first year and by month, with its range, method and weather source',
    ['nevada', 'rhode_island'],
    'NRS 598.9815; Rhode Island GL 39-26.8-5',
    'project',
  ],
  [
    'degradation',
    'yearly loss of output, and energy of later years',
    ['nevada', 'rhode_island'],
    'NRS 598.9815; Rhode Island GL 39-26.8-5',
    'project',
  ],
  ['losses', 'assumed shade, snow, dirt and time out of order', 'none', 'practice', 'project'],
  [
    'own-use',
    'energy used in the house, exported and imported',
    'none',
    'practice; NRS 598.98055 for the offset',
    'project',
  ],
  [
    'tariff',
    'tariff with its source and the day on which it was checked',
    ['utah', 'nevada', 'idaho'],
    'Utah 13-52-202; Idaho 48-1805',
    'utility',
  ],
  ['export-rule', 'how long exported energy must be credited', NV, 'NRS 598.9815', 'utility'],
  ['bill-by-month', 'bill without and with the system by month', 'none', 'practice', 'project'],
  [
    'savings',
    'savings at an unchanged price beside the assumed one',
    ['utah', 'rhode_island', 'idaho'],
    'Utah 13-52-202; Rhode Island GL 39-26.8-5; Idaho 48-1805',
    'project',
  ],
  [
    'rise-basis',
    'basis of the assumed rise of electricity prices',
    ['utah', 'rhode_island', 'idaho'],
    'Utah 13-52-202; Rhode Island GL 39-26.8-5',
    'seller',
  ],
  ['rise-cap', 'assumed rise not above the cap of the state', ['utah'], 'Utah 13-52-202', 'seller'],
  ['price', 'cash price before incentives', MOST, 'NRS 598.9813; California BPC 7169; Utah 13-52-203', 'seller'],
  [
    'incentives',
    'incentives that are counted, their conditions, and that they are not sure',
    NV,
    'NRS 598.9813',
    'seller',
  ],
  [
    'payments',
    'schedule of payments that adds up to the price',
    ['utah', 'nevada', 'california'],
    'Utah 13-52-203; NRS 598.9814; California BPC 7159.5',
    'seller',
  ],
  ['deposit', 'deposit within the limit of the state', ['california'], 'California BPC 7159.5', 'seller'],
  [
    'purchase',
    'that a purchase, for cash or with a loan, is offered, and no lease or sale of energy (PPA)',
    'none',
    'practice; this program works out no lease and no PPA',
    'seller',
  ],
  [
    'finance',
    'principal, annual rate, term, fee, payments and their total beside the cash price',
    'all',
    'Truth in Lending, 12 CFR 1026 (from memory)',
    'seller',
  ],
  ['payback', 'payback with its rate and term, or that it is never reached', 'none', 'practice', 'project'],
  [
    'replacement',
    'whether replacements are assumed',
    ['rhode_island', 'idaho'],
    'Rhode Island GL 39-26.8-5; Idaho 48-1805',
    'seller',
  ],
  [
    'warranties',
    'warranties of modules, inverters, workmanship and roof, and whether they pass on',
    NV,
    'NRS 598.9814',
    'seller',
  ],
  [
    'maintenance',
    'whether maintenance is included',
    ['utah', 'rhode_island'],
    'Utah 13-52-202(1); Rhode Island GL 39-26.8-5',
    'seller',
  ],
  ['timeline', 'start, completion and permission to operate', NV, 'NRS 598.9814', 'seller'],
  ['interconnection', 'who gets the approval of the utility', NV, 'NRS 598.9815', 'seller'],
  ['cancellation', 'right to cancel with its last day as a date', 'all', '16 CFR 429; law of the state', 'seller'],
  [
    'cancel-address',
    'mail address for cancelling and telephone for help',
    ['nevada', 'california'],
    'NRS 598.9813; California AB 1327 of 2025',
    'seller',
  ],
  ['complaints', 'where to complain', ['california'], 'California BPC 7169', 'seller'],
  [
    'utility-guide',
    "the utility commission's guide was handed over",
    ['california'],
    'California commission, consumer guide',
    'seller',
  ],
  ['certificates', 'who owns the renewable energy certificates', 'none', '16 CFR 260.15 (from memory)', 'seller'],
  ['lien', 'lien or fixture filing', NV, 'NRS 598; trade forms (from memory)', 'seller'],
  ['roof', 'age and condition of the roof, and cost of taking the system off', 'none', 'practice', 'seller'],
  ['insurance', 'insurance, property tax, homeowners association', 'none', 'practice', 'customer'],
  ['terms', 'terms of the contract', 'none', 'practice', 'seller'],
  ['signatures', 'lines for signatures and dates', MOST, 'law of the state', 'project'],
]

/** @source rules of seven jurisdictions and practice, as far as they were read (see RULE_SETS); other states: check */
export const DISCLOSURES: readonly Disclosure[] = ROWS.map(([id, says, mustIn, rule, supplier]) => ({
  id,
  says,
  mustIn,
  rule,
  supplier,
}))
