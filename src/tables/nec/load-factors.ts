import type { SourceStanding } from '../../worksheet/index.js'

/** What an edition counts in the load of a dwelling. */
export interface LoadFactors {
  /** As `codes.electrical` names it; an edition may stand here before the other tables hold it. */
  readonly edition: string
  /** Article of load calculations. */
  readonly article: '220' | '120'
  /** General lighting and receptacles, VA/ft2. */
  readonly lightingVaPerFt2: number
  /** Counted whole by the optional method of a new dwelling, VA. */
  readonly newFirstVa: number
  /** Counted whole by the optional method of an existing dwelling, VA; undefined where the edition's numbers are not known. */
  readonly existingFirstVa: number | undefined
  /** Least load of an outlet that charges a vehicle, VA; undefined where the edition names none. */
  readonly vehicleLeastVa: number | undefined
  /** Load of such an outlet whose nameplate is not known, VA; undefined where the edition names none. */
  readonly vehicleUnknownVa: number | undefined
  /** Whether it stands in the list of which a part counts, or beside it with all its load. */
  readonly vehicleInList: boolean
  /** Whether the shares of the standard method are known in this edition. */
  readonly standardKnown: boolean
  readonly standing: SourceStanding
}

const before2023 = {
  article: '220',
  lightingVaPerFt2: 3,
  newFirstVa: 10_000,
  existingFirstVa: 8000,
  vehicleLeastVa: undefined,
  vehicleUnknownVa: undefined,
  vehicleInList: true,
  standardKnown: true,
} as const

/**
 * Load calculation of a dwelling by edition.
 *
 * @source NEC 220.82, 220.83, 220.87: 2023 read; earlier editions by published examples of 2005 that use the same numbers. 220.57 of
 * 2023 and article 120 of 2026 by articles about the changes.
 */
export const loadFactors: readonly LoadFactors[] = [
  { edition: 'NEC 2011', ...before2023, standing: 'secondary' },
  { edition: 'NEC 2014', ...before2023, standing: 'secondary' },
  { edition: 'NEC 2017', ...before2023, standing: 'secondary' },
  { edition: 'NEC 2020', ...before2023, standing: 'secondary' },
  { edition: 'NEC 2023', ...before2023, vehicleLeastVa: 7200, standing: 'read' },
  {
    edition: 'NEC 2026',
    article: '120',
    lightingVaPerFt2: 2,
    newFirstVa: 8000,
    existingFirstVa: undefined,
    vehicleLeastVa: undefined,
    vehicleUnknownVa: 7200,
    vehicleInList: false,
    standardKnown: false,
    standing: 'secondary',
  },
]

/** Load of each small-appliance and laundry circuit, VA. @source NEC 220.82(B)(2), 2023 read */
export const CIRCUIT_VA = 1500

/** What is counted of the list beyond its first part. @source NEC 220.82(B), 220.83, 2023 read */
export const REST_SHARE = 0.4

/** What is counted of electric heat in the optional method of a new dwelling. @source NEC 220.82(C), 2023 read */
export const HEAT_SHARES = { supplement: 0.65, fewUnits: 0.65, manyUnits: 0.4, manyFrom: 4 } as const

/** Measured demand is counted so many times. @source NEC 220.87, 2023 read */
export const MEASURED_FACTOR = 1.25

/** Least service for which the optional method of a new dwelling stands, A. @source NEC 220.82(A), 2023 read */
export const OPTIONAL_LEAST_SERVICE_A = 100

/** Least service disconnect of a one-family dwelling, A. @source NEC 230.79(C), 2017 and 2023 read */
export const LEAST_DWELLING_SERVICE_A = 100

/** Lighting and circuits of the standard method: the first part whole, of the rest a share. @source NEC 220.42, published example */
export const STANDARD_LIGHTING = { firstVa: 3000, restShare: 0.35 } as const

/** Demand of one household range of at most 12 kW. @source NEC Table 220.55, published example */
export const ONE_RANGE = { upToVa: 12_000, demandVa: 8000 } as const

/** Least load of a dryer in the standard method, VA. @source NEC 220.54, from memory */
export const LEAST_DRYER_VA = 5000

/** What the largest motor adds to the standard method. @source NEC 220.50, from memory */
export const LARGEST_MOTOR_SHARE = 0.25
