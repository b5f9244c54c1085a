import type { NewLoad, Usage } from '../../project/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import { partsOf } from '../calendar/index.js'
import { loadHours, type LoadContext } from './load-hours.js'
import { dayOfYear, isDay } from '../../values/index.js'

/** Use of the house by year of the cash flow, 1 = the first: 8760 hours of local standard time or their quarters, kWh. */
export type UseOfYear = (year: number) => Float64Array

interface Load {
  readonly id: string
  readonly hours: Float64Array
  /** Year of the cash flow in which it comes; 1 or before: there from the start. */
  readonly year: number
  /** Day of that year by the clock on which it comes, 0 = 1 January. */
  readonly day: number
}

/**
 * Use that grows, and loads that come later; growth scales every hour of the stated use and no new load.
 *
 * @param usageKwh The use as stated, which is that of the first year.
 * @param baseYear Year of purchase, for loads with a date.
 * @returns Undefined when neither growth nor a new load is stated.
 * @throws StageError as `loadHours`, for a load without a beginning or with two, and for a date without a year of purchase.
 */
export function useOfYears(
  stated: Usage | undefined,
  usageKwh: Float64Array,
  context: LoadContext,
  baseYear: number | undefined,
  worksheet: Worksheet,
): UseOfYear | undefined {
  const { growth_pct_per_year: growth, new_loads: stateds } = stated ?? {}
  if (growth === undefined && stateds === undefined) return undefined
  const loads = Object.entries(stateds ?? {}).map(([id, load]): Load => {
    const where = `usage.new_loads.${id}`
    return { id, hours: loadHours(load, where, context), ...beginOf(load, where, baseYear) }
  })
  for (const [id, load] of Object.entries(stateds ?? {})) recordLoad(id, load, worksheet)
  const rate = (growth ?? 0) / 100
  const known = new Map<number, Float64Array>()
  return (year) => {
    const kept = known.get(year) ?? useOf(year, usageKwh, rate, loads, context.calendar.clockDay)
    known.set(year, kept)
    return kept
  }
}

function useOf(
  year: number,
  usageKwh: Float64Array,
  rate: number,
  loads: readonly Load[],
  clockDay: Uint16Array,
): Float64Array {
  const grown = (1 + rate) ** (year - 1)
  const here = loads.filter((load) => load.year <= year)
  if (grown === 1 && here.length === 0) return usageKwh
  const parts = partsOf(usageKwh)
  return usageKwh.map((kwh, i) => {
    const h = Math.floor(i / parts)
    let sum = kwh * grown
    // A load by rule has hours, which are even within.
    for (const load of here) if (load.year < year || (clockDay[h] ?? 0) >= load.day) sum += (load.hours[h] ?? 0) / parts
    return Math.round(sum * 1e6) / 1e6
  })
}

function beginOf(load: NewLoad, where: string, baseYear: number | undefined): Pick<Load, 'year' | 'day'> {
  const { from_year: year, from } = load
  if ((year === undefined) === (from === undefined)) {
    const message = year === undefined ? 'it is not said when the load comes' : 'from_year and from are both stated'
    throw new StageError(where, message, 'State one of from_year (1 = the first year) and from (year-month-day).')
  }
  if (from === undefined) return { year: year ?? 1, day: 0 }
  if (!isDay(from)) throw new StageError(`${where}.from`, `there is no day ${from}`, 'State year-month-day.')
  if (baseYear === undefined) {
    throw new StageError(
      'finance.base_year',
      `a load comes on ${from}, and the year of purchase is not stated`,
      'State finance.base_year; year 1 of the cash flow is the year after it.',
    )
  }
  const [, month, day] = from.split('-').map(Number)
  return { year: Number(from.slice(0, 4)) - baseYear, day: dayOfYear(month ?? 1, day ?? 1) }
}

function recordLoad(id: string, load: NewLoad, worksheet: Worksheet): void {
  const begins = load.from === undefined ? `year ${String(load.from_year)} of the cash flow` : load.from
  worksheet.note({
    id: `usage.load.${id}`,
    says: `New load ${id} from ${begins} on, shape ${load.shape}; the bills without and with the system carry it`,
    formula: 'E_hour = E_year * weight_hour / sum of weights',
    inputs: [{ symbol: 'E_year', value: load.kwh_per_year, unit: 'kWh', from: `usage.new_loads.${id}.kwh_per_year` }],
    result: { symbol: 'E', value: load.kwh_per_year, unit: 'kWh a year' },
    source: {
      document: 'Shapes of charging by rule; heat pumps by degree hours',
      standing: 'common practice, no source',
    },
    limits: 'A shape by rule is no measured load; own use of solar energy by it is an estimate',
  })
}
