import type { SourceStanding } from '../../worksheet/index.js'
import type { Edition } from './editions.js'
import { carriedStanding, withCarried } from './edition-2026.js'

/** What an edition asks of PV circuits on a building when the system is shut down. */
export interface RapidShutdownRule {
  readonly edition: Edition
  readonly section: string
  readonly boundary: string
  readonly outsideLimit: string
  /** Ways to satisfy the limit inside the boundary; empty where the edition has none. */
  readonly insideOptions: readonly ('module_level' | 'hazard_control_system' | 'no_exposed_parts')[]
  readonly insideLimit: string
  /** Voltage that conductors inside the boundary may keep where no other option is taken, V, with its section. */
  readonly insideVoltage: { readonly limitV: number; readonly section: string } | undefined
  readonly timeS: number
  /** Whether the initiator of a dwelling must be readily accessible outside. */
  readonly initiatorOutdoors: boolean
  readonly labelSection: string
  readonly moduleLevelNote: string
  readonly standing: SourceStanding
  /** What of it stands less well than the rest, one sentence. */
  readonly unsure?: string
}

const rows: readonly RapidShutdownRule[] = [
  {
    edition: 'NEC 2014',
    section: '690.12(1)-(5)',
    boundary: 'more than 10 ft from array, or more than 5 ft inside building',
    outsideLimit: '30 V and 240 VA',
    insideOptions: [],
    insideLimit: 'none',
    insideVoltage: undefined,
    timeS: 10,
    initiatorOutdoors: false,
    labelSection: '690.56(C)',
    moduleLevelNote: 'loss of utility power does it',
    standing: 'secondary',
  },
  {
    edition: 'NEC 2017',
    section: '690.12(A)-(D)',
    boundary: '1 ft from array in all directions, or more than 3 ft from point of entry into building',
    outsideLimit: '30 V',
    insideOptions: ['module_level', 'hazard_control_system', 'no_exposed_parts'],
    insideLimit:
      'one of: listed RSD array; 80 V; no exposed wiring/conductive parts and > 8 ft from grounded parts (from 2019-01-01)',
    insideVoltage: { limitV: 80, section: '690.12(B)(2)' },
    timeS: 30,
    initiatorOutdoors: true,
    labelSection: '690.56(C)(1)-(3)',
    moduleLevelNote: 'dc per module is below 80 V; ac circuits stop on loss of grid',
    standing: 'read',
  },
  {
    edition: 'NEC 2020',
    section: '690.12(A)-(D)',
    boundary: '1 ft from array in all directions, or more than 3 ft from point of entry into building',
    outsideLimit: '30 V',
    insideOptions: ['module_level', 'hazard_control_system', 'no_exposed_parts'],
    insideLimit: 'PV hazard control system (UL 3741); or 80 V; or 8 ft rule',
    insideVoltage: { limitV: 80, section: '690.12(B)(2)' },
    timeS: 30,
    initiatorOutdoors: true,
    labelSection: '690.56(C)(1)-(2)',
    moduleLevelNote:
      'controlled conductors = PV dc circuits AND inverter output circuits from inverters inside the boundary (690.12(A)(2))',
    standing: 'read',
  },
  {
    edition: 'NEC 2023',
    section: '690.12(A)-(D)',
    boundary: '1 ft from array in all directions, or more than 3 ft from point of entry into building',
    outsideLimit: '30 V',
    insideOptions: ['module_level', 'hazard_control_system', 'no_exposed_parts'],
    insideLimit: 'PVHCS; or 80 V; or 8 ft rule',
    unsure: 'The 3 ft from the point of entry and the 8 ft rule are from memory.',
    insideVoltage: { limitV: 80, section: '690.12(B)(2)' },
    timeS: 30,
    initiatorOutdoors: true,
    labelSection: '690.12(D)',
    moduleLevelNote: 'exception 2: non-enclosed detached structures exempt (carports, trellises)',
    standing: 'secondary',
  },
]

/**
 * Rapid shutdown by edition; an edition that is not listed has no such rule.
 *
 * @source NEC 690.12; 2017 read, 2020 read in a state code that adopts it, 2014 and 2023 secondary; 2026 as 2023, whose limits are reported as unchanged.
 */
export const rapidShutdownRules: readonly RapidShutdownRule[] = withCarried(rows, (row) => ({
  ...row,
  standing: carriedStanding(row.standing),
}))
