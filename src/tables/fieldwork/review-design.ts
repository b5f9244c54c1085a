import type { Source } from '../../worksheet/index.js'

/**
 * What the search for faults in measured production is set to. Limits were chosen on simulated healthy years of hourly weather
 * files (Houston, Duluth, Phoenix). The Seattle file was kept for the check, which showed one more cause of false alarms, the level of a
 * few bright weeks (`highestUsualLevel`); so it is no longer wholly unseen. See `npm run compare:faults`.
 */
export const REVIEW_DESIGN = {
  /** A day below this share of its clearest kind has no output. */
  noOutputShare: 0.004,
  /** Inches of new snow a month from which a day without output may lie under snow. */
  snowMonthIn: 0.5,
  /** Days of snow on the roof that an inch of new snow makes, and how long it lies on the mean, days. Our own judgement. */
  snowDaysPerIn: 1,
  snowLiesDays: 4,
  /** Chance that a system stops on a day, for the odds against snow. Our own judgement. */
  stopsPerDay: 0.002,
  mostDrops: 5,
  leastDropDays: 5,
  leastDaysOutside: 20,
  highestUsualLevel: 1.05,
  /** A season may lie this far off the estimate without a fault: without the weather of the days, and with it. */
  seasonTolerance: 0.13,
  seasonToleranceWeather: 0.05,
  /** Evidence (logarithm of the odds) that a drop needs. */
  dropEvidence: 10.5,
  dropEvidenceWeather: 10.5,
  /** Healthy systems that show a drop of the least evidence in a year, as a share, and evidence that makes them e times fewer. */
  falseDropsAtLeast: 0.003,
  evidencePerE: 1.2,
  /** Systems that have a fault of one kind in a year, as a share. Our own judgement. */
  faultsPerYear: 0.02,
  /** One day modelled from its own weather, relative standard deviation. */
  modelledDaySpread: 0.1,
  /** And no day is surer than this share of the clearest. */
  modelledDayFloor: 0.04,
  /** A system that was never better is low below this level, where so few healthy ones give so little. */
  lowLevel: 0.9,
  lowLevelFalseAlarms: 0.003,
  /** A fall of clear days: chance without a trend, and size beyond which no season of the estimate is to blame. */
  soilingChance: 0.0003,
  soilingLoss: { overall: 0.15, perWeek: 0.014 },
  soilingLossWeather: { overall: 0.1, perWeek: 0.012 },
  /** A fall that is so unlikely and so steep is a sign; a weaker one is a note. */
  soilingSureChance: 0.00005,
  soilingSurePerWeek: 0.0175,
  /** Without their weather only seasons are looked at in which a clear day gives this share of the year's best. */
  soilingSeason: 0.6,
  /** A sign of this chance is sure: exit code 1. */
  sure: 0.99,
} as const

export const REVIEW_DESIGN_SOURCE: Source = {
  document: 'levels chosen on simulated healthy years of hourly weather files',
  standing: 'common practice, no source',
}
