import type { MoneyCredit, NetBilling, NetMetering, SolarRule } from '../../project/index.js'
import type { PriceReader } from './price-reader.js'
import type { ExportPrices, MoneyCreditTerms, SolarTerms } from './rate-sheet.js'
import { readByPeriod } from './read-energy.js'
import { readMonths } from './read-charges.js'
import { tariffError, theOne } from './tariff-error.js'
import { ZERO, decimal } from '../../values/decimal/index.js'

/** What the utility does with solar energy. Without a rule, exports are not paid. */
export function readSolar(
  rule: SolarRule | undefined,
  periods: readonly string[],
  hasTiers: boolean,
  price: PriceReader,
): SolarTerms {
  const { net_metering: metering, net_billing: billing, buy_all_sell_all: sale } = rule ?? {}
  if (metering === undefined && billing === undefined && sale === undefined) return { rule: 'unpaid' }
  theOne('solar', { net_metering: metering, net_billing: billing, buy_all_sell_all: sale })
  if (metering !== undefined) return readNetMetering(metering, hasTiers, price)
  if (billing !== undefined) return readNetBilling(billing, periods, price)
  const place = 'solar.buy_all_sell_all'
  if (sale === undefined) return { rule: 'unpaid' }
  return {
    rule: 'buy all, sell all',
    usdPerKwh: price(`${place}.usd_per_kwh`, sale.usd_per_kwh),
    credit: readCredit(`${place}.credit`, sale.credit),
  }
}

function trueUp(place: string, settle: string, month: number | undefined): number {
  if (settle !== 'annual') return 12
  if (month !== undefined) return month
  throw tariffError(place, 'annual settlement needs the month of the true-up bill', 'State true_up_month, 1 to 12.')
}

function readNetMetering(metering: NetMetering, hasTiers: boolean, price: PriceReader): SolarTerms {
  const place = 'solar.net_metering'
  const bank = metering.bank ?? 'by_period'
  if (bank === 'money' && hasTiers) {
    throw tariffError(
      `${place}.bank`,
      'a bank of money has no single retail price with tiers',
      'Use by_period, or state the export price under net_billing.',
    )
  }
  if ((bank === 'money') !== (metering.credit !== undefined)) {
    throw tariffError(place, '`credit` and `bank: money` belong together', 'State both or neither.')
  }
  return {
    rule: 'net metering',
    settle: metering.settle,
    trueUpMonth: trueUp(place, metering.settle, metering.true_up_month),
    surplusUsdPerKwh: price(`${place}.surplus_usd_per_kwh`, metering.surplus_usd_per_kwh ?? 0),
    trueUpFeeUsd: decimal(metering.true_up_fee_usd ?? 0),
    bank,
    credit: metering.credit === undefined ? undefined : readCredit(`${place}.credit`, metering.credit),
  }
}

function readCredit(place: string, credit: MoneyCredit): MoneyCreditTerms {
  const trueUpMonth =
    credit.settle === 'annual'
      ? trueUp(place, credit.settle, credit.true_up_month)
      : (((credit.year_starts_month ?? 1) + 10) % 12) + 1
  return {
    offsets: credit.offsets,
    settle: credit.settle,
    trueUpMonth,
    paidOut: credit.paid_out_pct === undefined ? ZERO : decimal(credit.paid_out_pct).times(0.01),
  }
}

function readNetBilling(billing: NetBilling, periods: readonly string[], price: PriceReader): SolarTerms {
  const prices = readExportPrices(billing, periods, price)
  if (billing.netting === 'bill' && prices.kind === 'hours') {
    throw tariffError(
      'solar.net_billing.netting',
      'export prices by hour need netting by the hour, not by the bill',
      'State netting: hour, instant or 15_min.',
    )
  }
  return {
    rule: 'net billing',
    netting: billing.netting,
    prices,
    credit: readCredit('solar.net_billing.credit', billing.credit),
  }
}

function readExportPrices(billing: NetBilling, periods: readonly string[], price: PriceReader): ExportPrices {
  const place = 'solar.net_billing'
  const {
    export_usd_per_kwh: flat,
    export_monthly_usd_per_kwh: monthly,
    export_periods_usd_per_kwh: byPeriod,
    export_month_by_hour_usd_per_kwh: hours,
    export_weekend_month_by_hour_usd_per_kwh: weekend,
  } = billing
  const names = { export_usd_per_kwh: flat, export_monthly_usd_per_kwh: monthly, export_periods_usd_per_kwh: byPeriod }
  const one = theOne(place, { ...names, export_month_by_hour_usd_per_kwh: hours })
  if (weekend !== undefined && hours === undefined) {
    throw tariffError(place, 'there is an export table for weekends but none for weekdays', 'Add the other table.')
  }
  if (byPeriod !== undefined) {
    return { kind: 'periods', usdPerKwh: readByPeriod(`${place}.${one}`, byPeriod, periods, price) }
  }
  if (hours === undefined) {
    return { kind: 'monthly', usdPerKwh: readMonths(`${place}.${one}`, monthly ?? flat ?? [], price) }
  }
  for (const table of [hours, weekend ?? hours]) {
    if (table.length !== 12 || table.some((row) => row.length !== 24)) {
      throw tariffError(
        `${place}.${one}`,
        'the export table is not 12 rows of 24 prices',
        'State 12 months of 24 hours.',
      )
    }
  }
  const other = weekend ?? hours
  return {
    kind: 'hours',
    usdPerKwh: hours.flatMap((row, m) => [...row, ...(other[m] ?? row)].map((usd) => price(`${place}.${one}`, usd))),
  }
}
