import type { SkySteps } from '../sky-steps.js'
import { engine, type Engine } from '../kernel/index.js'
import type { ModuleView } from './module-view.js'
import { storeBelow, storeGrid, storePath, storeView, type StoredView } from './shade-memory.js'
import { COLUMNS, ROWS, sunGrid, type SunGrid } from './sun-grid.js'
import { sunPath } from './sun-path.js'

/** Shadows on one module by place of the sun, where the kernels keep them; see `beam`. */
interface StoredShadows {
  /** Share of the face that is lit, in single precision. */
  readonly lit: number
  /** Bypass sections that no shadow of a solid touches, a byte each. */
  readonly free: number
  /** Places where anything is shaded: 1, and 0 elsewhere. */
  readonly touched: number
  /** For each thing that lets some light through, the share of the face behind it, in single precision. */
  readonly behind: number
  /** Whether solids or the horizon shade anywhere. */
  readonly isShaded: boolean
}

const SIZE = ROWS * COLUMNS

/** Works the shadows of solids, horizon and things that let light through out for every place where the sun can stand. */
function shadowsByPlace(machine: Engine, stored: StoredView, view: ModuleView, grid: SunGrid): StoredShadows {
  const sun = storeGrid(machine, grid)
  const below = storeBelow(machine, view, grid)
  const lit = machine.take(4 * SIZE)
  const free = machine.take(SIZE)
  const touched = machine.take(SIZE)
  const behind = machine.take(4 * SIZE * stored.things)
  machine.floats.fill(0, behind >> 2, (behind >> 2) + SIZE * stored.things)
  const { view: at, near } = stored
  const { directions, places, count } = sun
  const found = machine.kernels.beam(at, directions, places, count, below, near, lit, free, touched, behind, SIZE)
  return { lit, free, touched, behind, isShaded: (found & 1) !== 0 }
}

/** Direct light on a module, by position of the sun. */
export interface BeamShade {
  /** Share of direct light that things which let some of it through leave. */
  readonly through: Float64Array
  /** Share of what they leave that nothing solid takes from the face. */
  readonly lit: Float64Array
  /**
   * Shares of the time of a step with 0, 1, ... all sections free of any shadow of a solid: entry
   * `sun * (sections + 1) + free`.
   */
  readonly time: Float64Array
  /** Sections that no shadow of a solid touches, by place of the sun; undefined where none ever does. */
  readonly freeSections: Uint8Array | undefined
}

/** Direct light on a module through the year. */
export function beamShade(machine: Engine, stored: StoredView, view: ModuleView, steps: SkySteps): BeamShade {
  const { lit, free, touched, behind, isShaded } = shadowsByPlace(machine, stored, view, sunGrid(steps.latitudeDeg))
  const path = storePath(machine, sunPath(steps))
  const { suns } = path
  const { sections } = view
  const through = machine.take(8 * suns)
  const arriving = machine.take(8 * suns)
  const time = machine.take(8 * suns * (sections + 1))
  machine.kernels.beamSteps(
    suns,
    path.from,
    path.place,
    path.share,
    path.month,
    sections,
    SIZE,
    lit,
    free,
    touched,
    behind,
    stored.things,
    stored.transmittance,
    through,
    arriving,
    time,
  )
  return {
    through: machine.copyReals(through, suns),
    lit: machine.copyReals(arriving, suns),
    time: machine.copyReals(time, suns * (sections + 1)),
    freeSections: isShaded ? machine.bytes.slice(free, free + SIZE) : undefined,
  }
}

/** Shadow of solids and horizon on a face under a light from one direction. */
export interface FaceShadow {
  /** Share of the face that is lit. */
  readonly lit: number
  /** Bypass sections that no shadow touches. */
  readonly sections: number
}

/** The shadow on a face that turns to the light; see FaceShadow. */
export function faceShadow(
  view: ModuleView,
  { east, north, up }: { readonly east: number; readonly north: number; readonly up: number },
): FaceShadow {
  const one: SunGrid = {
    latitudeDeg: 0,
    east: Float64Array.of(east),
    north: Float64Array.of(north),
    up: Float64Array.of(up),
    places: Uint16Array.of(0),
  }
  const machine = engine()
  const mark = machine.mark()
  const { lit, free } = shadowsByPlace(machine, storeView(machine, view), view, one)
  const shadow = { lit: machine.floats[lit >> 2]!, sections: machine.bytes[free]! }
  machine.release(mark)
  return shadow
}
