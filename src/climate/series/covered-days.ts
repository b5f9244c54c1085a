import type { WeatherFile } from '../../project/index.js'
import { dayNumber, MS_PER_DAY } from '../../values/index.js'
import type { House } from '../house.js'
import { readFile } from './series-climate.js'
import { stepOfRows } from './series-step.js'

/** Share of the intervals of a day that need their radiation. Our own judgement: half an hour of a day of hours may lack. */
const COVERED = 0.97

/**
 * Days of a weather series (local standard time, counted from 1970-01-01) whose radiation was measured, and not filled in.
 *
 * @throws StageError as `seriesClimate`.
 */
export function coveredDays(choice: WeatherFile, text: string, house: House): ReadonlySet<number> {
  const { rows, stampsMark } = readFile(choice, text, house)
  const stepMs = stepOfRows(rows)
  const backMs = stampsMark === 'ending' ? stepMs / 2 : 0
  const radiation = (['ghi', 'dni', 'dhi', 'plane'] as const).flatMap((name) => rows.columns.get(name) ?? [])
  const counts = new Map<number, number>()
  for (let row = 0; row < rows.length; row += 1) {
    if (radiation.some((column) => Number.isNaN(column[row]!))) continue
    const day = dayNumber(rows.stampMs[row]! - backMs)
    counts.set(day, (counts.get(day) ?? 0) + 1)
  }
  return new Set([...counts].flatMap(([day, count]) => (count >= (COVERED * MS_PER_DAY) / stepMs ? [day] : [])))
}
