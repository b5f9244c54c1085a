import { MS_PER_MINUTE, type Milliseconds } from '../../values/index.js'
import { StageError } from '../../worksheet/index.js'
import { SERIES_PATH } from './series-error.js'
import type { SeriesRows } from './series-file.js'

/** Lengths of interval that are read, minutes: those that make up an hour. */
const STEPS_MIN = [5, 6, 10, 12, 15, 20, 30, 60] as const

/**
 * Length of the intervals of a file: the commonest distance of one stamp from the next.
 *
 * @throws StageError when it is none of 5 to 60 minutes that make up an hour.
 */
export function stepOfRows({ stampMs, length }: SeriesRows): Milliseconds {
  const counts = new Map<number, number>()
  for (let row = 1; row < length; row++) {
    const apart = stampMs[row]! - stampMs[row - 1]!
    counts.set(apart, (counts.get(apart) ?? 0) + 1)
  }
  const [commonest = 0] = [...counts].toSorted((a, b) => b[1] - a[1])[0] ?? []
  const minutes = commonest / MS_PER_MINUTE
  if ((STEPS_MIN as readonly number[]).includes(minutes)) return commonest
  throw new StageError(
    SERIES_PATH,
    length < 2
      ? 'weather file: one row is no series'
      : `weather file: most of its rows are ${Number(minutes.toFixed(2))} min apart; ${STEPS_MIN.join(', ')} min are read`,
    minutes >= 1440
      ? 'sums or means of whole days do not tell how the light falls on a plane: use a file with rows 5 to 60 minutes apart, or leave the file out, and the monthly table of the nearest sites is used (site.climate: nearby)'
      : minutes > 0 && minutes < 5
        ? 'average the file to 5 minutes or more, each mean stamped as the project says'
        : 'use a file with rows in order of time, 5 to 60 minutes apart',
  )
}
