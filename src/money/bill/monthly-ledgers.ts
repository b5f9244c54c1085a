import { StageError } from '../../worksheet/index.js'
import { microKwh, splitMicroKwh } from '../exact/index.js'
import type { RateSheet } from '../tariff/index.js'
import type { HourLayout } from './hour-layout.js'
import { emptySegment, type BillLedger } from './ledger.js'
import type { KilowattHours } from '../../values/index.js'

/** @throws StageError when the tariff asks for hours that monthly totals do not tell. */
function needsOnlyTotals(sheet: RateSheet, withSolar: boolean): void {
  const need =
    sheet.periods.length > 1
      ? 'time-of-use periods'
      : sheet.demand.length > 0
        ? 'demand charges'
        : withSolar && sheet.riders.some((rider) => rider.nonBypassable)
          ? 'non-bypassable charges'
          : withSolar && !netsOverBill(sheet)
            ? 'exports that are not netted over the whole bill'
            : undefined
  if (need === undefined) return
  throw new StageError(
    'usage.monthly_kwh',
    `the tariff has ${need}, which monthly totals do not tell`,
    'Add usage.load_shape, or use a meter export (usage.green_button or usage.interval_csv).',
  )
}

function netsOverBill(sheet: RateSheet): boolean {
  const { solar } = sheet
  return (
    solar.rule === 'net metering' ||
    solar.rule === 'buy all, sell all' ||
    (solar.rule === 'net billing' && solar.netting === 'bill')
  )
}

/**
 * Twelve bills from monthly totals; a bill that crosses seasons is split by days with even daily use.
 *
 * @param usageKwh Use by bill, January first, kWh.
 * @param productionKwh Output by bill, kWh; undefined for none.
 */
export function monthlyLedgers(
  sheet: RateSheet,
  layout: HourLayout,
  usageKwh: readonly KilowattHours[],
  productionKwh: readonly KilowattHours[] | undefined,
): BillLedger[] {
  needsOnlyTotals(sheet, productionKwh !== undefined)
  return Array.from({ length: 12 }, (_, m) => {
    const spans = layout.segments.filter((segment) => segment.bill === m + 1)
    const days = spans.reduce((all, span) => all + span.days, 0)
    const load = microKwh(usageKwh[m] ?? 0)
    const generation = microKwh(productionKwh?.[m] ?? 0)
    const weights = spans.map((span) => span.days)
    const loads = splitMicroKwh(load, weights)
    const made = splitMicroKwh(generation, weights)
    const segments = spans.map((span, i) => {
      const segment = emptySegment(span.season, span.days, 1)
      const net = (loads[i] ?? 0) - (made[i] ?? 0)
      segment.load[0] = loads[i] ?? 0
      segment.imported[0] = Math.max(0, net)
      segment.exported[0] = Math.max(0, -net)
      return segment
    })
    return { month: m + 1, days, segments, generation, exportedByHour: undefined, hourly: false }
  })
}
