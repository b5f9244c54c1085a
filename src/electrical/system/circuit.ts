import type { Inverter, PvModule, TrunkCable } from '../../project/index.js'
import type { ConductorSize } from '../../tables/nec/index.js'
import type { Amperes, Feet, Percent, Volts } from '../../values/index.js'

export type CircuitKind = 'dc_string' | 'ac_branch' | 'ac_inverter_output' | 'ac_combined_output' | 'ac_supply_tap'

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

/** A circuit before it is sized. */
export interface Circuit {
  readonly id: string
  readonly kind: CircuitKind
  /** Path in project.yaml that a person would change. */
  readonly where: string
  /** Line-to-line voltage, or the string's voltage at maximum power, V. */
  readonly voltageV: Volts
  /** Maximum circuit current, A: rated output, or 1.25 times the short-circuit current. */
  readonly continuousA: Amperes
  /** Current at which voltage rise is reckoned, A: rated output, or the current at maximum power. */
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
  /** Of the conductors ahead of the service disconnect only. */
  readonly floor?: ServiceFloor | undefined
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
  readonly iscA: Amperes
}

export const isAc = (circuit: Circuit): boolean => circuit.kind !== 'dc_string'

/** Conductors between a supply-side connection and the overcurrent device: service conductors. */
export const isSupplyTap = (circuit: Pick<Circuit, 'kind'>): boolean => circuit.kind === 'ac_supply_tap'

/** Whether all inverters feed through it: combined output and supply-side connection. */
export const isShared = (circuit: Pick<Circuit, 'kind'>): boolean =>
  circuit.kind === 'ac_combined_output' || isSupplyTap(circuit)

/** Id of the circuit from the combiner panel to the point of connection. */
export const COMBINED_OUTPUT = 'output'

/** Id of the circuit from the supply-side connection to its overcurrent device. */
export const SUPPLY_TAP = 'supply_tap'

/** Line-to-line voltage of the service that is covered, V. */
export const SERVICE_VOLTAGE_V = 240
