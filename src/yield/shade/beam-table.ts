import { isMet, type Solid } from '../../scene/index.js'
import { dot, horizonElevationDeg } from '../../sun/index.js'
import { degreesOf } from '../../values/index.js'
import { POINTS_PER_SECTION, type ModuleView, type SeenSolid } from './module-view.js'
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
  /** Its convex parts; light passes the thing once, however many of them it meets. */
  readonly parts: readonly SeenSolid[]
  readonly transmittance: readonly number[]
  readonly share: Float32Array
}

/** Every so many points of the face are asked about things that let light through. */
const POROUS_STRIDE = 3

/** Works the shadows out; see BeamTable. */
export function beamTable(grid: SunGrid, view: ModuleView): BeamTable {
  const size = ROWS * COLUMNS
  const { face, opaque, porous, horizon, sections } = view
  const { normal } = face.axes
  const hasSolids = opaque.length > 0 || horizon.length > 0
  const lit = hasSolids ? new Float32Array(size).fill(1) : undefined
  const free = hasSolids ? new Uint8Array(size).fill(sections) : undefined
  const behind = thingsOf(porous).map((parts): HiddenBehind => ({
    parts,
    transmittance: parts[0]?.solid.transmittance ?? [],
    share: new Float32Array(size),
  }))
  const towards = { east: 0, north: 0, up: 0 }
  const shadow = { points: 0, sections: 0 }
  const touched = new Uint8Array(size)
  let [isShaded, isTouched] = [false, false]
  for (const place of grid.places) {
    towards.east = grid.east[place]!
    towards.north = grid.north[place]!
    towards.up = grid.up[place]!
    if (dot(normal, towards) <= 0) continue
    if (lit !== undefined && free !== undefined) {
      const here = shadowOf(view, towards, shadow)
      if (here) {
        isShaded = true
        touched[place] = 1
        lit[place] = 1 - shadow.points / (sections * POINTS_PER_SECTION)
        free[place] = sections - shadow.sections
      }
    }
    for (const { parts, share } of behind) {
      if (parts.every((seen) => isOutside(seen, towards))) continue
      share[place] = shareBehind(view, parts, towards)
      if (share[place] > 0) {
        isTouched = true
        touched[place] = 1
      }
    }
  }
  return {
    lit: isShaded ? lit : undefined,
    sections: isShaded ? free : undefined,
    touched: isShaded || isTouched ? touched : undefined,
    behind,
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
export function faceShadow(view: ModuleView, towards: Towards): FaceShadow {
  const into = { points: 0, sections: 0 }
  if (!shadowOf(view, towards, into)) return { lit: 1, sections: view.sections }
  return {
    lit: 1 - into.points / (view.sections * POINTS_PER_SECTION),
    sections: view.sections - into.sections,
  }
}

type Towards = { readonly east: number; readonly north: number; readonly up: number }

function isOutside({ above }: SeenSolid, { east, north, up }: Towards): boolean {
  return above.east * east + above.north * north + above.up * up < above.cosine
}

/** Shadow of horizon and solids on the face: whether there is any, and its points and sections. */
function shadowOf(view: ModuleView, towards: Towards, into: { points: number; sections: number }): boolean {
  const { face, opaque, points, sections, radiusFt } = view
  const { middle } = face
  if (isBelowHorizon(view, towards)) return all(view, into)
  let near: Solid[] | undefined
  for (const seen of opaque) {
    if (isOutside(seen, towards)) continue
    if (!isMet(seen.solid, middle.east, middle.north, middle.up, towards, radiusFt)) continue
    if (isMet(seen.solid, middle.east, middle.north, middle.up, towards, -radiusFt)) return all(view, into)
    ;(near ??= []).push(seen.solid)
  }
  if (near === undefined) return false
  into.points = 0
  into.sections = 0
  let at = 0
  for (let section = 0; section < sections; section += 1) {
    let shaded = 0
    for (let point = 0; point < POINTS_PER_SECTION; point += 1, at += 3) {
      for (const solid of near) {
        if (!isMet(solid, points[at]!, points[at + 1]!, points[at + 2]!, towards)) continue
        shaded += 1
        break
      }
    }
    into.points += shaded
    if (shaded > 0) into.sections += 1
  }
  return into.points > 0
}

function all({ sections }: ModuleView, into: { points: number; sections: number }): true {
  into.points = sections * POINTS_PER_SECTION
  into.sections = sections
  return true
}

/** The parts of each thing together. */
function thingsOf(seen: readonly SeenSolid[]): SeenSolid[][] {
  const things = new Map<string, SeenSolid[]>()
  for (const each of seen) things.set(each.solid.path, [...(things.get(each.solid.path) ?? []), each])
  return [...things.values()]
}

function shareBehind(view: ModuleView, parts: readonly SeenSolid[], towards: Towards): number {
  const { face, points, radiusFt } = view
  const { middle } = face
  const near: Solid[] = []
  for (const { solid } of parts) {
    if (!isMet(solid, middle.east, middle.north, middle.up, towards, radiusFt)) continue
    if (isMet(solid, middle.east, middle.north, middle.up, towards, -radiusFt)) return 1
    near.push(solid)
  }
  if (near.length === 0) return 0
  let hidden = 0
  let asked = 0
  for (let at = 0; at < points.length; at += 3 * POROUS_STRIDE) {
    asked += 1
    for (const solid of near) {
      if (!isMet(solid, points[at]!, points[at + 1]!, points[at + 2]!, towards)) continue
      hidden += 1
      break
    }
  }
  return hidden / asked
}

/** Whether the far horizon hides a direction. */
export function isBelowHorizon({ horizon }: Pick<ModuleView, 'horizon'>, towards: Towards): boolean {
  if (horizon.length === 0) return false
  const azimuthDeg = degreesOf(Math.atan2(towards.east, towards.north))
  return degreesOf(Math.asin(Math.min(1, towards.up))) < horizonElevationDeg(horizon, azimuthDeg)
}
