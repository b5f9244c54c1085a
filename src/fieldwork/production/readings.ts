import type { Milliseconds, TableCell } from '../../values/index.js'

/** Columns of a table of readings, row by row as they were read. A row whose time cannot be read is not among them. */
export interface Readings {
  /** The clock of the stamp as if UTC, and the offset from UTC that it states; NaN for none. */
  readonly clockMs: Float64Array
  readonly offsetH: Float64Array | undefined
  /** As written; NaN for an empty cell. */
  readonly value: Float64Array
  readonly modules: readonly Float64Array[]
  /** Line of the cell that holds the reading. */
  readonly line: Int32Array
  readonly length: number
}

/** Finds cells of rows again, which were not kept: of the lines of their readings. */
export interface FindCells {
  readonly reading: (lines: readonly number[]) => ReadonlyMap<number, TableCell>
  readonly stamp: (lines: readonly number[]) => ReadonlyMap<number, TableCell>
}

/** Readings with the beginnings of their intervals, in local standard time as ms as if UTC. */
export interface TimedReadings {
  length: number
  readonly beginMs: Float64Array
  readonly value: Float64Array
  readonly modules: readonly Float64Array[]
  readonly line: Int32Array
}

/** Makes room as rows come. */
export class ReadingColumns implements Readings {
  length = 0
  readonly clockMs: Float64Array
  readonly value: Float64Array
  readonly modules: readonly Float64Array[]
  readonly line: Int32Array
  offsetH: Float64Array | undefined

  /** @param most Rows that may come. */
  constructor(most: number, modules: number) {
    this.clockMs = new Float64Array(most)
    this.value = new Float64Array(most)
    this.modules = Array.from({ length: modules }, () => new Float64Array(most))
    this.line = new Int32Array(most)
  }

  /** Adds a row. @param numbers The reading, then those of the modules; NaN for none. */
  push(clockMs: Milliseconds, numbers: ArrayLike<number>, line: number): void {
    const at = this.length
    this.clockMs[at] = clockMs
    this.value[at] = numbers[0]!
    for (let module = 0; module < this.modules.length; module += 1) this.modules[module]![at] = numbers[module + 1]!
    this.line[at] = line
    this.length = at + 1
  }

  /** States the offset of the row that was added last. */
  setOffset(offsetH: number): void {
    this.offsetH ??= new Float64Array(this.clockMs.length).fill(Number.NaN)
    this.offsetH[this.length - 1] = offsetH
  }
}
