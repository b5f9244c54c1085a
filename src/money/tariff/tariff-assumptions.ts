import type { MoneyCredit, Tariff } from '../../project/index.js'
import type { Assumption, Source } from '../../worksheet/index.js'

const CAUTIOUS: Source = { document: 'The cautious reading of a rate sheet', standing: 'common practice, no source' }

/** Choices that a tariff leaves open and that were settled on the cautious side. */
export function tariffAssumptions(tariff: Tariff): Assumption[] {
  const found: Assumption[] = []
  const settle = (stated: unknown, path: string, value: number | string, unit: string, why: string): void => {
    if (stated === undefined) found.push({ path: `tariff.${path}`, value, unit, why, source: CAUTIOUS })
  }
  const settleCredit = (place: string, credit: MoneyCredit | undefined): void => {
    if (credit === undefined || credit.settle === 'never') return
    settle(
      credit.paid_out_pct,
      `${place}.credit.paid_out_pct`,
      0,
      '%',
      'unused credit is lost unless the tariff pays it out',
    )
  }
  const { net_metering: metering, net_billing: billing, buy_all_sell_all: sale } = tariff.solar ?? {}
  if (metering !== undefined) {
    const place = 'solar.net_metering'
    if (metering.bank !== 'money') {
      settle(
        metering.surplus_usd_per_kwh,
        `${place}.surplus_usd_per_kwh`,
        0,
        'USD/kWh',
        'left-over kWh are granted to the utility unless it pays them',
      )
    }
    if (tariff.time_of_use !== undefined) {
      settle(
        metering.bank,
        `${place}.bank`,
        'by_period',
        '',
        'banked kWh serve only the period in which they were earned',
      )
    }
    settleCredit(place, metering.credit)
  }
  settleCredit('solar.net_billing', billing?.credit)
  settleCredit('solar.buy_all_sell_all', sale?.credit)
  if (tariff.holidays !== undefined) {
    settle(tariff.holidays.observed, 'holidays.observed', 'none', '', 'a holiday counts on its own date only')
  }
  for (const [id, tax] of Object.entries(tariff.taxes ?? {})) {
    if (tax.percent === undefined || tariff.solar === undefined) continue
    settle(
      tax.before_credits,
      `taxes.${id}.before_credits`,
      'true',
      '',
      'the tax is taken before credits are subtracted, which saves less',
    )
  }
  return found
}
