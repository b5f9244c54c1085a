import type { SourceStanding } from '../../worksheet/index.js'
import type { Edition } from './editions.js'
import type { ConductorSize } from './conductor-sizes.js'

/** Connection ahead of the service disconnect. */
export interface SupplySideRule {
  readonly edition: Edition
  readonly section: string
  /** What may not exceed what. */
  readonly compares: 'devices with service rating' | 'currents with service conductor ampacity'
  /** Smallest conductors of the connection; undefined where the edition names none. */
  readonly smallestCopper: ConductorSize | undefined
  readonly smallestAluminum: ConductorSize | undefined
  /** Largest length from the connection to the overcurrent device in a dwelling, ft; undefined where the edition names none. */
  readonly deviceWithinFt: number | undefined
  readonly standing: SourceStanding
}

/** Least rating of a service disconnect and least ampacity of its conductors, A. @source NEC 230.79(D), 230.42(B); 2017 and 2023 read. */
export const LEAST_SERVICE_A = 60

/**
 * @source NEC 705.12(A) (2011 to 2017; 2017 read, with 705.31 for the distance), 705.11 (2020 to 2026: articles that describe it; the distance
 * is back in 2026 for connections inside a building, and is asked for everywhere here).
 */
export const supplySideRules: readonly SupplySideRule[] = [
  {
    edition: 'NEC 2011',
    section: '705.12(A)',
    compares: 'devices with service rating',
    smallestCopper: undefined,
    smallestAluminum: undefined,
    deviceWithinFt: undefined,
    standing: 'from memory',
  },
  {
    edition: 'NEC 2014',
    section: '705.12(A), 705.31',
    compares: 'devices with service rating',
    smallestCopper: undefined,
    smallestAluminum: undefined,
    deviceWithinFt: 10,
    standing: 'from memory',
  },
  {
    edition: 'NEC 2017',
    section: '705.12(A), 705.31',
    compares: 'devices with service rating',
    smallestCopper: undefined,
    smallestAluminum: undefined,
    deviceWithinFt: 10,
    standing: 'read',
  },
  {
    edition: 'NEC 2020',
    section: '705.11',
    compares: 'currents with service conductor ampacity',
    smallestCopper: '6',
    smallestAluminum: '4',
    deviceWithinFt: 10,
    standing: 'secondary',
  },
  {
    edition: 'NEC 2023',
    section: '705.11',
    compares: 'currents with service conductor ampacity',
    smallestCopper: '6',
    smallestAluminum: '4',
    deviceWithinFt: undefined,
    standing: 'secondary',
  },
  {
    edition: 'NEC 2026',
    section: '705.11, 705.11(C)',
    compares: 'currents with service conductor ampacity',
    smallestCopper: '6',
    smallestAluminum: '4',
    deviceWithinFt: 10,
    standing: 'secondary',
  },
]
