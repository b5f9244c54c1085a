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

/** Takes rows as they come; those whose reading has to wait keep their place. */
export class ReadingColumns implements Readings {
  length = 0
  readonly clockMs: Float64Array
  readonly value: Float64Array
  readonly modules: readonly Float64Array[]
  readonly line: Int32Array
  offsetH: Float64Array | undefined
  /** Indices of the rows that wait. */
  readonly left: number[] = []

  /** @param most Rows that may come. */
  constructor(most: number, modules: number) {
    this.clockMs = new Float64Array(most)
    this.value = new Float64Array(most)
    this.modules = Array.from({ length: modules }, () => new Float64Array(most))
    this.line = new Int32Array(most)
  }

  /** Adds a row. @param numbers The reading, then those of the modules; NaN for none. */
  push(clockMs: Milliseconds, numbers: ArrayLike<number>, line: number): void {
    this.set(this.length, clockMs, numbers, line)
    this.length += 1
  }

  /** Keeps the place of a row that is read later; its time is NaN until then. */
  leave(line: number): void {
    this.clockMs[this.length] = Number.NaN
    this.line[this.length] = line
    this.left.push(this.length)
    this.length += 1
  }

  set(at: number, clockMs: Milliseconds, numbers: ArrayLike<number>, line: number): void {
    this.clockMs[at] = clockMs
    this.value[at] = numbers[0]!
    for (let module = 0; module < this.modules.length; module += 1) this.modules[module]![at] = numbers[module + 1]!
    this.line[at] = line
  }

  setOffset(at: number, offsetH: number): void {
    this.offsetH ??= new Float64Array(this.clockMs.length).fill(Number.NaN)
    this.offsetH[at] = offsetH
  }

  /** Leaves out rows whose time was never set. */
  dropUnset(): void {
    if (!this.left.some((at) => Number.isNaN(this.clockMs[at]!))) return
    const offsets = this.offsetH === undefined ? [] : [this.offsetH]
    const columns = [this.value, this.line, ...offsets, ...this.modules, this.clockMs]
    let kept = 0
    for (let at = 0; at < this.length; at += 1) {
      if (Number.isNaN(this.clockMs[at]!)) continue
      for (const column of columns) column[kept] = column[at]!
      kept += 1
    }
    this.length = kept
  }
}
