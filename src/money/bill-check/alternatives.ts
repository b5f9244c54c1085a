import type { Tariff } from '../../project/index.js'
import { addDays } from '../../values/index.js'
import { withValue, type Change } from './changes.js'

/** Most days by which the change of a season is looked for elsewhere. */
const MOST_DAYS = 61

/** Changes that are a choice among few: a base, a rule, a date, two prices exchanged. */
export function* alternativesOf(tariff: Tariff, groups: readonly string[], solar: boolean): Generator<Change> {
  const choice = (path: string[], found: Change['found'], fits: string, value: unknown): Change => ({
    path: path.join('.'),
    found,
    fits,
    tariff: withValue(tariff, path, value),
    oddness: 0.5,
  })
  const other = tariff.rounding === 'line' ? 'total' : 'line'
  yield choice(['rounding'], tariff.rounding, other, other)
  if (tariff.minimum !== undefined) {
    const of = tariff.minimum.of === 'bill' ? 'energy' : 'bill'
    yield choice(['minimum', 'of'], tariff.minimum.of, of, of)
  }
  for (const [id, charge] of Object.entries(tariff.fixed ?? {})) {
    if (charge.usd_per_month === undefined) continue
    const byDays = charge.prorate_by_days !== true
    yield choice(['fixed', id, 'prorate_by_days'], String(!byDays), String(byDays), byDays)
  }
  for (const [id, tax] of Object.entries(tariff.taxes ?? {})) {
    if (tax.percent === undefined) continue
    const stated = tax.of === undefined ? 'everything' : tax.of.join(', ')
    for (const base of subsets(groups)) {
      const isAll = base.length === groups.length
      const says = isAll ? 'everything' : base.join(', ')
      if (says !== stated) yield choice(['taxes', id, 'of'], stated, says, isAll ? undefined : base)
    }
    if (solar) {
      const before = tax.before_credits === false
      yield choice(['taxes', id, 'before_credits'], String(!before), String(before), before)
    }
  }
  yield* exchangedPrices(tariff)
  yield* tiersPerDay(tariff)
  yield* seasonDates(tariff)
  if (solar) yield* solarRules(tariff)
}

function subsets(groups: readonly string[]): string[][] {
  return Array.from({ length: 2 ** groups.length - 1 }, (_, bits) =>
    groups.filter((_group, i) => ((bits + 1) >> i) % 2 === 1),
  )
}

/** Prices of two periods in the wrong places. */
function* exchangedPrices(tariff: Tariff): Generator<Change> {
  for (const [season, price] of Object.entries(tariff.energy)) {
    for (const key of ['periods_usd_per_kwh', 'periods_tiers'] as const) {
      const prices = price[key]
      const ids = Object.keys(prices ?? {})
      for (const [i, a] of ids.entries())
        for (const b of ids.slice(i + 1)) {
          const first = withValue(tariff, ['energy', season, key, a], prices?.[b])
          yield {
            path: `energy.${season}.${key}`,
            found: `${a}, ${b}`,
            fits: `${a} and ${b} exchanged`,
            tariff: withValue(first, ['energy', season, key, b], prices?.[a]),
            oddness: 0.5,
          }
        }
    }
  }
}

/** Tiers per month that are per day of the bill, a thirtieth of them. */
function* tiersPerDay(tariff: Tariff): Generator<Change> {
  for (const [season, { tiers }] of Object.entries(tariff.energy)) {
    if (tiers?.[0]?.up_to_kwh_per_month === undefined) continue
    const daily = tiers.map(({ up_to_kwh_per_month: month, ...tier }) =>
      month === undefined ? tier : { ...tier, up_to_kwh_per_day: Number((month / 30).toFixed(4)) },
    )
    yield {
      path: `energy.${season}.tiers`,
      found: 'per month',
      fits: `per day: ${daily.flatMap((tier) => ('up_to_kwh_per_day' in tier ? [tier.up_to_kwh_per_day] : [])).join(', ')} kWh`,
      tariff: withValue(tariff, ['energy', season, 'tiers'], daily),
      oddness: 0.5,
    }
  }
}

/** A season that begins on another day, with the end of the one before it. */
function* seasonDates(tariff: Tariff): Generator<Change> {
  const seasons = Object.entries(tariff.seasons ?? {})
  if (seasons.length < 2) return
  for (const [id, { from }] of seasons) {
    const dayBefore = shift(from, -1)
    const before = seasons.find(([, { to }]) => to === dayBefore || (to === '02-29' && dayBefore === '02-28'))
    if (before === undefined) continue
    for (let days = 1; days <= MOST_DAYS; days++)
      for (const by of [days, -days]) {
        const begins = shift(from, by)
        const moved = withValue(tariff, ['seasons', id, 'from'], begins)
        yield {
          path: `seasons.${id}.from`,
          found: from,
          fits: begins,
          tariff: withValue(moved, ['seasons', before[0], 'to'], shift(begins, -1)),
          // Seasons mostly begin with a month.
          oddness: begins.endsWith('-01') ? 0.25 : begins.endsWith('-15') || begins.endsWith('-16') ? 0.75 : 1,
        }
      }
  }
}

/** Day of a year without 29 February, some days later. */
function shift(monthDay: string, days: number): string {
  return addDays(`2025-${monthDay === '02-29' ? '02-28' : monthDay}`, days).slice(5)
}

function* solarRules(tariff: Tariff): Generator<Change> {
  const { net_metering: metering, net_billing: billing, buy_all_sell_all: sale } = tariff.solar ?? {}
  const choice = (path: string[], found: string, fits: string): Change => ({
    path: path.join('.'),
    found,
    fits,
    tariff: withValue(tariff, path, fits),
    oddness: 0.5,
  })
  if (metering !== undefined && metering.bank !== 'money') {
    const found = metering.bank ?? 'by_period'
    yield choice(['solar', 'net_metering', 'bank'], found, found === 'by_period' ? 'any_period' : 'by_period')
  }
  for (const [key, credit] of [
    ['net_billing', billing?.credit],
    ['buy_all_sell_all', sale?.credit],
  ] as const) {
    if (credit === undefined) continue
    const place = ['solar', key, 'credit']
    yield choice([...place, 'offsets'], credit.offsets, credit.offsets === 'all' ? 'energy' : 'all')
    for (const settle of ['never', 'monthly'] as const)
      if (settle !== credit.settle) yield choice([...place, 'settle'], credit.settle, settle)
  }
}
