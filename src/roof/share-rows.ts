import type { StackedRow } from './stack-rows.js'

/** A row with the modules that it shall hold. */
export interface RowShare extends StackedRow {
  readonly count: number
}

/** Whether a row can hold a number of modules; not every number below its most can be held. */
export type Holds = (row: StackedRow, count: number) => boolean

/**
 * Shares a number of modules out over the fewest neighbouring rows that hold them, as evenly as they can.
 *
 * @returns Rows from the lowest up; with fewer modules where no rows hold exactly this number.
 */
export function shareRows(rows: readonly StackedRow[], count: number, holds: Holds): RowShare[] {
  const known = new Map<string, boolean>()
  const held: Holds = (row, amount) => {
    const key = `${row.yFt},${amount}`
    const answer = known.get(key) ?? (amount === row.capacity || holds(row, amount))
    known.set(key, answer)
    return answer
  }
  for (let wanted = count; wanted > 0; wanted--) {
    for (let length = 1; length <= rows.length; length++) {
      for (let from = 0; from + length <= rows.length; from++) {
        const shared = evenly(rows.slice(from, from + length), wanted, held)
        if (shared !== undefined) return shared
      }
    }
  }
  return []
}

interface Partial {
  readonly cost: number
  readonly counts: readonly number[]
}

/** Counts of rows that add up to a number, none empty, with the least sum of squares; of equal ones the fullest low rows. */
function evenly(rows: readonly StackedRow[], count: number, holds: Holds): RowShare[] | undefined {
  if (rows.reduce((sum, row) => sum + row.capacity, 0) < count) return undefined
  let sums = new Map<number, Partial>([[0, { cost: 0, counts: [] }]])
  for (const row of rows) {
    const next = new Map<number, Partial>()
    for (const [sum, { cost, counts }] of sums) {
      for (let amount = Math.min(row.capacity, count - sum); amount >= 1; amount--) {
        const dearer = cost + amount ** 2
        if (dearer > (next.get(sum + amount)?.cost ?? Infinity)) continue
        const one = { cost: dearer, counts: [...counts, amount] }
        const other = next.get(sum + amount)
        if (other !== undefined && other.cost === dearer && !isFuller(one.counts, other.counts)) continue
        if (holds(row, amount)) next.set(sum + amount, one)
      }
    }
    sums = next
  }
  const counts = sums.get(count)?.counts
  return counts === undefined ? undefined : rows.map((row, index) => ({ ...row, count: counts[index] ?? 0 }))
}

function isFuller(a: readonly number[], b: readonly number[]): boolean {
  const index = a.findIndex((value, at) => value !== b[at])
  return index >= 0 && (a[index] ?? 0) > (b[index] ?? 0)
}
