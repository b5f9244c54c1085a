import type { Source } from '../../worksheet/index.js'

/**
 * Correlation of one day's clearness with the next day's, after each month's days are turned into a normal distribution.
 *
 * A TMY3 file (Seattle-Tacoma) gives 0.29 as the mean of its twelve months by the same reckoning.
 */
export const DAY_CORRELATION = {
  value: 0.29,
  why: 'dull and fine days come in runs: correlation of the clearness of one day with that of the next',
  source: {
    document: 'Graham, Hollands & Huget, A time series model for Kt, Solar Energy 40(2):83-92',
    edition: '1988',
    standing: 'from memory',
  },
} as const satisfies { value: number; why: string; source: Source }
