import type { Source } from '../../worksheet/index.js'

interface MeasuringError {
  readonly relative: number
  readonly why: string
  readonly source: Source
}

/** What measured energy of some days leaves open about the energy of a mean year, relative standard deviations. */
export const CALIBRATION = {
  meter: {
    relative: 0.025,
    why: 'the counter of an inverter is good to about 5 % in 95 of 100 cases; a revenue meter is better, but which it is nobody states',
    source: {
      document: 'incentive programmes let small systems be metered to 5 %; taken as two standard deviations',
      standing: 'from memory',
    },
  },
  season: {
    relative: 0.025,
    why: 'the estimate errs differently by season: days of one part of the year say less of the whole; none when every day of the year was measured',
    source: {
      document: 'half of how far a season may lie off the estimate without a fault in this review; own judgement',
      standing: 'common practice, no source',
    },
  },
} as const satisfies Record<string, MeasuringError>

/** The update itself. */
export const BAYES_SOURCE: Source = {
  document: "Bayes' rule for normal variables and one linear observation, textbooks of statistics",
  standing: 'from memory',
}
