import type { DcCombiner, Inverter, Optimiser, PvModule, TrunkCable } from '../../project/index.js'
import type { ConductorSize } from '../../tables/nec/index.js'
import type { Amperes, Feet, Percent, Volts } from '../../values/index.js'
import { addPairs, highestLineA, onePair, type PairCurrents } from './line-currents.js'

export type CircuitKind =
  | 'dc_string'
  | 'dc_output'
  | 'ac_branch'
  | 'ac_inverter_output'
  | 'ac_combined_output'
  | 'ac_supply_tap'
  | 'ac_storage'
  | 'dc_storage'

/** What conductors ahead of a service disconnect must have whatever their current: only the utility protects them. */
export interface ServiceFloor {
  /** Overcurrent device where they end, A. */
  readonly endDeviceA: Amperes
  /** Ampacity of the smallest service, A. */
  readonly leastA: Amperes
  /** Smallest size that the edition names. */
  readonly leastSize: ConductorSize | undefined
}

/** A listed cable with evenly spaced inverters. */
export interface Trunk {
  readonly id: string
  readonly cable: TrunkCable
  readonly feed: 'end' | 'centre'
  /** Length from the feed to the last inverter (of the longer half), ft. */
  readonly lengthFt: Feet
  readonly inverters: number
}

/** Lines of a three-phase circuit, or the pair of a single-phase one on a three-phase service. */
export type Lines = 'AB' | 'BC' | 'CA' | 'ABC'

/** A circuit before it is sized. */
export interface Circuit {
  readonly id: string
  readonly kind: CircuitKind
  /** Path in project.yaml that a person would change. */
  readonly where: string
  /** Line-to-line voltage, or the string's voltage at maximum power, V. */
  readonly voltageV: Volts
  /** Maximum circuit current of the line that carries most, A: rated output, or 1.25 times the short-circuit current. */
  readonly continuousA: Amperes
  /**
   * Current at which voltage rise is reckoned, A: rated output, or the current at maximum power; in three phases that of a
   * two-wire circuit with the same rise.
   */
  readonly operatingA: Amperes
  /** Device that protects it, A; null when none is needed. */
  readonly deviceA: Amperes | null
  /** Device that the grounding conductor is sized by, A. */
  readonly groundingDeviceA: Amperes
  /** The smallest device that would do, A. */
  readonly smallestDeviceA: Amperes
  /** Largest device that the makers allow, A; undefined when nothing limits it. */
  readonly maxDeviceA: Amperes | undefined
  /** Largest voltage rise that the maker allows, percent. */
  readonly makerRisePct: Percent | undefined
  readonly inverterId: string | undefined
  readonly inverter: Inverter | undefined
  /** Inverters that feed it. */
  readonly inverters: number
  readonly trunk: Trunk | undefined
  readonly arrays: Readonly<Record<string, number>>
  readonly string: StringFacts | undefined
  /** Lines of a three-phase service that it has; undefined on a single-phase service and for DC. */
  readonly lines?: Lines | undefined
  /** Currents between its lines, where it has not all its current between A and B. */
  readonly pairCurrentsA?: PairCurrents | undefined
  /** Of the output of a DC combiner only. */
  readonly combiner?: { readonly stated: DcCombiner; readonly strings: readonly Circuit[] } | undefined
  /** Of the conductors ahead of the service disconnect only. */
  readonly floor?: ServiceFloor | undefined
  /** Of the circuits of a storage system only. */
  readonly storage?: StorageCircuitFacts | undefined
}

/** What a storage circuit is made of. */
export interface StorageCircuitFacts {
  /** Id under equipment.storage_units. */
  readonly unitId: string
  /** Units that feed it. */
  readonly units: number
  /** Current of one unit, A, and the key that it comes from. */
  readonly eachA: Amperes
  readonly eachFrom: string
  /** Panel that it lands on; undefined for the DC circuit of the battery. */
  readonly landing: string | undefined
}

/** What a string is made of. */
export interface StringFacts {
  readonly array: string
  readonly moduleId: string
  readonly module: PvModule
  readonly modules: number
  readonly unit: string
  readonly input: number
  /** Strings on the same input, this one too. */
  readonly parallel: number
  /** The highest short-circuit current that is rated; that of an optimiser is its rated output. */
  readonly iscA: Amperes
  readonly optimiser?: OptimiserFacts | undefined
}

/** The converters of a string. */
export interface OptimiserFacts {
  readonly id: string
  readonly sheet: Optimiser
  /** Units in series. */
  readonly units: number
}

export const isAc = (circuit: Pick<Circuit, 'kind'>): boolean => circuit.kind.startsWith('ac_')

/** Conductors between a supply-side connection and the overcurrent device: service conductors. */
export const isSupplyTap = (circuit: Pick<Circuit, 'kind'>): boolean => circuit.kind === 'ac_supply_tap'

/** Circuits of storage: from its units to their panel, or from battery to inverter. */
export const isStorage = (circuit: Pick<Circuit, 'kind'>): boolean => circuit.kind.endsWith('_storage')

/** Whether all inverters feed through it: combined output and supply-side connection. */
export const isShared = (circuit: Pick<Circuit, 'kind'>): boolean =>
  circuit.kind === 'ac_combined_output' || isSupplyTap(circuit)

/** Id of the circuit from the combiner panel to the point of connection. */
export const COMBINED_OUTPUT = 'output'

/** Id of the circuit from the supply-side connection to its overcurrent device. */
export const SUPPLY_TAP = 'supply_tap'

/** Currents of a circuit between its lines. */
export const pairCurrentsOf = (circuit: Circuit): PairCurrents => circuit.pairCurrentsA ?? onePair(circuit.continuousA)

/** Poles of the device of a circuit. */
export const polesOf = ({ lines }: Pick<Circuit, 'lines'>): 2 | 3 => (lines === 'ABC' ? 3 : 2)

/**
 * What AC circuits put together into the line that carries most, A; on a single-phase service their sum.
 *
 * @source vector sum of the currents between the lines
 */
export const highestLineCurrentA = (circuits: readonly Circuit[]): Amperes =>
  highestLineA(addPairs(circuits.map(pairCurrentsOf)))
