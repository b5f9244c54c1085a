import { dispatch, type Battery, type Control, type StorageFlows } from '../../storage/index.js'
import { partsOf } from '../calendar/index.js'
import type { AfterStorage, HouseStorage } from '../bill/index.js'
import { atCapacity } from './read-battery.js'

/** A battery of a house with its control. */
export interface StorageSystem {
  /** When new. */
  readonly battery: Battery
  readonly control: Control
  /** Share of the usable energy that is stored at the start of the year, 0 to 1. */
  readonly startShare: number
}

/** A year of the battery at a capacity, percent of new. */
export interface StorageRun {
  readonly battery: Battery
  readonly flows: StorageFlows
}

/** Control marks have an entry for each hour; steps of a quarter of one take that of their hour. */
function controlAt(control: Control, parts: number): Control {
  if (parts === 1) return control
  const held = byQuarter.get(control)
  if (held !== undefined) return held
  const { discharge, charge, beforeEvent, event, ...rest } = control
  const fine = (marks: Uint8Array): Uint8Array =>
    Uint8Array.from({ length: marks.length * parts }, (_, i) => marks[Math.floor(i / parts)] ?? 0)
  const made: Control = {
    ...rest,
    ...(discharge === undefined ? {} : { discharge: fine(discharge) }),
    ...(charge === undefined ? {} : { charge: fine(charge) }),
    ...(beforeEvent === undefined ? {} : { beforeEvent: fine(beforeEvent) }),
    ...(event === undefined ? {} : { event: fine(event) }),
  }
  byQuarter.set(control, made)
  return made
}

const byQuarter = new WeakMap<Control, Control>()

/** Follows the battery through the hours of a year of a house, or through their quarters. */
export function runStorage(
  system: StorageSystem,
  usageKwh: Float64Array,
  productionKwh: Float64Array,
  capacityPct = 100,
): StorageRun {
  const battery = atCapacity(system.battery, capacityPct)
  const parts = partsOf(usageKwh)
  const house = { stepH: 1 / parts, loadKwh: usageKwh, pvKwh: productionKwh }
  const flows = dispatch(house, battery, controlAt(system.control, parts), battery.mostKwh * system.startShare)
  return { battery, flows }
}

/** What the bills see. Written as output less what the battery takes, so that a battery of 0 kWh leaves every bit as it is. */
export function behindMeter(system: StorageSystem, capacityPct = 100): HouseStorage {
  return (usageKwh, productionKwh): AfterStorage => {
    const { battery, flows } = runStorage(system, usageKwh, productionKwh, capacityPct)
    const { chargeKwh, dischargeKwh, curtailedKwh } = flows
    const stepH = 1 / partsOf(productionKwh)
    const outputKwh = new Float64Array(productionKwh.length)
    const generationKwh = new Float64Array(productionKwh.length)
    for (let h = 0; h < productionKwh.length; h++) {
      const kept = productionKwh[h]! - curtailedKwh[h]!
      generationKwh[h] = kept
      outputKwh[h] = kept - chargeKwh[h]! + dischargeKwh[h]! - battery.standbyKw * stepH
    }
    return { outputKwh, generationKwh }
  }
}
