import type { SourceStanding } from '../../worksheet/index.js'
import type { CircuitValues } from './circuit-values.js'

/** The storage of the project as the wiring stage returns it. */
export interface StorageValues {
  /** Id under equipment.storage_units. */
  readonly unit: string
  readonly name: string
  readonly count: number
  readonly coupling: 'ac' | 'dc'
  /** Continuous output of all units, kW. */
  readonly output_kw: number
  /** Nameplate energy of all units, kWh; null where the sheet does not state it. */
  readonly nameplate_kwh: number | null
  /** Rated output current of all units on the AC side, A; null where it leaves through the inverter of the modules. */
  readonly rated_output_a: number | null
  /** Panel that it lands on; null where it leaves through the inverter of the modules. */
  readonly panel: string | null
  /** From the units to their panel, and from battery to inverter where that is wired on site. */
  readonly circuits: readonly CircuitValues[]
  readonly disconnect: {
    readonly at: 'in_unit' | 'within_10_ft' | 'lockable_elsewhere' | null
    readonly rating_a: number | null
    /** 125 percent of the rated current of all units, A; null where it has no AC circuit of its own. */
    readonly required_a: number | null
    readonly section: string
    /** What stands outside by this edition. */
    readonly outside: 'none' | 'disconnect' | 'shutdown_function'
  }
  /** null without backup. */
  readonly backup: {
    readonly kind: 'critical_loads_panel' | 'whole_house'
    readonly panel: string
    readonly bus_a: number
    /** Device ahead of the panel, A. */
    readonly main_a: number | null
    readonly isolating_device_a: number | null
    readonly isolating_device_listed: boolean | null
    /** Devices of all sources that feed the panel without the grid, A. */
    readonly island_devices_a: number
  } | null
  /** null without a power control system. */
  readonly power_control: {
    readonly setting_a: number
    readonly panels: readonly string[]
    readonly counts: boolean
  } | null
  readonly places: readonly {
    readonly id: string
    readonly location: string
    readonly units: number
    readonly nameplate_kwh: number | null
  }[]
  readonly energy: readonly { readonly group: string; readonly nameplate_kwh: number; readonly limit_kwh: number }[]
  /** Held against: one cap for the property, the safe side, or what the authority allows. null where the code has no limit. */
  readonly total_limit_kwh: number | null
  /** By the other reading each kind of place has its own limit; their sum. null where the code has no limit. */
  readonly each_place_limit_kwh: number | null
  readonly checks: readonly StorageCheckValues[]
}

/** One check. */
export interface StorageCheckValues {
  readonly id: string
  readonly verdict: 'pass' | 'fail' | 'not_stated' | 'not_ruled'
  readonly says: string
  readonly where: string
  /** Document, edition and place. */
  readonly section: string
  /** How far that was read. */
  readonly standing: SourceStanding
  readonly value: number | null
  readonly limit: number | null
  readonly unit: string | null
}
