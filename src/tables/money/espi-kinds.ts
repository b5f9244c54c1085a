import type { Source } from '../../worksheet/index.js'

/** Codes of an ESPI ReadingType. The standard is sold and was not read; the codes of the sample files are among them. */
export const ESPI_SOURCE: Source = { document: 'NAESB REQ.21 (ESPI), codes of ReadingType', standing: 'from memory' }

/** accumulationBehaviour of values that hold the use of their interval. */
export const INTERVAL_KIND = '4'

/** accumulationBehaviour of a dial that counts on and on: the use is the difference of two readings. */
export const REGISTER_KINDS: readonly string[] = ['1', '9']

/** The file says nothing of how its values accumulate. */
export const UNSTATED_KINDS: readonly string[] = ['', '0']

/** Names of the other kinds of accumulation; none of them tells the use of an interval. */
export const OTHER_KINDS: Readonly<Record<string, string>> = {
  '2': 'continuous cumulative: sums over billing periods',
  '3': 'cumulative: sums of past billing periods',
  '6': 'indicating: what a needle shows',
  '10': 'time delay',
  '12': 'instantaneous',
  '13': 'latching quantity',
  '14': 'bounded quantity',
}

/** `kind`, `dataQualifier` and `commodity` of energy: what is not stated, or is energy, normal, electricity. */
export const ENERGY_KINDS: readonly string[] = ['', '0', '12']
export const PLAIN_QUALIFIERS: readonly string[] = ['', '0', '12']
export const ELECTRIC_COMMODITIES: readonly string[] = ['', '0', '1', '2']

/** Powers of ten in which the meter of a house can count Wh. */
export const HOUSE_POWERS = { lowest: -6, highest: 6 } as const
