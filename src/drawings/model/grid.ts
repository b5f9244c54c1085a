import type { Box } from './geometry.js'

/** Things on paper, found by where they lie. */
export interface Grid<T> {
  readonly add: (box: Box, thing: T) => void
  /** Things whose boxes touch a box, each once, in the order in which they came. */
  readonly near: (box: Box) => T[]
}

/** Side of a cell, points. */
const CELL_PT = 24

/** An empty grid for the things on one sheet. */
export function makeGrid<T>(): Grid<T> {
  const cells = new Map<string, { readonly box: Box; readonly thing: T; readonly order: number }[]>()
  let count = 0
  const keysOf = function* ({ x, y, width, height }: Box): Generator<string> {
    for (let column = Math.floor(x / CELL_PT); column <= Math.floor((x + width) / CELL_PT); column++) {
      for (let row = Math.floor(y / CELL_PT); row <= Math.floor((y + height) / CELL_PT); row++) yield `${column} ${row}`
    }
  }
  return {
    add: (box, thing) => {
      const entry = { box, thing, order: count++ }
      for (const key of keysOf(box)) {
        const found = cells.get(key)
        if (found === undefined) cells.set(key, [entry])
        else found.push(entry)
      }
    },
    near: (box) => {
      const found = new Map<number, T>()
      for (const key of keysOf(box)) {
        for (const { box: other, thing, order } of cells.get(key) ?? []) {
          if (touches(box, other)) found.set(order, thing)
        }
      }
      return [...found].toSorted(([a], [b]) => a - b).map(([, thing]) => thing)
    },
  }
}

/** Whether two boxes have a point in common. */
export function touches(a: Box, b: Box): boolean {
  return a.x <= b.x + b.width && b.x <= a.x + a.width && a.y <= b.y + b.height && b.y <= a.y + a.height
}
