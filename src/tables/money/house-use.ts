import type { Source } from '../../worksheet/index.js'

/** Yearly use of a house in kWh: outside `most` nothing is reckoned, outside `usual` it is told. */
export const HOUSE_USE = {
  most: { lowKwh: 300, highKwh: 150_000 },
  usual: { lowKwh: 1_500, highKwh: 50_000 },
  /** A month below or above these shares of the mean of the other months is told. */
  month: { lowShare: 0.1, highShare: 5 },
  /** 200 A at 240 V, the service of a large house. */
  hourKwh: 48,
  source: {
    document: 'Limits of the use of a house, wide about the 8,000 to 13,000 kWh a year of the built-in load shapes',
    standing: 'common practice, no source',
  },
} as const satisfies { readonly source: Source; readonly [key: string]: unknown }
