/** What the meter and the bills see of a battery, kWh by hour. */
export interface AfterStorage {
  /** Use of the house less what it draws: output after charging, discharging, standby and curtailment. */
  readonly outputKwh: Float64Array
  /** Output of the modules that was not curtailed. */
  readonly generationKwh: Float64Array
}

/** A battery behind the meter: what it makes of use and output of the 8760 hours. */
export type HouseStorage = (usageKwh: Float64Array, productionKwh: Float64Array) => AfterStorage
