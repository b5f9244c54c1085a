import type { Season, TimeOfUse, TimeOfUseRule } from '../../project/index.js'
import { MONTHS, daysInMonth } from '../../values/index.js'
import type { Carried } from './carried.js'
import type { RateRecord, RateSchedule } from './rate-record.js'

/** A stretch of months with one timetable. */
export interface RateSeason {
  /** `all_year`, or its months: `jun_sep`. */
  readonly id: string
  /** 1 to 12, in order. */
  readonly months: readonly number[]
  /** Ids of the periods that have hours in it. */
  readonly periods: readonly string[]
}

/** A period of the tariff: the hours that share a period of energy and one of demand. */
export interface RatePeriod {
  readonly id: string
  /** Periods of the record, counted from 0. */
  readonly energy: number
  readonly demand: number
}

/** Seasons and periods of a record. */
export interface RateHours {
  readonly seasons: readonly RateSeason[]
  readonly periods: readonly RatePeriod[]
  readonly stated: Readonly<Record<string, Season>> | undefined
  readonly timeOfUse: TimeOfUse | undefined
}

const SAME_HOURS: RateSchedule = Array.from({ length: 12 }, () => Array.from({ length: 24 }, () => 0))

/**
 * Lays the timetables of energy and demand over each other.
 *
 * @param byDemand Whether demand is charged by period.
 */
export function mapHours(record: RateRecord, byDemand: boolean, carried: Carried): RateHours {
  const energy = timetable(record, 'energy', carried)
  const demand = byDemand ? timetable(record, 'demand', carried) : [SAME_HOURS, SAME_HOURS]
  const cell = (month: number, days: number, hour: number): [number, number] => [
    energy[days]?.[month]?.[hour] ?? 0,
    demand[days]?.[month]?.[hour] ?? 0,
  ]
  const pairs = new Map<string, [number, number]>()
  for (let m = 0; m < 12; m++)
    for (const days of [0, 1]) for (let h = 0; h < 24; h++) pairs.set(cell(m, days, h).join(' '), cell(m, days, h))
  const periods = namePeriods(record, [...pairs.values()])
  const idOf = (month: number, days: number, hour: number): string => {
    const [e, d] = cell(month, days, hour)
    return periods.find((period) => period.energy === e && period.demand === d)?.id ?? ''
  }
  const days = Array.from({ length: 12 }, (_, m) =>
    [0, 1].map((kind) => Array.from({ length: 24 }, (_, h) => idOf(m, kind, h))),
  )
  const seasons = seasonsOf(days)
  const hasSeasons = seasons.length > 1
  return {
    seasons,
    periods,
    stated: hasSeasons ? Object.fromEntries(seasons.map((season) => [season.id, datesOf(season)])) : undefined,
    timeOfUse: periods.length > 1 ? timeOfUse(periods, seasons, days) : undefined,
  }
}

/** Timetables of weekdays and of weekends. */
function timetable(record: RateRecord, kind: 'energy' | 'demand', carried: Carried): readonly RateSchedule[] {
  const periods = record[`${kind}ratestructure`]?.length ?? 0
  const weekday = record[`${kind}weekdayschedule`]
  const weekend = record[`${kind}weekendschedule`]
  const have = weekday ?? weekend
  if (have === undefined) {
    if (periods > 1) {
      const message = `${periods} periods, and no timetable says when they hold`
      carried.impossible(`${kind}weekdayschedule`, message, 'Write the tariff from the rate sheet by hand.')
    }
    return [SAME_HOURS, SAME_HOURS]
  }
  if ((weekday === undefined || weekend === undefined) && periods > 1) {
    const [missing, used] = weekday === undefined ? ['weekday', 'weekend'] : ['weekend', 'weekday']
    carried.warn(
      'rates.check',
      `${kind}${missing}schedule`,
      `is missing; the timetable of the ${used} is taken for it`,
      'Compare with the rate sheet.',
    )
  }
  return [weekday ?? have, weekend ?? have]
}

function namePeriods(record: RateRecord, pairs: readonly (readonly [number, number])[]): RatePeriod[] {
  const sorted = pairs.toSorted((a, b) => a[0] - b[0] || a[1] - b[1])
  const severalEnergy = new Set(sorted.map(([energy]) => energy)).size > 1
  const severalDemand = new Set(sorted.map(([, demand]) => demand)).size > 1
  const labels = Array.isArray(record.energytoulabels) ? (record.energytoulabels as readonly unknown[]) : []
  const names = labels.map((label) => (typeof label === 'string' ? slug(label) : ''))
  const named = names.length > 0 && names.every((name, i) => name !== '' && names.indexOf(name) === i)
  return sorted.map(([energy, demand]) => ({
    id: [
      ...(severalEnergy ? [(named ? names[energy] : undefined) ?? `energy_${energy}`] : []),
      ...(severalDemand ? [`demand_${demand}`] : []),
      ...(severalEnergy || severalDemand ? [] : ['all']),
    ].join('_'),
    energy,
    demand,
  }))
}

function slug(label: string): string {
  const text = label
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/gu, '_')
    .replaceAll(/^_+|_+$/gu, '')
  return /^[a-z]/u.test(text) ? text : ''
}

type Days = readonly (readonly (readonly string[])[])[]

/** Months that follow each other with the same timetable; the year is a ring. */
function seasonsOf(days: Days): RateSeason[] {
  const key = (m: number): string => JSON.stringify(days[(m + 12) % 12])
  const starts = Array.from({ length: 12 }, (_, m) => m).filter((m) => key(m) !== key(m - 1))
  const periodsOf = (m: number): string[] => [...new Set((days[m] ?? []).flat())]
  if (starts.length === 0)
    return [{ id: 'all_year', months: Array.from({ length: 12 }, (_, m) => m + 1), periods: periodsOf(0) }]
  return starts.map((from, i) => {
    const next = starts[(i + 1) % starts.length] ?? from
    const count = (next - from + 12) % 12 || 12
    const months = Array.from({ length: count }, (_, j) => ((from + j) % 12) + 1)
    const name = (month: number | undefined): string => (MONTHS[(month ?? 1) - 1] ?? '').toLowerCase().slice(0, 3)
    const [first, last] = [name(months[0]), name(months.at(-1))]
    return { id: count === 1 ? first : `${first}_${last}`, months, periods: periodsOf(from) }
  })
}

function datesOf({ months }: RateSeason): Season {
  const [first = 1, last = first] = [months[0], months.at(-1)]
  const two = (number: number): string => String(number).padStart(2, '0')
  return { from: `${two(first)}-01`, to: `${two(last)}-${two(daysInMonth(last))}` }
}

interface Stretch {
  readonly period: string
  readonly from: number
  readonly to: number
}

/** Stretches of a day with one period; the one over midnight is one. */
function stretchesOf(row: readonly string[]): Stretch[] {
  const starts = row.flatMap((period, h) => (period === row[(h + 23) % 24] ? [] : [h]))
  if (starts.length === 0) return [{ period: row[0] ?? '', from: 0, to: 24 }]
  return starts.map((from, i) => {
    const to = starts[(i + 1) % starts.length] ?? 24
    return { period: row[from] ?? '', from, to: to === 0 ? 24 : to }
  })
}

function timeOfUse(periods: readonly RatePeriod[], seasons: readonly RateSeason[], days: Days): TimeOfUse {
  const hours = new Map<string, number>()
  for (const month of days)
    for (const [kind, row] of month.entries())
      for (const period of row) hours.set(period, (hours.get(period) ?? 0) + (kind === 0 ? 5 : 2))
  const ids = periods.map(({ id }) => id)
  const otherwise = ids.reduce((a, b) => ((hours.get(b) ?? 0) > (hours.get(a) ?? 0) ? b : a))
  const rules = new Map<string, { rule: Omit<TimeOfUseRule, 'seasons'>; seasons: string[] }>()
  for (const season of seasons) {
    const [weekday = [], weekend = []] = days[(season.months[0] ?? 1) - 1] ?? []
    const same = JSON.stringify(weekday) === JSON.stringify(weekend)
    const kinds = same
      ? ([[weekday, ['every_day']]] as const)
      : ([
          [weekday, ['weekdays']],
          [weekend, ['weekends', 'holidays']],
        ] as const)
    for (const [row, on] of kinds) {
      for (const { period, from, to } of stretchesOf(row)) {
        if (period === otherwise) continue
        const rule = { period, days: [...on], from_hour: from, to_hour: to }
        const key = JSON.stringify(rule)
        const held = rules.get(key)
        if (held === undefined) rules.set(key, { rule, seasons: [season.id] })
        else held.seasons.push(season.id)
      }
    }
  }
  return {
    periods: ids,
    rules: [...rules.values()].map(({ rule, seasons: own }) => ({
      period: rule.period,
      ...(own.length === seasons.length ? {} : { seasons: own }),
      days: rule.days,
      from_hour: rule.from_hour,
      to_hour: rule.to_hour,
    })) as TimeOfUse['rules'],
    otherwise,
  }
}
