import { engine } from '../kernel/index.js'
import type { ModuleView } from './module-view.js'
import { storeBelow, storeGrid, storeView, thingsOf } from './shade-memory.js'
import { COLUMNS, ROWS, type SunGrid } from './sun-grid.js'

/** Shadows on one module for every place where the sun can stand; undefined parts are wholly lit. */
export interface BeamTable {
  /** Share of the module's face that nothing solid shades. */
  readonly lit: Float32Array | undefined
  /** Bypass sections that no shadow of a solid touches. */
  readonly sections: Uint8Array | undefined
  /** Places where anything is shaded: 1, and 0 elsewhere; undefined where nothing ever is. */
  readonly touched: Uint8Array | undefined
  /** For each thing that lets some light through, the share of the face that lies behind it. */
  readonly behind: readonly HiddenBehind[]
}

/** What a thing that lets light through hides, by place of the sun. */
export interface HiddenBehind {
  readonly transmittance: readonly number[]
  readonly share: Float32Array
}

/** Works the shadows out; see BeamTable. */
export function beamTable(grid: SunGrid, view: ModuleView): BeamTable {
  const size = ROWS * COLUMNS
  const { opaque, porous, horizon } = view
  const hasSolids = opaque.length > 0 || horizon.length > 0
  const things = thingsOf(porous)
  const machine = engine()
  const mark = machine.mark()
  const seen = storeView(machine, view, things)
  const sun = storeGrid(machine, grid)
  const below = storeBelow(machine, view, grid)
  const lit = machine.take(4 * size)
  const free = machine.take(size)
  const touched = machine.take(size)
  const behind = machine.take(4 * size * things.length)
  machine.floats.fill(0, behind / 4, behind / 4 + size * things.length)
  const { view: at, near } = seen
  const found = machine.kernels.beam(
    at,
    sun.directions,
    sun.places,
    sun.count,
    below,
    near,
    lit,
    free,
    touched,
    behind,
    size,
  )
  const isShaded = hasSolids && (found & 1) !== 0
  const { bytes, floats } = machine
  const table: BeamTable = {
    lit: isShaded ? floats.slice(lit / 4, lit / 4 + size) : undefined,
    sections: isShaded ? bytes.slice(free, free + size) : undefined,
    touched: found === 0 ? undefined : bytes.slice(touched, touched + size),
    behind: things.map((parts, index) => ({
      transmittance: parts[0]?.solid.transmittance ?? [],
      share: floats.slice(behind / 4 + index * size, behind / 4 + (index + 1) * size),
    })),
  }
  machine.release(mark)
  return table
}

/** Shadow of solids and horizon on a face under a light from one direction. */
export interface FaceShadow {
  /** Share of the face that is lit. */
  readonly lit: number
  /** Bypass sections that no shadow touches. */
  readonly sections: number
}

/** The shadow on a face that turns to the light; see FaceShadow. */
export function faceShadow(view: ModuleView, towards: Towards): FaceShadow {
  const { east, north, up } = towards
  const one = {
    latitudeDeg: 0,
    east: Float64Array.of(east),
    north: Float64Array.of(north),
    up: Float64Array.of(up),
    places: Uint16Array.of(0),
  }
  const { lit, sections } = beamTable(one, view)
  return { lit: lit?.[0] ?? 1, sections: sections?.[0] ?? view.sections }
}

type Towards = { readonly east: number; readonly north: number; readonly up: number }
