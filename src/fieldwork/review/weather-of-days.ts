import type { Project } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import { runYield } from '../../yield/index.js'
import type { ProductionSeries } from '../production/index.js'
import type { ReviewRequest } from './review-production.js'
import { methodSpread } from './spread.js'
import { calendarDay, dateText, dayNumber } from '../../values/index.js'

/**
 * Models the measured days with the weather of these very hours.
 *
 * @param name Name of the weather file. @param text The EPW file of the measured year.
 * @throws StageError when the file is of another year, such as a typical year put together from many.
 */
export function weatherOfDays(
  project: Project,
  name: string,
  text: string,
  series: ProductionSeries,
): NonNullable<ReviewRequest['weather']> {
  const years = yearsByDay(text)
  const run = runYield({ ...project, site: { ...project.site, climate: { epw: name } } }, new Map([[name, text]]))
  const { steps, system, result } = run
  const sums = new Map<string, number>()
  const monthSums = Array.from({ length: 12 }, () => 0)
  for (let step = 0; step < steps.length; step += 1) {
    const { month, day } = steps.label(step)
    const kwh = (system.acW[step]! * steps.hours[step]!) / 1000
    sums.set(`${month}-${day ?? 0}`, (sums.get(`${month}-${day ?? 0}`) ?? 0) + kwh)
    monthSums[month - 1] = monthSums[month - 1]! + kwh
  }
  const kwhByDay = new Map<number, number>()
  const first = dayNumber(series.spans[0]?.startMs ?? 0)
  const last = dayNumber((series.spans.at(-1)?.endMs ?? 0) - 1)
  for (let day = first; day <= last; day += 1) {
    const { year, month, dayOfMonth, daysInMonth } = calendarDay(day)
    const key = `${month + 1}-${dayOfMonth}`
    if (years.get(key) !== year) continue
    // What the inverters use at night is not in the steps.
    const night = (monthSums[month]! - (result.values.monthly[month]?.ac_kwh ?? 0)) / daysInMonth
    kwhByDay.set(day, (sums.get(key) ?? 0) - night)
  }
  if (kwhByDay.size === 0) {
    const found = [...new Set(years.values())].toSorted((a, b) => a - b)
    throw new StageError(
      'site.climate',
      `the weather file ${name} holds ${found.length === 1 ? `the year ${found[0]}` : `days of the years ${found.join(', ')}`}, the measured days are ${dateText(first)} to ${dateText(last)}`,
      'give the actual weather of the measured year; a typical year belongs under site.climate of the project',
    )
  }
  return { kwhByDay, spread: methodSpread(run), name }
}

/** Year of each calendar day of an EPW file, by `month-day`; the rows were checked by its reader. */
function yearsByDay(text: string): Map<string, number> {
  const years = new Map<string, number>()
  for (const match of text.matchAll(/^(\d{4}),(\d{1,2}),(\d{1,2}),\d{1,2},/gmu)) {
    years.set(`${Number(match[2])}-${Number(match[3])}`, Number(match[1]))
  }
  return years
}
