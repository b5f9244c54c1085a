import type { Edition } from './editions.js'

export type Insulation = 'THWN-2' | 'XHHW-2' | 'USE-2' | 'PV wire' | 'THHN' | 'USE'

/** Where an insulation may be used. */
export interface InsulationRow {
  readonly type: Insulation
  /** Temperature rating in wet places, deg C; 0 when it must not get wet. */
  readonly wetC: number
  readonly dryC: number
  /** Editions that allow it as exposed single conductor in the sun within the array. */
  readonly exposedInArray: readonly Edition[]
  /** Whether it may be pulled into a raceway on a roof. */
  readonly racewayOnRoof: boolean
  /** What has to be true besides, or ''. */
  readonly condition: string
  readonly standing: 'read' | 'from memory'
}

const all: readonly Edition[] = ['NEC 2011', 'NEC 2014', 'NEC 2017', 'NEC 2020', 'NEC 2023', 'NEC 2026']

/**
 * Insulation types of PV wiring.
 *
 * @source NEC 310.104(A) (2011 to 2017), Table 310.4(1) (2020, 2023); 690.31(C); 2026 as 2023.
 */
export const insulationTypes: readonly InsulationRow[] = [
  { type: 'THWN-2', wetC: 90, dryC: 90, exposedInArray: [], racewayOnRoof: true, condition: '', standing: 'read' },
  { type: 'XHHW-2', wetC: 90, dryC: 90, exposedInArray: [], racewayOnRoof: true, condition: '', standing: 'read' },
  {
    type: 'USE-2',
    wetC: 90,
    dryC: 90,
    exposedInArray: all,
    racewayOnRoof: true,
    condition: 'in a raceway it must also be marked RHW-2; since NEC 2020 in the array too, and sunlight resistant',
    standing: 'read',
  },
  {
    type: 'PV wire',
    wetC: 90,
    dryC: 90,
    exposedInArray: all,
    racewayOnRoof: true,
    condition: 'its outside diameter differs by maker',
    standing: 'read',
  },
  {
    type: 'THHN',
    wetC: 0,
    dryC: 90,
    exposedInArray: [],
    racewayOnRoof: false,
    condition: 'dry and damp places only; the inside of a raceway outdoors is a wet place',
    standing: 'read',
  },
  { type: 'USE', wetC: 75, dryC: 75, exposedInArray: [], racewayOnRoof: false, condition: '', standing: 'read' },
]
