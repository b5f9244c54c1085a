import { beam } from './beam.js'
import { beamSteps } from './beam-steps.js'
import { dome } from './dome.js'
import { addDraws, normalParts, scaleDraws, yearDraws } from './draws.js'
import { moduleDc } from './module-dc.js'
import { station } from './station.js'
import { workOn } from './memory.js'
import { KERNELS_WASM } from './kernels.generated.js'

/** The hot loops, by their names; what they take stands at each of them. */
export interface Kernels {
  readonly beam: typeof beam
  readonly beamSteps: typeof beamSteps
  readonly dome: typeof dome
  readonly moduleDc: typeof moduleDc
  readonly station: typeof station
  readonly normalParts: typeof normalParts
  readonly scaleDraws: typeof scaleDraws
  readonly addDraws: typeof addDraws
  readonly yearDraws: typeof yearDraws
  /** First address that is not the kernels' own. */
  readonly firstFree: () => number
}

/** Kernels and the memory that they work on. Addresses are bytes. */
export class Engine {
  readonly kernels: Kernels
  /** The memory as numbers of each kind; after `take` they must be asked for again. */
  reals: Float64Array
  floats: Float32Array
  ints: Int32Array
  bytes: Uint8Array
  readonly #grow: (bytes: number) => ArrayBuffer
  #next: number

  /** @param grow Makes the memory at least this large, with all that is in it. */
  constructor(kernels: Kernels, grow: (bytes: number) => ArrayBuffer) {
    this.kernels = kernels
    this.#grow = grow
    this.#next = (kernels.firstFree() + 7) & ~7
    const buffer = grow(FIRST_BYTES)
    this.reals = new Float64Array(buffer)
    this.floats = new Float32Array(buffer)
    this.ints = new Int32Array(buffer)
    this.bytes = new Uint8Array(buffer)
  }

  /** Room that is used until `release`. Its address is a multiple of 8; what stands there is anything. */
  take(bytes: number): number {
    const at = this.#next
    this.#next = (at + bytes + 7) & ~7
    if (this.#next > this.bytes.length) {
      const buffer = this.#grow(2 * this.#next)
      this.reals = new Float64Array(buffer)
      this.floats = new Float32Array(buffer)
      this.ints = new Int32Array(buffer)
      this.bytes = new Uint8Array(buffer)
    }
    return at
  }

  /** Room with numbers in it. */
  storeReals(values: ArrayLike<number>): number {
    const at = this.take(8 * values.length)
    this.reals.set(values, at >> 3)
    return at
  }

  /** Room with whole numbers in it. */
  storeInts(values: ArrayLike<number>): number {
    const at = this.take(4 * values.length)
    this.ints.set(values, at >> 2)
    return at
  }

  /** A copy of numbers. */
  copyReals(at: number, count: number): Float64Array {
    return this.reals.slice(at >> 3, (at >> 3) + count)
  }

  /** Where the next room will be, for `release`. */
  mark(): number {
    return this.#next
  }

  /** Gives back all room that was taken since a mark. */
  release(mark: number): void {
    this.#next = mark
  }
}

const FIRST_BYTES = 1 << 20
const PAGE_BYTES = 65_536

let started: Engine | undefined

/** The engine of this process: compiled kernels where WebAssembly runs, else the same as JavaScript. */
export function engine(): Engine {
  started ??= compiledEngine() ?? scriptEngine()
  return started
}

/** The kernels as JavaScript. */
export function scriptEngine(): Engine {
  let buffer = new ArrayBuffer(0)
  return new Engine(
    { beam, beamSteps, dome, moduleDc, station, normalParts, scaleDraws, addDraws, yearDraws, firstFree: () => 8 },
    (bytes) => {
      const larger = new ArrayBuffer((bytes + 7) & ~7)
      new Uint8Array(larger).set(new Uint8Array(buffer))
      buffer = larger
      workOn(buffer)
      return buffer
    },
  )
}

/** What the engine needs of WebAssembly, which the library's types do not know. */
interface Wasm {
  readonly Memory: new (size: { initial: number }) => { readonly buffer: ArrayBuffer; grow: (pages: number) => number }
  readonly Module: new (bytes: Uint8Array) => object
  readonly Instance: new (module: object, imports: object) => { readonly exports: unknown }
}

/** The compiled kernels; undefined where WebAssembly does not run. */
export function compiledEngine(): Engine | undefined {
  const wasm = (globalThis as { WebAssembly?: Wasm }).WebAssembly
  if (wasm === undefined) return undefined
  const memory = new wasm.Memory({ initial: 1 })
  const bytes = Uint8Array.from(atob(KERNELS_WASM), (letter) => letter.charCodeAt(0))
  const { exports } = new wasm.Instance(new wasm.Module(bytes), { env: { memory } })
  return new Engine(exports as Kernels, (wanted) => {
    const more = Math.ceil((wanted - memory.buffer.byteLength) / PAGE_BYTES)
    if (more > 0) memory.grow(more)
    return memory.buffer
  })
}
