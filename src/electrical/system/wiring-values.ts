import type { TradeSize } from '../../tables/nec/index.js'
import type { FaultValues, LoadValues } from './load-values.js'
import type { CircuitValues } from './circuit-values.js'
import type { StorageValues } from './storage-values.js'

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
  /** Every node of the installation from the utility inwards. */
  readonly distribution: readonly NodeValues[]
  /** Every conductor from the array to the utility once. */
  readonly conductors: readonly ConductorValues[]
  /** Ways out when something between the PV system and the utility does not comply, in the order to try them. */
  readonly remedies: readonly RemedyValues[]
  /** Calculated load of the dwelling, A; null without a calculation. */
  readonly service_load_a: number | null
  readonly service_load: LoadValues | null
  readonly fault_current: FaultValues | null
  readonly grounding: GroundingValues
  readonly voltage: VoltageValues
  /** Of a service of 208 V; missing for single-phase 120/240 V. */
  readonly service?: ServiceValues
  /** Outputs of DC combiners; missing where there are none. */
  readonly dc_combiners?: readonly DcCombinerValues[]
  /** Heights and distances of overhead lines; missing where none is stated. */
  readonly overhead?: readonly OverheadValues[]
  /** Storage with its circuits and checks; missing without storage. */
  readonly storage?: StorageValues
}

/** Least height of a line over a surface, or least distance to a place of work. */
export interface OverheadValues {
  /** The line. */
  readonly id: string
  /** Path in the project file of what lies below or near, or `ground`, `service entrance`. */
  readonly to: string
  readonly what: string
  readonly kind: 'clearance' | 'work'
  readonly clearance_ft: number
  /** By how much the true value can be less. */
  readonly error_ft: number
  readonly required_ft: number
  readonly section: string
  /** Whether the section rules lines of this voltage. */
  readonly ruled: boolean
  readonly complies: boolean
}

export interface ServiceValues {
  readonly voltage_v: number
  readonly phases: 1 | 3
  /** Rated output of all inverters, VA. */
  readonly apparent_power_va: number
  /** Of all inverters together. */
  readonly line_currents_a: { readonly a: number; readonly b: number; readonly c: number }
  /** Largest deviation of a line current from the mean of the three; null in one phase. */
  readonly unbalance_pct: number | null
}

export interface DcCombinerValues {
  readonly id: string
  readonly strings: readonly string[]
  readonly poles_fused: 'none' | 'one' | 'both'
  /** Fuse of each string; null without fuses. */
  readonly fuse_a: number | null
  /** Current that the other strings can feed into one. */
  readonly backfeed_a: number
  readonly output_a: number
  readonly highest_voltage_v: number
  readonly fuses_needed: boolean
  readonly disconnect_needed: boolean
  readonly complies: boolean
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
  /** Of strings with converters; voc_cold_v is then the highest voltage of the string, vmp_hot_v its working voltage. */
  readonly optimiser?: {
    readonly id: string
    readonly units: number
    /** Modules of one unit in the cold. */
    readonly input_cold_v: number
    /** Short-circuit current that the input is held against. */
    readonly input_isc_a: number
    /** After shutdown; null where the sheet does not tell. */
    readonly shutdown_v: number | null
    readonly string_power_w: number
  }
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

/** A node of the installation with the rules that it was judged by. */
export interface NodeValues {
  readonly id: string
  readonly kind: 'service' | 'panel' | 'combiner' | 'feeder' | 'tap' | 'source'
  /** Node that it hangs on; null for the service. */
  readonly parent: string | null
  readonly name: string
  readonly bus_a: number | null
  /** Device that protects it, A. */
  readonly main_a: number | null
  /** Rated current of the sources that pass through it, A. */
  readonly inverter_a: number
  readonly rules: readonly NodeRuleValues[]
  readonly complies: boolean
  /** The rule that governs; null where there is none to judge by. */
  readonly governs: string | null
  readonly section: string | null
  /** Fault current that breakers there have to interrupt, A; null where it is not known, and for all but service and panels. */
  readonly fault_current_a: number | null
}

/** A way out when no connection rule holds. */
export interface RemedyValues {
  readonly what: string
  /** Largest PV current that it makes room for; null where a fact is missing. */
  readonly reaches_a: number | null
  /** Whether the system as planned then complies; null where a fact is missing. */
  readonly passes: boolean | null
  /** As stated in electrical.remedy_costs_usd; null where no price is stated. */
  readonly cost_usd: number | null
  readonly section: string
  readonly why: string
}

/** A conductor between two terminals or boxes, as diagram and schedules name it. */
export interface ConductorValues {
  readonly tag: string
  readonly from: string
  readonly to: string
  readonly circuits: readonly string[]
  readonly size_awg: string
  readonly material: string
  /** As it stands on the conductor; null for bare ones, and where nobody states it. */
  readonly insulation: string | null
  /** Conductors of one set by their use; all 0 for a conductor of grounding and bonding, which is one alone. */
  readonly count: { readonly lines: number; readonly neutral: number; readonly ground: number }
  /** Parallel sets. */
  readonly sets: number
  /** After all factors and the limit of its terminals; null for one that carries fault current only. */
  readonly ampacity_a: number | null
  /** Current that it has to carry without end, with its 125 percent. */
  readonly required_a: number | null
  /** Device that protects it, or that it ends in. */
  readonly ocpd_a: number | null
  /** Whether that device protects it; null where none is asked for. */
  readonly ocpd_size_ok: boolean | null
  readonly method: string
  readonly section: string
  readonly grounding_awg: string | null
  readonly length_ft: number | null
}

export interface NodeRuleValues extends RuleValues {
  /** Whether one of its kind is enough, or each has to hold. */
  readonly needed: 'one_of' | 'all'
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
