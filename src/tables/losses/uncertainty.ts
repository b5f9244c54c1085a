import type { Source } from '../../worksheet/index.js'

/** One term of the uncertainty of the yearly yield, as a relative standard deviation. */
export interface UncertaintyTerm {
  readonly relative: number
  readonly why: string
  readonly source: Source
}

const JUDGEMENT: Source = { document: 'engineering judgement', standing: 'common practice, no source' }

export const UNCERTAINTY = {
  monthlyMethod: {
    relative: 0.08,
    why: 'monthly means, diffuse share and day types instead of measured hours',
    source: JUDGEMENT,
  },
  hourlyMethod: { relative: 0.05, why: 'models from hourly weather to AC', source: JUDGEMENT },
  yearToYear: {
    relative: 0.04,
    why: 'one year differs from the mean of many; 3 to 5 % of global irradiation',
    source: { document: 'Gueymard & Wilcox, Solar Energy 85:1068-1084', edition: '2011', standing: 'from memory' },
  },
  rowShade: {
    relative: 0.05,
    why: 'racks whose rows have no places: rows of usual spacing lose 1 to 5 % to each other',
    source: JUDGEMENT,
  },
} as const satisfies Readonly<Record<string, UncertaintyTerm>>

/** Number of standard deviations below the mean that 90 % and 99 % of outcomes exceed (normal distribution). */
export const EXCEEDANCE_Z = { p90: 1.2815515655, p99: 2.326347874 } as const
