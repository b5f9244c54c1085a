import type { Source } from '../../worksheet/index.js'

/** Insulation resistance of an array: what to test with, and what it has to reach. */
export interface InsulationTest {
  /** Largest 1.25 x Voc (standard test conditions) of the string, V; the row holds up to it. */
  readonly upToV: number
  /** Whether exactly that voltage still belongs to the row. */
  readonly including: boolean
  readonly testV: number
  readonly leastMohm: number
}

/** First row that fits. Exactly 120 V and exactly 500 V belong to the 500 V row. */
export const INSULATION_TESTS: readonly InsulationTest[] = [
  { upToV: 120, including: false, testV: 250, leastMohm: 0.5 },
  { upToV: 500, including: true, testV: 500, leastMohm: 1 },
  { upToV: 1000, including: true, testV: 1000, leastMohm: 1 },
  { upToV: Number.POSITIVE_INFINITY, including: true, testV: 1500, leastMohm: 1 },
]

/** The string voltage is raised by this before the row is looked up. */
export const INSULATION_FACTOR = 1.25

/** An instrument maker's poster on the edition of 2009 (voltages), a manual (1 Mohm above 120 V); 0.5 Mohm from memory. */
export const INSULATION_SOURCE: Source = {
  document: 'IEC 62446-1',
  place: 'insulation resistance, by an instrument maker’s poster and manual; 0.5 Mohm from memory',
  standing: 'secondary',
}
