import type { Battery } from './battery.js'
import type { StorageFlows } from './dispatch.js'
import type { YearOfUse } from './fade.js'
import { rainflow } from './rainflow.js'

/** Sums of a year of flows, kWh. */
export interface YearSums {
  readonly importKwh: number
  readonly exportKwh: number
  readonly curtailedKwh: number
  readonly chargedKwh: number
  readonly dischargedKwh: number
  /** Left in the store beyond what was there at the start. */
  readonly leftKwh: number
  readonly standbyKwh: number
}

export function yearSums(flows: StorageFlows, battery: Battery, stepH: number): YearSums {
  const last = flows.storedKwh.at(-1) ?? flows.startKwh
  return {
    importKwh: total(flows.importKwh),
    exportKwh: total(flows.exportKwh),
    curtailedKwh: total(flows.curtailedKwh),
    chargedKwh: total(flows.chargeKwh),
    dischargedKwh: total(flows.dischargeKwh),
    leftKwh: last - flows.startKwh,
    standbyKwh: battery.standbyKw * stepH * flows.storedKwh.length,
  }
}

function total(values: Float64Array): number {
  let sum = 0
  for (let i = 0; i < values.length; i++) sum += values[i]!
  return sum
}

/**
 * What a year of flows does to the cells.
 *
 * @param newKwh Usable energy when new, which full cycles are counted by.
 */
export function yearOfUse(flows: StorageFlows, battery: Battery, stepH: number, newKwh: number): YearOfUse {
  if (newKwh <= 0 || battery.mostKwh <= 0) return { fullCycles: 0, meanFilled: 0, cycles: [], cRate: 0 }
  const taken = total(flows.dischargeKwh) / battery.givenOfStored
  let steps = 0
  let filled = 0
  for (let i = 0; i < flows.storedKwh.length; i++) {
    filled += flows.storedKwh[i]!
    if (flows.dischargeKwh[i]! > 0) steps += 1
  }
  return {
    fullCycles: taken / newKwh,
    meanFilled: filled / flows.storedKwh.length / battery.mostKwh,
    cycles: rainflow(flows.storedKwh).map(({ range, count }) => ({ depth: range / battery.mostKwh, count })),
    cRate: steps === 0 ? 0 : taken / (steps * stepH) / battery.mostKwh,
  }
}
