import type { MoneyCredit, SolarRule } from '../../project/index.js'
import type { Carried } from './carried.js'
import type { RateHours } from './map-hours.js'
import type { PricedTier } from './map-tiers.js'
import { SOLAR_RULES, type RateAnswers, type SolarRuleName } from './rate-answers.js'
import type { RateRecord } from './rate-record.js'

/** What the rate does with solar energy. Nothing is taken for granted: what is missing is asked for, or is the worst case. */
export function mapSolar(
  record: RateRecord,
  hours: RateHours,
  ladders: readonly (readonly PricedTier[])[],
  answers: RateAnswers,
  carried: Carried,
): SolarRule | undefined {
  const rule = ruleName(record, answers, carried)
  if (rule === undefined || rule === 'none') return undefined
  if (rule === 'net-metering') return netMetering(answers, carried)
  const prices = sellPrices(record, hours, ladders, answers, rule, carried)
  if (prices === undefined) return undefined
  const [first = 0] = prices.values()
  const isOne = [...prices.values()].every((usd) => usd === first)
  const credit = cautiousCredit(rule, answers, carried)
  if (rule === 'buy-all-sell-all') {
    if (isOne) return { buy_all_sell_all: { usd_per_kwh: first, credit } }
    carried.refuse('sell', 'all generation is sold at prices that differ by period', 'State --sell for one price.')
    return undefined
  }
  return {
    net_billing: {
      netting: rule === 'net-billing-hourly' ? 'hour' : 'instant',
      ...(isOne ? { export_usd_per_kwh: first } : { export_periods_usd_per_kwh: Object.fromEntries(prices) }),
      credit,
    },
  }
}

function ruleName(record: RateRecord, answers: RateAnswers, carried: Carried): SolarRuleName | undefined {
  if (answers.solar !== undefined) return answers.solar
  const { dgrules, usenetmetering } = record
  if (dgrules === undefined || dgrules === '') {
    if (usenetmetering === true) return 'net-metering'
    carried.assume(
      'tariff.solar',
      'the record does not say what becomes of solar energy, which is not net metering: exports are unpaid here',
      `Ask the utility, then state --solar ${Object.keys(SOLAR_RULES).join(' or ')}.`,
    )
    return undefined
  }
  const known = (Object.keys(SOLAR_RULES) as SolarRuleName[]).find((name) => SOLAR_RULES[name] === dgrules)
  if (known !== undefined && known !== 'none') return known
  carried.refuse(
    'dgrules',
    `'${dgrules}' is no known rule for solar customers; known are ${Object.values(SOLAR_RULES).slice(0, 4).join(', ')}`,
    'Ask the utility, then state --solar.',
  )
  return undefined
}

function netMetering(answers: RateAnswers, carried: Carried): SolarRule {
  const { settle = 'monthly', trueUpMonth, surplusUsdPerKwh } = answers
  if (answers.settle === undefined)
    carried.assume(
      'tariff.solar.net_metering.settle',
      'the record does not say how long kWh are banked; here each bill is settled by itself, which saves least',
      'Ask the utility, then state --settle, with --true-up-month when it is annual.',
    )
  if (surplusUsdPerKwh === undefined)
    carried.assume(
      'tariff.solar.net_metering.surplus_usd_per_kwh',
      'the record does not say what is paid for left-over kWh; here it is nothing',
      'Ask the utility, then state --surplus.',
    )
  return {
    net_metering: {
      settle,
      ...(settle === 'annual' && trueUpMonth !== undefined ? { true_up_month: trueUpMonth } : {}),
      surplus_usd_per_kwh: surplusUsdPerKwh ?? 0,
    },
  }
}

function cautiousCredit(rule: SolarRuleName, answers: RateAnswers, carried: Carried): MoneyCredit {
  const place = `tariff.solar.${rule === 'buy-all-sell-all' ? 'buy_all_sell_all' : 'net_billing'}.credit`
  const { settle = 'monthly', trueUpMonth } = answers
  carried.assume(
    place,
    `the record does not say what a credit may pay and how long it lasts; here it pays energy alone${answers.settle === undefined ? ', and what is left of it is lost each month' : ''}, which saves least`,
    'Ask the utility, then change these keys, or state --settle.',
  )
  return {
    offsets: 'energy',
    settle,
    ...(settle === 'annual' && trueUpMonth !== undefined ? { true_up_month: trueUpMonth } : {}),
    paid_out_pct: 0,
  }
}

/** Price of an exported kWh by period of the tariff. */
function sellPrices(
  record: RateRecord,
  hours: RateHours,
  ladders: readonly (readonly PricedTier[])[],
  answers: RateAnswers,
  rule: SolarRuleName,
  carried: Carried,
): Map<string, number> | undefined {
  const prices = new Map<string, number>()
  for (const { id, energy } of hours.periods) {
    const sells = (ladders[energy] ?? []).map(({ sell }, t) => sell ?? topSell(record, energy, t))
    const [first] = sells
    const price = answers.sellUsdPerKwh ?? first
    if (answers.sellUsdPerKwh === undefined && sells.some((sell) => sell !== first)) {
      carried.refuse(
        `energyratestructure[${energy}]`,
        'the price for exports differs from tier to tier',
        'Ask the utility, then state --sell.',
      )
      return undefined
    }
    if (price === undefined) {
      carried.refuse(
        'dgrules',
        `'${SOLAR_RULES[rule]}' without a price for ${rule === 'buy-all-sell-all' ? 'the generation that is sold' : 'exports'} (sell) in period ${energy}; absent is not 0`,
        'Ask the utility, then state --sell in USD/kWh.',
      )
      return undefined
    }
    prices.set(id, price)
  }
  return prices
}

/** Some records have the prices of exports in a list of their own, of the same shape. */
function topSell(record: RateRecord, period: number, tier: number): number | undefined {
  const tiers: unknown = Array.isArray(record.sell) ? (record.sell as readonly unknown[])[period] : undefined
  const one: unknown = Array.isArray(tiers) ? (tiers as readonly unknown[])[tier] : tiers
  if (typeof one === 'number') return one
  const inner: unknown = typeof one === 'object' && one !== null ? (one as { sell?: unknown }).sell : undefined
  return typeof inner === 'number' ? inner : undefined
}
