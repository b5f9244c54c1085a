import type { KilowattHours, Milliseconds } from '../../values/index.js'

/** Energy of a stretch of time. Times are local STANDARD time as ms as if UTC. */
export interface Span {
  readonly startMs: Milliseconds
  readonly endMs: Milliseconds
  readonly kwh: KilowattHours
  /** kWh of each module, in the order of `ProductionSeries.moduleIds`; undefined where a cell is empty. */
  readonly moduleKwh: readonly (number | undefined)[]
  readonly line: number
}

/** Stretches of time in order: what an array is of them, or columns of numbers. */
export interface SpanList extends Iterable<Span> {
  readonly length: number
  /** A negative index counts from the end. */
  readonly at: (index: number) => Span | undefined
  readonly map: <Value>(valueOf: (span: Span) => Value) => Value[]
}

/** Columns of numbers in place of objects: ten years of five minutes are a million of them. */
export class SpanColumns implements SpanList {
  length = 0
  readonly #startMs: Float64Array
  readonly #endMs: Float64Array
  readonly #kwh: Float64Array
  readonly #line: Int32Array
  /** NaN where a module has no reading. */
  readonly #modules: readonly Float64Array[]

  constructor(most: number, modules: number) {
    this.#startMs = new Float64Array(most)
    this.#endMs = new Float64Array(most)
    this.#kwh = new Float64Array(most)
    this.#line = new Int32Array(most)
    this.#modules = Array.from({ length: modules }, () => new Float64Array(most))
  }

  push(startMs: Milliseconds, endMs: Milliseconds, kwh: KilowattHours, line: number): void {
    const at = this.length
    this.#startMs[at] = startMs
    this.#endMs[at] = endMs
    this.#kwh[at] = kwh
    this.#line[at] = line
    this.length = at + 1
  }

  /** Energy of a module in the stretch that was put in last; NaN for none. */
  setModule(module: number, kwh: number): void {
    this.#modules[module]![this.length - 1] = kwh
  }

  at(index: number): Span | undefined {
    const at = index < 0 ? this.length + index : index
    if (at < 0 || at >= this.length) return undefined
    return {
      startMs: this.#startMs[at]!,
      endMs: this.#endMs[at]!,
      kwh: this.#kwh[at]!,
      moduleKwh:
        this.#modules.length === 0
          ? NO_MODULES
          : this.#modules.map((column) => (Number.isNaN(column[at]!) ? undefined : column[at]!)),
      line: this.#line[at]!,
    }
  }

  map<Value>(valueOf: (span: Span) => Value): Value[] {
    return Array.from(this, valueOf)
  }

  /** Leaves out all that a check does not let pass. */
  keep(passes: (span: Span) => boolean): void {
    let kept = 0
    for (let at = 0; at < this.length; at += 1) {
      if (!passes(this.at(at)!)) continue
      for (const column of [this.#startMs, this.#endMs, this.#kwh, this.#line, ...this.#modules])
        column[kept] = column[at]!
      kept += 1
    }
    this.length = kept
  }

  /** Long tables are gone through by `at`: the engine then makes no object of a span. */
  [Symbol.iterator](): Iterator<Span> {
    let at = 0
    return {
      next: (): IteratorResult<Span> =>
        at < this.length ? { done: false, value: this.at(at++)! } : { done: true, value: undefined },
    }
  }
}

const NO_MODULES: readonly undefined[] = []
