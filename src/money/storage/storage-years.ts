import {
  storageLife,
  warrantyEndAt,
  yearOfUse,
  yearSums,
  type Fade,
  type StorageLife,
  type YearRun,
} from '../../storage/index.js'
import { partsOf } from '../calendar/index.js'
import { runStorage, type StorageRun } from './behind-meter.js'
import type { HouseBattery } from './read-storage.js'

/** What a year of a battery was, for life and report. */
export function yearRunOf({ battery, flows }: StorageRun, newKwh: number): YearRun {
  const stepH = 1 / partsOf(flows.storedKwh)
  const { chargedKwh, dischargedKwh } = yearSums(flows, battery, stepH)
  return { chargedKwh, dischargedKwh, use: yearOfUse(flows, battery, stepH, newKwh) }
}

/**
 * Capacity, throughput, warranty and replacement through the years of a study.
 *
 * @param usageOf Use of each year, 1 = the first, 8760 hours, kWh. @param shares Output of each year relative to the first.
 */
export function storageYears(
  house: HouseBattery,
  usageOf: (year: number) => Float64Array,
  productionKwh: Float64Array,
  shares: readonly number[],
): StorageLife {
  const newKwh = house.system.battery.mostKwh
  const runAt = (year: number, capacityPct: number): YearRun => {
    const share = shares[year - 1] ?? 1
    const output = share === 1 ? productionKwh : productionKwh.map((kwh) => kwh * share)
    return yearRunOf(runStorage(house.system, usageOf(year), output, capacityPct), newKwh)
  }
  return storageLife(shares.length, fadeOf(house, runAt(1, 100)), house.warranty, house.replace, runAt)
}

/** The straight line ends where the warranty does, were every year like the first. */
export function fadeOf({ fade, warranty }: HouseBattery, first: YearRun): Fade {
  if (fade.kind !== 'warranty line') return fade
  if (warranty === undefined) throw new Error('a straight line without a warranty')
  return { kind: 'line', endPct: fade.endPct, years: warrantyEndAt(warranty, first).afterYears }
}
