import type { TradeSize } from '../../tables/nec/index.js'
import type { CircuitKind, Lines } from './circuit.js'

/** A circuit with its segments, as the wiring stage returns it. */
export interface CircuitValues {
  readonly id: string
  readonly kind: CircuitKind
  readonly inverters: number
  readonly modules: Readonly<Record<string, number>>
  readonly voltage_v: number
  readonly continuous_a: number
  readonly required_a: number
  /** Of a three-phase service: the lines of the circuit. */
  readonly lines?: Lines
  /** Poles of its device on a three-phase service. */
  readonly poles?: 2 | 3
  /** Current in each line of a three-phase service; continuous_a is the highest. */
  readonly line_currents_a?: { readonly a: number; readonly b: number; readonly c: number }
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
