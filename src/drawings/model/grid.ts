import type { Box } from './geometry.js'

/** Things on paper, found by where they lie. */
export interface Grid<T> {
  readonly add: (box: Box, thing: T) => void
  /** Things whose boxes touch a box, each once, in the order in which they came. */
  readonly near: (box: Box) => T[]
}

interface Entry<T> {
  readonly box: Box
  readonly thing: T
  readonly order: number
  /** The last search that found it. */
  found: number
}

/** Side of a cell, points. */
const CELL_PT = 24
/** More cells than any sheet has in a row. */
const STRIDE = 1 << 20

/** An empty grid for the things on one sheet. */
export function makeGrid<T>(): Grid<T> {
  const cells = new Map<number, Entry<T>[]>()
  let [count, searches] = [0, 0]
  const keysOf = ({ x, y, width, height }: Box): number[] => {
    const keys: number[] = []
    const [right, bottom] = [Math.floor((x + width) / CELL_PT), Math.floor((y + height) / CELL_PT)]
    for (let column = Math.floor(x / CELL_PT); column <= right; column++) {
      for (let row = Math.floor(y / CELL_PT); row <= bottom; row++) keys.push(column * STRIDE + row)
    }
    return keys
  }
  return {
    add: (box, thing) => {
      const entry: Entry<T> = { box, thing, order: count++, found: 0 }
      for (const key of keysOf(box)) {
        const cell = cells.get(key)
        if (cell === undefined) cells.set(key, [entry])
        else cell.push(entry)
      }
    },
    near: (box) => {
      searches += 1
      const found: Entry<T>[] = []
      for (const key of keysOf(box)) {
        for (const entry of cells.get(key) ?? []) {
          if (entry.found === searches || !touches(box, entry.box)) continue
          entry.found = searches
          found.push(entry)
        }
      }
      if (found.length > 1) found.sort((a, b) => a.order - b.order)
      return found.map(({ thing }) => thing)
    },
  }
}

/** Whether two boxes have a point in common. */
function touches(a: Box, b: Box): boolean {
  return a.x <= b.x + b.width && b.x <= a.x + a.width && a.y <= b.y + b.height && b.y <= a.y + a.height
}
