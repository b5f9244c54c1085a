import type { Direction, PlaneAxes } from '../../sun/index.js'
import { LAYOUT } from '../kernel/index.js'

/** Golden section: steps of it fill a turn evenly, as the seeds of a sunflower do. */
const GOLDEN = (Math.sqrt(5) - 1) / 2
/** Where the first of them lies; of twelve starts this one is nearest to many more directions. */
const START = 0.25
/** Cells along each side of the square, so that directions of one cell lie together. */
const CELLS = 8

/**
 * Directions over a plane, each as likely as it counts for the plane's light (by the cosine of incidence), cell by cell. They come in
 * pairs that are mirror images of each other across the line of slope.
 */
export interface Dome {
  /** The cells of the sky and then those of the ground, and behind them the rays, as the kernels take them. */
  readonly bytes: Uint8Array
  readonly skyCells: number
  readonly groundCells: number
  readonly skies: number
  readonly grounds: number
  /** Direction by its number: those towards the sky from the first, those towards the ground from the last. */
  readonly towards: Float64Array
}

let last: { readonly axes: PlaneAxes; readonly dome: Dome; readonly count: number } | undefined

/** The dome over a plane; that of the last plane is kept. */
export function domeOver(axes: PlaneAxes, count: number): Dome {
  // Level planes that face different ways have one normal, but not the same directions.
  if (last?.count === count && isSame(last.axes.normal, axes.normal) && isSame(last.axes.x, axes.x)) return last.dome
  last = { axes, dome: domeOf(axes, count), count }
  return last.dome
}

function isSame(a: Direction, b: Direction): boolean {
  return a.east === b.east && a.north === b.north && a.up === b.up
}

function domeOf({ x, y, normal }: PlaneAxes, count: number): Dome {
  const towards = new Float64Array(3 * count)
  /** Cell of each direction, those of the ground after those of the sky. */
  const cellOf = new Uint8Array(count)
  const sizes = new Int32Array(2 * CELLS * CELLS)
  const pairOf = new Int32Array(count)
  let [skies, grounds] = [0, 0]
  for (let pair = 0; pair < count / 2; pair += 1) {
    const squared = (pair + 0.5) / (count / 2)
    const turn = (START + GOLDEN * pair) % 1
    // From straight down the slope over the right to straight up; its mirror image lies to the left.
    const angle = Math.PI * (turn - 0.5)
    const sine = Math.sqrt(squared)
    const cosine = Math.sqrt(1 - squared)
    const along = sine * Math.sin(angle)
    const column = Math.floor((CELLS / 2) * turn)
    for (let side = 0; side < 2; side += 1) {
      const across = (side === 0 ? 1 : -1) * sine * Math.cos(angle)
      const up = across * x.up + along * y.up + cosine * normal.up
      const number = up > 0 ? skies : count - 1 - grounds
      if (up > 0) skies += 1
      else grounds += 1
      towards[3 * number] = across * x.east + along * y.east + cosine * normal.east
      towards[3 * number + 1] = across * x.north + along * y.north + cosine * normal.north
      towards[3 * number + 2] = up
      pairOf[number] = 2 * pair + side
      const row = CELLS * Math.floor(CELLS * squared)
      const cell = (up > 0 ? 0 : CELLS * CELLS) + row + (side === 0 ? column : CELLS - 1 - column)
      cellOf[number] = cell
      sizes[cell] = sizes[cell]! + 1
    }
  }
  return { ...packed(towards, pairOf, cellOf, sizes), skies, grounds, towards }
}

/** Lays the directions out cell by cell. */
function packed(
  towards: Float64Array,
  pairOf: Int32Array,
  cellOf: Uint8Array,
  sizes: Int32Array,
): Pick<Dome, 'bytes' | 'skyCells' | 'groundCells'> {
  const skyCells = sizes.subarray(0, CELLS * CELLS).reduce((sum, size) => sum + (size > 0 ? 1 : 0), 0)
  const groundCells = sizes.subarray(CELLS * CELLS).reduce((sum, size) => sum + (size > 0 ? 1 : 0), 0)
  const rays = (skyCells + groundCells) * LAYOUT.CELL_SIZE
  const buffer = new ArrayBuffer(rays + cellOf.length * LAYOUT.RAY_SIZE)
  const [reals, ints] = [new Float64Array(buffer), new Int32Array(buffer)]
  const next = new Int32Array(sizes.length)
  for (let cell = 0, at = rays; cell < sizes.length; cell += 1) {
    next[cell] = at
    at += sizes[cell]! * LAYOUT.RAY_SIZE
  }
  const firsts = next.slice()
  for (let number = 0; number < cellOf.length; number += 1) {
    const cell = cellOf[number]!
    const at = next[cell]!
    next[cell] = at + LAYOUT.RAY_SIZE
    for (let axis = 0; axis < 3; axis += 1) reals[(at >> 3) + axis] = towards[3 * number + axis]!
    ints[(at + LAYOUT.RAY_NUMBER) >> 2] = number
    ints[(at + LAYOUT.RAY_PAIR) >> 2] = pairOf[number]!
  }
  let at = 0
  sizes.forEach((size, cell) => {
    if (size === 0) return
    ints[(at + LAYOUT.CELL_COUNT) >> 2] = size
    ints[(at + LAYOUT.CELL_RAYS) >> 2] = firsts[cell]! - at
    storeCone(reals, at, firsts[cell]!, size)
    at += LAYOUT.CELL_SIZE
  })
  return { bytes: new Uint8Array(buffer), skyCells, groundCells }
}

/** Puts down a cone round the rays of a cell, and four directions of which it lies between. */
function storeCone(reals: Float64Array, cell: number, first: number, size: number): void {
  const from = first >> 3
  const step = LAYOUT.RAY_SIZE >> 3
  let [east, north, up] = [0, 0, 0]
  for (let at = from; at < from + size * step; at += step) {
    east += reals[at]!
    north += reals[at + 1]!
    up += reals[at + 2]!
  }
  const length = Math.hypot(east, north, up)
  const axis = { east: east / length, north: north / length, up: up / length }
  let cosine = 1
  for (let at = from; at < from + size * step; at += step) {
    cosine = Math.min(cosine, axis.east * reals[at]! + axis.north * reals[at + 1]! + axis.up * reals[at + 2]!)
  }
  cosine -= 1e-12
  const sine = Math.sqrt(1 - cosine * cosine)
  reals.set([axis.east, axis.north, axis.up, cosine, sine], (cell + LAYOUT.CELL_AXIS) >> 3)
  const [u, v] = across(axis)
  const reach = sine / cosine + 1e-9
  let at = (cell + LAYOUT.CELL_CORNERS) >> 3
  for (const [right, ahead] of CORNERS) {
    const corner = {
      east: axis.east + reach * (right * u.east + ahead * v.east),
      north: axis.north + reach * (right * u.north + ahead * v.north),
      up: axis.up + reach * (right * u.up + ahead * v.up),
    }
    const size3 = Math.hypot(corner.east, corner.north, corner.up)
    reals.set([corner.east / size3, corner.north / size3, corner.up / size3], at)
    at += 3
  }
}

const CORNERS = [
  [1, 1],
  [1, -1],
  [-1, -1],
  [-1, 1],
] as const

/** Two directions at right angles to one and to each other. */
function across({ east, north, up }: Direction): readonly [Direction, Direction] {
  const other = Math.abs(up) < 0.7 ? { east: 0, north: 0, up: 1 } : { east: 1, north: 0, up: 0 }
  const u = cross(other, { east, north, up })
  const length = Math.hypot(u.east, u.north, u.up)
  const unit = { east: u.east / length, north: u.north / length, up: u.up / length }
  return [unit, cross({ east, north, up }, unit)]
}

function cross(a: Direction, b: Direction): Direction {
  return {
    east: a.north * b.up - a.up * b.north,
    north: a.up * b.east - a.east * b.up,
    up: a.east * b.north - a.north * b.east,
  }
}
