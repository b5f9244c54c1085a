import { KIND_COUNT } from './day-model.js'
import { normalBelow, normalQuantile } from '../../values/index.js'

/** Points of a kind over which its transitions are averaged. */
const POINTS = 40

/**
 * Probability that a day of one kind is followed by a day of another: a normal process of first order whose values are
 * sorted into kinds of equal probability.
 *
 * @param correlation Of the normal values of one day and the next, 0 to 0.9.
 * @returns Rows: kind of today; columns: kind of tomorrow; rows and columns add up to 1.
 */
export function kindTransitions(correlation: number): number[][] {
  const even = Array.from({ length: KIND_COUNT }, () => Array.from({ length: KIND_COUNT }, () => 1 / KIND_COUNT))
  if (correlation <= 0) return even
  const edges = Array.from({ length: KIND_COUNT + 1 }, (_, at) =>
    at === 0 ? -Infinity : at === KIND_COUNT ? Infinity : normalQuantile(at / KIND_COUNT),
  )
  const spread = Math.sqrt(1 - correlation ** 2)
  let table = Array.from({ length: KIND_COUNT }, (_, from) => {
    const row = Array.from({ length: KIND_COUNT }, () => 0)
    for (let point = 0; point < POINTS; point += 1) {
      const z = normalQuantile((from + (point + 0.5) / POINTS) / KIND_COUNT)
      for (let to = 0; to < KIND_COUNT; to += 1) {
        const above = normalBelow((edges[to + 1]! - correlation * z) / spread)
        const below = normalBelow((edges[to]! - correlation * z) / spread)
        row[to] = row[to]! + (above - below) / POINTS
      }
    }
    return row
  })
  // The sum over points is not exact; every kind must stay equally probable.
  for (let round = 0; round < 20; round += 1) table = transpose(normalised(transpose(normalised(table))))
  return table
}

/** Transitions over several days. */
export function overDays(table: readonly (readonly number[])[], days: number): readonly (readonly number[])[] {
  let result = table
  for (let day = 1; day < days; day += 1) {
    result = result.map((row) =>
      table.map((_, to) => row.reduce((sum, share, from) => sum + share * (table[from]?.[to] ?? 0), 0)),
    )
  }
  return result
}

function normalised(table: readonly (readonly number[])[]): number[][] {
  return table.map((row) => {
    const sum = row.reduce((total, value) => total + value, 0)
    return row.map((value) => value / sum)
  })
}

function transpose(table: readonly (readonly number[])[]): number[][] {
  return table.map((_, at) => table.map((row) => row[at] ?? 0))
}
