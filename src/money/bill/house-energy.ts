import { StageError } from '../../worksheet/index.js'
import { HOURS_PER_YEAR, hoursOf, partsOf, type BillingCalendar } from '../calendar/index.js'
import { peaksOver, withPeaks } from './demand-peaks.js'
import type { RateSheet } from '../tariff/index.js'
import { layHours, type HourLayout } from './hour-layout.js'
import type { HouseStorage } from './house-storage.js'
import { hourlyLedgers } from './hourly-ledgers.js'
import type { BillLedger } from './ledger.js'
import { monthlyLedgers } from './monthly-ledgers.js'
import type { KilowattHours } from '../../values/index.js'

/** What the house uses and the system produces in a typical year. */
export type HouseEnergy =
  /** 8760 hours of local standard time, or all their quarters, kWh. */
  | {
      readonly kind: 'hourly'
      readonly usageKwh: Float64Array
      readonly productionKwh?: Float64Array
      /** A battery; none when missing. */
      readonly storage?: HouseStorage
    }
  /** Twelve totals, January first, kWh. */
  | {
      readonly kind: 'monthly'
      readonly usageKwh: readonly KilowattHours[]
      readonly productionKwh?: readonly KilowattHours[]
    }

/** @throws StageError unless there are `count` finite numbers, none below `least`. */
function checkSeries(where: string, kwh: ArrayLike<number>, count: number, least: number): void {
  const what = count === 12 ? 'months' : count === HOURS_PER_YEAR ? 'hours' : 'quarters of an hour'
  if (kwh.length !== count) {
    throw new StageError(
      where,
      `there are ${String(kwh.length)} ${what}, not ${String(count)}`,
      count === 12 ? 'State twelve totals, January first.' : 'Give every hour of a year of 365 days.',
    )
  }
  for (let i = 0; i < kwh.length; i++) {
    const value = kwh[i] ?? Number.NaN
    if (Number.isFinite(value) && value >= least) continue
    throw new StageError(
      where,
      `${count === 4 * HOURS_PER_YEAR ? 'quarter of an hour' : what.slice(0, -1)} ${String(i + 1)} is ${sayKwh(value)}`,
      'State energy in kWh, zero or above.',
    )
  }
}

function sayKwh(value: number): string {
  if (Number.isFinite(value)) return `${String(value)} kWh`
  return Number.isNaN(value) ? 'no number' : 'beyond all numbers'
}

/** Ledgers of a year of bills without and with the system, with the output scaled. */
export interface YearLedgers {
  without(): readonly BillLedger[]
  /** @param scale Factor on the output, 1 = as stated. */
  withSystem(scale: number): readonly BillLedger[]
}

/**
 * Lays a year of energy out in the bills of a tariff.
 *
 * @throws StageError when months or hours are missing, or the tariff needs hours that monthly totals do not tell.
 */
export function yearLedgers(sheet: RateSheet, energy: HouseEnergy, calendar: BillingCalendar): YearLedgers {
  const layout = layHours(sheet, calendar)
  if (energy.kind === 'monthly') {
    const { usageKwh, productionKwh } = energy
    checkSeries('usage.monthly_kwh', usageKwh, 12, 0)
    if (productionKwh !== undefined) checkSeries('yield', productionKwh, 12, -Infinity)
    return {
      without: () => monthlyLedgers(sheet, layout, usageKwh, undefined),
      withSystem: (scale) =>
        monthlyLedgers(
          sheet,
          layout,
          usageKwh,
          (productionKwh ?? []).map((kwh) => kwh * scale),
        ),
    }
  }
  const { usageKwh, productionKwh, storage } = energy
  const steps = partsOf(usageKwh) * HOURS_PER_YEAR
  checkSeries('usage', usageKwh, steps, 0)
  if (productionKwh !== undefined) checkSeries('yield', productionKwh, steps, -Infinity)
  const byHour = sheet.solar.rule === 'net billing' && sheet.solar.prices.kind === 'hours'
  const ledgersOf = steps === HOURS_PER_YEAR ? hourLedgers(layout, byHour) : quarterLedgers(sheet, calendar, byHour)
  let plain: BillLedger[] | undefined
  let scaled: ((scale: number) => BillLedger[]) | undefined
  const without = (): BillLedger[] => (plain ??= ledgersOf(usageKwh, undefined)(1))
  if (storage !== undefined && productionKwh !== undefined) {
    const known = new Map<number, BillLedger[]>()
    const withSystem = (scale: number): BillLedger[] => {
      const held = known.get(scale)
      if (held !== undefined) return held
      const after = storage(
        usageKwh,
        productionKwh.map((kwh) => kwh * scale),
      )
      const ledgers = ledgersOf(usageKwh, after.outputKwh)(1)
      const made = madeByBill(layout, after.generationKwh)
      const told = ledgers.map((ledger) => ({ ...ledger, generation: made[ledger.month] ?? 0 }))
      known.set(scale, told)
      return told
    }
    return { without, withSystem }
  }
  return {
    without,
    withSystem: (scale) => (scaled ??= ledgersOf(usageKwh, productionKwh))(scale),
  }
}

/** Ledgers of a year of use and output, for a factor on the output. */
type LedgersOf = (usageKwh: Float64Array, productionKwh: Float64Array | undefined) => (scale: number) => BillLedger[]

function hourLedgers(layout: HourLayout, byHour: boolean): LedgersOf {
  return (usageKwh, productionKwh) =>
    hourlyLedgers(layout, usageKwh, productionKwh, productionKwh !== undefined && byHour)
}

/** By quarters of an hour, but where the tariff nets over the hour; demand over the time that the tariff states, an hour when it states none. */
function quarterLedgers(sheet: RateSheet, calendar: BillingCalendar, byHour: boolean): LedgersOf {
  const netsByHour = sheet.solar.rule === 'net billing' && sheet.solar.netting === 'hour'
  const layout = layHours(sheet, calendar, 4)
  const netted = netsByHour ? layHours(sheet, calendar) : layout
  const { demandIntervalMin: demandMin = 60 } = sheet
  return (usageKwh, productionKwh) => {
    const series = netsByHour ? hoursOf : (kwh: Float64Array) => kwh
    const made = productionKwh === undefined ? undefined : series(productionKwh)
    const ledgers = hourlyLedgers(netted, series(usageKwh), made, productionKwh !== undefined && byHour)
    return (scale) => {
      const told = ledgers(scale).map((ledger) => ({ ...ledger, quarters: true, demandMin }))
      if (sheet.demand.length === 0) return told
      return withPeaks(told, layout, peaksOver(layout, usageKwh, productionKwh, scale, demandMin / 15))
    }
  }
}

/** Output by bill (1 to 12), millionths of a kWh; rounded step by step, as in `hourlyLedgers`. */
function madeByBill(layout: HourLayout, kwh: Float64Array): Float64Array {
  const made = new Float64Array(13)
  for (let h = 0; h < kwh.length; h++) {
    const bill = layout.segments[layout.segment[Math.floor((h * layout.segment.length) / kwh.length)]!]!.bill
    made[bill] = made[bill]! + Math.floor(kwh[h]! * 1e6 + 0.5)
  }
  return made
}

/** The ledgers of a house that is billed by one tariff without, and by another with the system. */
export interface HouseLedgers {
  readonly before: YearLedgers
  readonly after: YearLedgers
}

/** Ledgers for several questions about one house, so that its hours are added up once. @throws StageError as `yearLedgers`. */
export function houseLedgers(
  sheet: RateSheet,
  energy: HouseEnergy,
  calendar: BillingCalendar,
  sheetWithSystem: RateSheet = sheet,
): HouseLedgers {
  const before = yearLedgers(sheet, energy, calendar)
  return { before, after: sheetWithSystem === sheet ? before : yearLedgers(sheetWithSystem, energy, calendar) }
}
