import { isMet, type Solid } from '../../scene/index.js'
import type { Direction, PlaneAxes } from '../../sun/index.js'
import type { Feet } from '../../values/index.js'
import { isBelowHorizon } from './beam-table.js'
import type { ModuleView } from './module-view.js'

/**
 * Directions in which an even sky and the ground are looked at. With so many the share of the sky that a module sees is
 * within 0.12 % of what 131,072 give (tests/yield/dome.test.ts), which is 0.05 % of the light of a plane's year where four
 * tenths of it come from the sky.
 */
export const DOME_DIRECTIONS = 4096

/** Steps of a sequence that fills a square evenly: powers of the root of x^3 = x + 1. */
const ROOT = 1.324717957244746
const STEP = [1 / ROOT, 1 / ROOT ** 2] as const

/** Every so many points of the face look in a direction; the next direction takes the next ones. */
const POINT_STRIDE = 6

/** Directions over a plane, each as likely as it counts for the plane's light (by the cosine of incidence). */
interface Dome {
  /** East, north, up of each: first those towards the sky, then those towards the ground. */
  readonly towards: Float64Array
  readonly skies: number
  readonly grounds: number
}

let last: { readonly axes: PlaneAxes; readonly dome: Dome; readonly count: number } | undefined

/** The dome over a plane; that of the last plane is kept. */
function domeOver(axes: PlaneAxes, count: number): Dome {
  // Level planes that face different ways have one normal, but not the same directions.
  if (
    last !== undefined &&
    last.count === count &&
    isSame(last.axes.normal, axes.normal) &&
    isSame(last.axes.x, axes.x)
  )
    return last.dome
  const { x, y, normal } = axes
  const towards = new Float64Array(3 * count)
  let [skies, grounds] = [0, 0]
  for (let index = 1; index <= count; index += 1) {
    const squared = (0.5 + STEP[0] * index) % 1
    const angle = 2 * Math.PI * ((0.5 + STEP[1] * index) % 1)
    const sine = Math.sqrt(squared)
    const cosine = Math.sqrt(1 - squared)
    const across = sine * Math.cos(angle)
    const along = sine * Math.sin(angle)
    const up = across * x.up + along * y.up + cosine * normal.up
    const place = up > 0 ? skies : count - 1 - grounds
    if (up > 0) skies += 1
    else grounds += 1
    towards[3 * place] = across * x.east + along * y.east + cosine * normal.east
    towards[3 * place + 1] = across * x.north + along * y.north + cosine * normal.north
    towards[3 * place + 2] = up
  }
  const dome = { towards, skies, grounds }
  last = { axes, dome, count }
  return dome
}

function isSame(a: Direction, b: Direction): boolean {
  return a.east === b.east && a.north === b.north && a.up === b.up
}

/** What a module sees of an even sky and of the ground. */
export interface DomeShares {
  /** Share of the sky's light on the free plane that arrives, twelve months. */
  readonly sky: Float64Array
  /** Share of the ground's light on the free plane that arrives, twelve months. */
  readonly ground: Float64Array
}

/**
 * Shares of sky and ground that nothing hides. What a solid hides of the ground counts as dark, of the sky too; the
 * module's own roof reflects as the ground does.
 */
export function domeShares(view: ModuleView, count = DOME_DIRECTIONS): DomeShares {
  const dome = domeOver(view.face.axes, count)
  const { skies, grounds } = dome
  const shares = (begin: number, end: number, isSky: boolean): Float64Array => {
    const hidden = new Float64Array(12)
    const bySolids = hiddenBySolids(view, dome, begin, end, { isSky, months: hidden })
    return hidden.map((months) => (end === begin ? 1 : Math.max(0, 1 - (months + bySolids) / (end - begin))))
  }
  return { sky: shares(0, skies, true), ground: shares(skies, skies + grounds, false) }
}

/** Half of the directions, and what takes by month what is hidden by things that let some light through. */
interface Half {
  readonly isSky: boolean
  readonly months: Float64Array
}

/**
 * Directions of a stretch that solids and the horizon hide, each by the share of the face that it hides them from.
 *
 * @param half Takes what things hide that let some light through.
 */
function hiddenBySolids(
  view: ModuleView,
  { towards }: Dome,
  begin: number,
  end: number,
  { isSky, months }: Half,
): number {
  const { opaque, porous, horizon, radiusFt } = view
  const solids = [...opaque, ...porous].filter((seen) => isSky || !seen.isOwnRoof)
  const cones = solids.map((seen) => (isSky ? seen.above : seen.whole))
  const near: Solid[] = []
  const direction = { east: 0, north: 0, up: 0 }
  let sum = 0
  for (let index = begin; index < end; index += 1) {
    const east = towards[3 * index]!
    const north = towards[3 * index + 1]!
    const up = towards[3 * index + 2]!
    direction.east = east
    direction.north = north
    direction.up = up
    near.length = 0
    let isHidden = isSky && horizon.length > 0 && isBelowHorizon(view, direction)
    for (let each = 0; each < cones.length && !isHidden; each += 1) {
      const cone = cones[each]!
      if (cone.east * east + cone.north * north + cone.up * up < cone.cosine) continue
      const { solid } = solids[each]!
      // From most directions a thing hides all of the face, or nothing.
      if (!meetsFace(view, solid, direction, radiusFt)) continue
      if (solid.transmittance === undefined && meetsFace(view, solid, direction, -radiusFt)) isHidden = true
      else near.push(solid)
    }
    if (isHidden) sum += 1
    else if (near.length > 0) sum += hiddenFromFace(view, near, direction, index, months)
  }
  return sum
}

function meetsFace({ face }: ModuleView, solid: Solid, towards: Direction, growFt: Feet): boolean {
  const { middle } = face
  return isMet(solid, middle.east, middle.north, middle.up, towards, growFt)
}

/** Share of some points of the face from which solids hide a direction; what is porous goes into the months. */
function hiddenFromFace(
  view: ModuleView,
  near: readonly Solid[],
  towards: Direction,
  index: number,
  porousMonths: Float64Array,
): number {
  const { points, radiusFt } = view
  const [only] = near
  if (near.length === 1 && only?.transmittance !== undefined && meetsFace(view, only, towards, -radiusFt)) {
    addMonths(porousMonths, only.transmittance, 1)
    return 0
  }
  const count = points.length / 3
  let hidden = 0
  for (let point = index % POINT_STRIDE; point < count; point += POINT_STRIDE) {
    const [east, north, up] = [points[3 * point]!, points[3 * point + 1]!, points[3 * point + 2]!]
    const share = POINT_STRIDE / count
    let through: readonly number[] | undefined
    let isHidden = false
    let passed = ''
    for (const solid of near) {
      // Parts of one thing stand in a row, and light passes it once.
      if (solid.path === passed || !isMet(solid, east, north, up, towards)) continue
      passed = solid.path
      const months = solid.transmittance
      if (months === undefined) {
        isHidden = true
        break
      }
      through = through === undefined ? months : through.map((passes, month) => passes * months[month]!)
    }
    if (isHidden) hidden += share
    else if (through !== undefined) addMonths(porousMonths, through, share)
  }
  return hidden
}

function addMonths(months: Float64Array, through: readonly number[], share: number): void {
  for (let month = 0; month < 12; month += 1) months[month] = months[month]! + share * (1 - through[month]!)
}
