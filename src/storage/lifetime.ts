import { afterYear, NEW, type Aged, type Fade, type YearOfUse } from './fade.js'

/** Until when the maker stands for all units together. */
export interface Warranty {
  readonly years: number
  readonly throughputKwh?: number
  readonly counts?: 'discharge' | 'charge' | 'both'
  readonly fullCycles?: number
}

/** A year of the battery in use. */
export interface YearRun {
  readonly chargedKwh: number
  readonly dischargedKwh: number
  readonly use: YearOfUse
}

/** When the battery is bought again. */
export interface ReplaceWhen {
  readonly floorPct?: number
  readonly atWarrantyEnd: boolean
}

/** One year of the study. */
export interface StorageYear {
  readonly year: number
  /** At the end of the year; the year is worked out with it, on the safe side. */
  readonly capacityPct: number
  readonly run: YearRun
  /** Whether the battery is bought again at the end of the year. */
  readonly replaced: boolean
}

export type WarrantyLimit = 'years' | 'throughput' | 'full cycles'

export interface StorageLife {
  readonly years: readonly StorageYear[]
  /** Of the first battery; its years may lie beyond the study. */
  readonly warrantyEnd?: { readonly afterYears: number; readonly by: WarrantyLimit }
}

/** Where a warranty ends, were every year like this one. */
export function warrantyEndAt(
  warranty: Warranty,
  run: YearRun,
): { readonly afterYears: number; readonly by: WarrantyLimit } {
  const candidates: { afterYears: number; by: WarrantyLimit }[] = [{ afterYears: warranty.years, by: 'years' }]
  const counted = countedKwh(warranty, run)
  if (warranty.throughputKwh !== undefined && counted > 0)
    candidates.push({ afterYears: warranty.throughputKwh / counted, by: 'throughput' })
  if (warranty.fullCycles !== undefined && run.use.fullCycles > 0)
    candidates.push({ afterYears: warranty.fullCycles / run.use.fullCycles, by: 'full cycles' })
  return candidates.reduce((first, one) => (one.afterYears < first.afterYears ? one : first))
}

function countedKwh({ counts = 'both' }: Warranty, { chargedKwh, dischargedKwh }: YearRun): number {
  return counts === 'discharge' ? dischargedKwh : counts === 'charge' ? chargedKwh : chargedKwh + dischargedKwh
}

/**
 * Follows capacity, throughput, warranty and replacement through the years of a study.
 *
 * @param runYear The battery through one year of the house at a capacity (percent of new).
 */
export function storageLife(
  years: number,
  fade: Fade,
  warranty: Warranty | undefined,
  replace: ReplaceWhen | undefined,
  runYear: (year: number, capacityPct: number) => YearRun,
): StorageLife {
  const rows: StorageYear[] = []
  let aged: Aged = NEW
  let run = runYear(1, 100)
  let age = 0
  let counted = 0
  let cycles = 0
  let end: StorageLife['warrantyEnd']
  let isFirst = true
  for (let year = 1; year <= years; year++) {
    aged = afterYear(aged, fade, run.use)
    run = runYear(year, aged.capacityPct)
    const left = warranty === undefined ? undefined : warrantyEndAt(remaining(warranty, age, counted, cycles), run)
    age += 1
    if (warranty !== undefined) counted += countedKwh(warranty, run)
    cycles += run.use.fullCycles
    const isOut = left !== undefined && left.afterYears <= 1
    if (isFirst && isOut && end === undefined) end = { afterYears: age - 1 + left.afterYears, by: left.by }
    const below = replace?.floorPct !== undefined && aged.capacityPct < replace.floorPct
    const replaced = below || (replace?.atWarrantyEnd === true && isOut)
    rows.push({ year, capacityPct: aged.capacityPct, run, replaced })
    if (!replaced) continue
    aged = NEW
    run = runYear(year, 100)
    isFirst = false
    age = 0
    counted = 0
    cycles = 0
  }
  return end === undefined ? { years: rows } : { years: rows, warrantyEnd: end }
}

function remaining(warranty: Warranty, age: number, counted: number, cycles: number): Warranty {
  const { throughputKwh, fullCycles } = warranty
  return {
    ...warranty,
    years: Math.max(0, warranty.years - age),
    ...(throughputKwh === undefined ? {} : { throughputKwh: Math.max(0, throughputKwh - counted) }),
    ...(fullCycles === undefined ? {} : { fullCycles: Math.max(0, fullCycles - cycles) }),
  }
}
