import type { Kilowatts, KilowattHours } from '../values/index.js'

/** All units of a house together, as the steps see them; powers and energies of charge and discharge on the AC side. */
export interface Battery {
  /** Most and least that may be stored, kWh; the least is the reserve for an outage. */
  readonly mostKwh: KilowattHours
  readonly leastKwh: KilowattHours
  /** Most power into it from the sun and from the grid, and out of it, kW. */
  readonly chargeSunKw: Kilowatts
  readonly chargeGridKw: Kilowatts
  readonly dischargeKw: Kilowatts
  /**
   * Stored per kWh that the house gives up to it. The same from sun and grid where it has an inverter of its own; on the DC
   * side of a shared inverter the sun's way is shorter by the inverter, and may pass 1, as the loss of that inverter falls away.
   */
  readonly storedOfSun: number
  readonly storedOfGrid: number
  /** Given out per kWh taken from the store. */
  readonly givenOfStored: number
  /** Constant load, kW. */
  readonly standbyKw: Kilowatts
  /** What modules and battery together may give on the AC side, kW; undefined = no common limit. */
  readonly sharedAcKw?: Kilowatts
}

/** Where what is charged may come from: surplus of the step, output of the modules in the step, or anything. */
export type ChargeFrom = 'surplus' | 'pv' | 'any'

/** When the battery charges and discharges; marks have an entry for each step, 1 = yes. */
export interface Control {
  /** Steps in which it may discharge; all when missing. */
  readonly discharge?: Uint8Array
  /** Steps in which it charges at full power. */
  readonly charge?: Uint8Array
  /** Steps before an event, in which it fills and holds, and those of the event, in which it serves the house. */
  readonly beforeEvent?: Uint8Array
  readonly event?: Uint8Array
  readonly demandLimitKw?: Kilowatts
  readonly chargeFrom: ChargeFrom
  /** Whether it discharges at full power and into the grid in the steps of `discharge`. */
  readonly batteryExport: boolean
  /** Most that may leave the house, kW; undefined = no limit. */
  readonly exportCapKw?: Kilowatts
}

/** Own use first: the control of a battery of which nothing else is said. */
export const OWN_USE: Control = { chargeFrom: 'surplus', batteryExport: false }

/** Use and output by steps of one length. */
export interface HouseSteps {
  readonly stepH: number
  readonly loadKwh: Float64Array
  /** Output on the AC side; below zero where the inverter draws at night. */
  readonly pvKwh: Float64Array
}
