import type { HorizonPoint } from '../../sun/index.js'
import type { Solid } from '../../scene/index.js'
import { LAYOUT, type Engine } from '../kernel/index.js'
import { isBelowHorizon } from './horizon.js'
import type { Cone, ModuleView, SeenSolid } from './module-view.js'
import { COLUMNS, ROWS, type SunGrid } from './sun-grid.js'
import type { SunPath } from './sun-path.js'

/** Addresses of what a module sees. */
export interface StoredView {
  readonly view: number
  /** Room for twice as many whole numbers as it sees solids. */
  readonly near: number
  /** Things that let some light through, and twelve shares for each of them. */
  readonly things: number
  readonly transmittance: number
}

/** The parts of each thing together. */
function thingsOf(seen: readonly SeenSolid[]): SeenSolid[][] {
  const things = new Map<string, SeenSolid[]>()
  for (const each of seen) {
    const parts = things.get(each.solid.path)
    if (parts === undefined) things.set(each.solid.path, [each])
    else parts.push(each)
  }
  return [...things.values()]
}

/** Puts what a module sees where the kernels find it. */
export function storeView(engine: Engine, view: ModuleView): StoredView {
  const things = thingsOf(view.porous)
  const { face, opaque, porous, points, looks, sections, radiusFt } = view
  const count = opaque.length + porous.length
  const at = engine.take(LAYOUT.VIEW_SIZE)
  const seen = engine.take(count * LAYOUT.SEEN_SIZE)
  const pointsAt = engine.take(8 * points.length)
  const looksAt = engine.storeInts(looks)
  const transmittance = engine.take(96 * things.length)
  const near = engine.take(8 * count)
  const pointCount = points.length / 3
  const solids = [...opaque, ...things.flat()].map(({ solid }) => ({
    at: storeSolid(engine, solid),
    inside: engine.take(2 * pointCount * solid.faces.length),
    aim: engine.take(2 * solid.faces.length),
  }))
  const { ints, reals } = engine
  const setInt = (address: number, value: number): void => {
    ints[address >> 2] = value
  }
  setInt(at + LAYOUT.VIEW_SEEN, seen)
  setInt(at + LAYOUT.VIEW_OPAQUE_COUNT, opaque.length)
  setInt(at + LAYOUT.VIEW_SEEN_COUNT, count)
  setInt(at + LAYOUT.VIEW_SECTIONS, sections)
  setInt(at + LAYOUT.VIEW_POINTS, pointsAt)
  setInt(at + LAYOUT.VIEW_LOOKS, looksAt)
  setInt(at + LAYOUT.VIEW_TRANSMITTANCE, transmittance)
  const { middle, axes } = face
  reals.set([middle.east, middle.north, middle.up], (at + LAYOUT.VIEW_MIDDLE) >> 3)
  reals.set([axes.normal.east, axes.normal.north, axes.normal.up], (at + LAYOUT.VIEW_NORMAL) >> 3)
  reals[(at + LAYOUT.VIEW_RADIUS) >> 3] = radiusFt
  reals.set(points, pointsAt >> 3)
  let next = seen
  const store = ({ above, whole, isOwnRoof }: SeenSolid, thing: number): void => {
    const { at: solid, inside, aim } = solids[(next - seen) / LAYOUT.SEEN_SIZE]!
    setInt(next + LAYOUT.SEEN_SOLID, solid)
    setInt(next + LAYOUT.SEEN_INSIDE, inside)
    setInt(next + LAYOUT.SEEN_AIM, aim)
    setInt(next + LAYOUT.SEEN_THING, thing)
    setInt(next + LAYOUT.SEEN_OWN_ROOF, isOwnRoof ? 1 : 0)
    storeCone(reals, next + LAYOUT.SEEN_ABOVE, above)
    storeCone(reals, next + LAYOUT.SEEN_WHOLE, whole)
    next += LAYOUT.SEEN_SIZE
  }
  for (const each of opaque) store(each, LAYOUT.OPAQUE)
  things.forEach((parts, thing) => {
    for (const part of parts) store(part, thing)
    reals.set(parts[0]?.solid.transmittance ?? [], (transmittance + 96 * thing) >> 3)
  })
  return { view: at, near, things: things.length, transmittance }
}

function storeCone(reals: Float64Array, at: number, { east, north, up, cosine }: Cone): void {
  reals[at >> 3] = east
  reals[(at >> 3) + 1] = north
  reals[(at >> 3) + 2] = up
  reals[(at >> 3) + 3] = cosine
}

function storeSolid(engine: Engine, { faces, round }: Solid): number {
  const data = round === undefined ? faces : [round.east, round.north, round.radiusFt, round.base, round.top]
  const at = engine.take(LAYOUT.SOLID_DATA + 8 * data.length)
  engine.ints[(at + LAYOUT.SOLID_FACES) >> 2] = round === undefined ? faces.length / 4 : LAYOUT.ROUND
  engine.reals.set(data, (at + LAYOUT.SOLID_DATA) >> 3)
  return at
}

/** Addresses of the sun's directions and of the places among them that count. */
export interface StoredGrid {
  readonly directions: number
  readonly places: number
  readonly count: number
}

const flatGrids = new WeakMap<SunGrid, Float64Array>()

/** Puts the places of the sun where the kernels find them. */
export function storeGrid(engine: Engine, grid: SunGrid): StoredGrid {
  let flat = flatGrids.get(grid)
  if (flat === undefined) {
    flat = new Float64Array(3 * grid.east.length)
    for (let place = 0; place < grid.east.length; place += 1) {
      flat[3 * place] = grid.east[place]!
      flat[3 * place + 1] = grid.north[place]!
      flat[3 * place + 2] = grid.up[place]!
    }
    flatGrids.set(grid, flat)
  }
  const { places } = grid
  return { directions: engine.storeReals(flat), places: engine.storeInts(places), count: places.length }
}

const belowByHorizon = new WeakMap<readonly HorizonPoint[], { readonly grid: SunGrid; readonly below: Uint8Array }>()

/** Puts down where the far horizon hides the sun; 0 where there is no horizon. */
export function storeBelow(engine: Engine, { horizon }: ModuleView, grid: SunGrid): number {
  if (horizon.length === 0) return 0
  let known = belowByHorizon.get(horizon)
  if (known?.grid !== grid) {
    const below = new Uint8Array(ROWS * COLUMNS)
    for (const place of grid.places) {
      const towards = { east: grid.east[place]!, north: grid.north[place]!, up: grid.up[place]! }
      if (isBelowHorizon(horizon, towards)) below[place] = 1
    }
    known = { grid, below }
    belowByHorizon.set(horizon, known)
  }
  const at = engine.take(known.below.length)
  engine.bytes.set(known.below, at)
  return at
}

/** Addresses of what the sun passes over; see SunPath. */
export interface StoredPath {
  readonly suns: number
  readonly from: number
  readonly place: number
  readonly share: number
  readonly month: number
}

/** Puts what the sun passes over where the kernels find it. */
export function storePath(engine: Engine, { from, place, share, month }: SunPath): StoredPath {
  return {
    suns: month.length,
    from: engine.storeInts(from),
    place: engine.storeInts(place),
    share: engine.storeReals(share),
    month: engine.storeInts(month),
  }
}
