import type { Source } from '../../worksheet/index.js'

/** One term of the uncertainty of the yearly yield, as a relative standard deviation. */
export interface UncertaintyTerm {
  readonly relative: number
  readonly why: string
  readonly source: Source
}

const JUDGEMENT: Source = { document: 'engineering judgement', standing: 'common practice, no source' }

/** Measured: the monthly method against the hours of the same station. */
export const METHOD_SOURCE: Source = {
  document:
    'monthly method against the hourly files of 60 US stations that were not used to choose it, three ratios of DC to AC: rms of the yearly AC energy',
  standing: 'secondary',
}

/**
 * Error of the monthly method by direction and tilt, relative: for planes that turn up to `awayDeg` from the equator and are
 * tilted up to `tiltDeg`. The first that fits counts.
 *
 * @limits Planes that face away from the equator were not measured; they take the last row, which is twice the largest
 *   figure that was (judgement).
 */
export const METHOD_ERROR: readonly {
  readonly awayDeg: number
  readonly tiltDeg: number
  readonly relative: number
}[] = [
  { awayDeg: 180, tiltDeg: 3, relative: 0.0048 },
  { awayDeg: 67.5, tiltDeg: 34, relative: 0.007 },
  { awayDeg: 67.5, tiltDeg: 60, relative: 0.0087 },
  { awayDeg: 112.5, tiltDeg: 18, relative: 0.007 },
  { awayDeg: 112.5, tiltDeg: 34, relative: 0.0087 },
  { awayDeg: 112.5, tiltDeg: 60, relative: 0.0122 },
  { awayDeg: 180, tiltDeg: 90, relative: 0.0244 },
]

export const UNCERTAINTY = {
  typicalYear: {
    relative: 0.042,
    why: 'noise of a single typical year at its own station, as pairs of stations under 20 km apart show it: 1.4 % on the Pacific coast to 4.2 % in the eastern interior; the largest is taken',
    source: {
      document: 'leave-one-out comparison of the typical years of 1,020 US stations',
      standing: 'secondary',
    },
  },
  transposition: {
    relative: 0.02,
    why: 'from light on the level to light on a slope, by any sky model',
    source: JUDGEMENT,
  },
  yearToYear: {
    relative: 0.04,
    why: 'one year differs from the mean of many; 3 to 5 % of global irradiation, the same for every place as no figure by place was found',
    source: { document: 'Gueymard & Wilcox, Solar Energy 85:1068-1084', edition: '2011', standing: 'from memory' },
  },
  rowShade: {
    relative: 0.05,
    why: 'racks whose rows have no places: rows of usual spacing lose 1 to 5 % to each other',
    source: JUDGEMENT,
  },
  shade: {
    relative: 0.25,
    why: 'a quarter of what shade takes: heights, distances and leaves are measured roughly, and trees grow',
    source: JUDGEMENT,
  },
  snow: {
    relative: 0.5,
    why: 'half of what snow takes: methods disagree and winters differ',
    source: JUDGEMENT,
  },
  dirt: {
    relative: 0.5,
    why: 'half of what dirt takes: 2 to 5 % is usual, up to 7 % in dry places',
    source: {
      document: 'engineering ranges of losses; IEA PVPS T13-12:2018 names them, its numbers were not read',
      standing: 'from memory',
    },
  },
  rating: {
    relative: 0.01,
    why: 'rated power as it is sold and measured',
    source: JUDGEMENT,
  },
  availability: {
    relative: 0.007,
    why: 'time out of order: 0.5 to 3 % is usual',
    source: { document: 'engineering ranges of losses', standing: 'from memory' },
  },
  degradation: {
    relative: 0.003,
    why: 'loss with age of a system, per year: the distance of the published median, 0.5 to 0.6 %, from the mean, 0.8 to 0.9 %, is taken as the spread (judgement: single systems spread more widely)',
    source: {
      document: 'Jordan, Kurtz, VanSant & Newmiller: Compendium of photovoltaic degradation rates',
      edition: '2016',
      place: 'abstract; the spread is judgement',
      standing: 'read',
    },
  },
} as const satisfies Readonly<Record<string, UncertaintyTerm>>

/** Number of standard deviations below the mean that 90 % of outcomes exceed (normal distribution). */
export const EXCEEDANCE_Z = { p90: 1.2815515655, p99: 2.326347874 } as const
