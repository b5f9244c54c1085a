import type { TradeSize } from '../../tables/nec/index.js'
import type { CircuitKind } from './circuit.js'

/** What the wiring stage returns; the names are those of the JSON output. */
export interface WiringValues {
  readonly edition: string
  readonly circuits: readonly CircuitValues[]
  /** Every raceway once, with all that is in it. */
  readonly raceways: readonly RacewayValues[]
  /** Stated boxes and conduit bodies. */
  readonly boxes: readonly BoxValues[]
  readonly strings: readonly StringValues[]
  readonly panel: PanelValues
  readonly combiner: PanelValues | null
  readonly grounding: GroundingValues
  readonly voltage: VoltageValues
}

export interface CircuitValues {
  readonly id: string
  readonly kind: CircuitKind
  readonly inverters: number
  readonly modules: Readonly<Record<string, number>>
  readonly voltage_v: number
  readonly continuous_a: number
  readonly required_a: number
  /** null when the circuit needs no overcurrent device. */
  readonly breaker_a: number | null
  readonly max_breaker_a: number | null
  readonly terminal_temperature_c: 60 | 75
  /** Of this circuit alone: trunk and segments. */
  readonly voltage_rise_pct: number
  /** With the combined output, up to the point of connection. */
  readonly total_voltage_rise_pct: number
  readonly voltage_rise_limit_pct: number
  readonly segments: readonly SegmentValues[]
}

export interface SegmentValues {
  readonly id: string
  readonly location: string
  readonly length_ft: number
  readonly size_awg: string
  readonly material: string
  readonly insulation: string
  readonly ambient_c: number
  readonly rooftop_adder_c: number
  readonly correction: number
  readonly adjustment: number
  readonly ampacity_a: number
  readonly terminal_limit_a: number
  readonly governs: string
  /** What the person named and whether it does; null when nothing was named. */
  readonly named: { readonly size_awg: string; readonly complies: boolean; readonly reason: string } | null
  readonly smallest_awg: string
  readonly egc_awg: string | null
  readonly raceway: { readonly type: string; readonly trade_size: TradeSize | null; readonly fill_pct: number | null }
  readonly voltage_rise_pct: number
  readonly straps: number
}

export interface RacewayValues {
  readonly id: string
  readonly run: string
  readonly location: string
  readonly type: string
  readonly form: 'raceway' | 'cable' | 'open'
  readonly trade_size: TradeSize | null
  /** null for cables and open wire, and where the fill was not judged. */
  readonly fill_pct: number | null
  readonly fill_limit_pct: number | null
  readonly length_ft: number
  readonly circuits: readonly string[]
  readonly conductors: readonly ConductorCount[]
  readonly straps: number
  readonly strap_positions_ft: readonly number[]
  readonly length_change_in: number | null
  readonly expansion_fitting: boolean
}

export interface BoxValues {
  readonly id: string
  readonly run: string
  /** null at the beginning of a run. */
  readonly after_segment: string | null
  readonly kind: 'box' | 'conduit_body'
  readonly standard_box: string | null
  readonly spliced: boolean
  /** null when it is not stated. */
  readonly volume_in3: number | null
  /** null where the rule does not go by volume. */
  readonly required_in3: number | null
  /** Sum of what is counted: conductors, clamps, devices. */
  readonly count: number
  readonly length_in: number | null
  /** For conductors of 4 AWG and larger; null where the rule does not apply or could not be checked. */
  readonly required_length_in: number | null
  /** null when it could not be checked. */
  readonly complies: boolean | null
  readonly section: string
}

export interface ConductorCount {
  readonly circuit: string
  readonly use: 'current_carrying' | 'neutral' | 'grounding'
  readonly count: number
  readonly size_awg: string
  readonly material: string
  readonly insulation: string
}

export interface StringValues {
  readonly id: string
  readonly modules: number
  readonly voc_cold_v: number
  readonly vmp_hot_v: number
  readonly limit_v: number
  readonly min_modules: number
  readonly max_modules: number
  readonly complies: boolean
}

export interface RuleValues {
  readonly rule: string
  readonly section: string
  readonly holds: boolean
  readonly sum_a: number | null
  readonly limit_a: number | null
  readonly why: string
  readonly max_inverter_a: number
  readonly label: string
}

export interface PanelValues {
  readonly bus_a: number | null
  readonly main_a: number | null
  readonly inverter_a: number
  readonly rule: string
  readonly section: string
  readonly complies: boolean
  readonly max_inverter_a: number
  /** Largest sum of PV breakers where the rule counts breakers instead of currents, A. */
  readonly max_breakers_a?: number
  readonly label: string
  readonly rules: readonly RuleValues[]
  readonly spaces_needed: number
  readonly spaces_free: number | null
}

export interface GroundingValues {
  readonly equipment: readonly {
    readonly raceway: string
    readonly size_awg: string
    readonly device_a: number
    readonly material: string
    readonly unspliced: boolean
  }[]
  readonly array: {
    readonly size_awg: string
    readonly material: string
    readonly unspliced: boolean
    readonly note: string
  }
  readonly electrode: {
    readonly required: boolean
    readonly size_awg: string | null
    readonly unspliced: boolean
    readonly length_ft: number | null
    readonly note: string
  }
  readonly supply_side_bonding_awg: string | null
  readonly raceway_bonding: readonly { readonly at: string; readonly between: string; readonly note: string }[]
}

export interface VoltageValues {
  readonly method: string
  readonly conductor_temperature_c: number
  readonly power_factor: number
}
