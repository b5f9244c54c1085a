import { isMet } from '../../scene/index.js'
import type { PlaneAxes } from '../../sun/index.js'
import { isBelowHorizon } from './beam-table.js'
import type { Cone, ModuleView } from './module-view.js'

/**
 * Directions from which an even sky and an even ground are looked at. With so many the share of the sky that a module sees
 * is within 0.05 % of one from 64 times as many (tests/yield/dome.test.ts), which is 0.02 % of a plane's year.
 */
export const DOME_DIRECTIONS = 8192

/** Steps of a sequence that fills four dimensions evenly: powers of the root of x^5 = x + 1. */
const ROOT = 1.1673039782614187
const STEP = [1 / ROOT, 1 / ROOT ** 2, 1 / ROOT ** 3, 1 / ROOT ** 4] as const

/** Directions over a plane, each as likely as it counts for the plane's light (by the cosine of incidence). */
export interface Dome {
  /** East, north, up of each. */
  readonly towards: Float64Array
  /** Point of the face that looks in each direction, as a share of the points. */
  readonly point: Float64Array
}

let last: { readonly axes: PlaneAxes; readonly dome: Dome; readonly count: number } | undefined

/** The dome over a plane; that of the last plane is kept. */
export function domeOver(axes: PlaneAxes, count = DOME_DIRECTIONS): Dome {
  if (last !== undefined && last.count === count && isSame(last.axes, axes)) return last.dome
  const towards = new Float64Array(3 * count)
  const point = new Float64Array(count)
  const { x, y, normal } = axes
  for (let index = 0; index < count; index += 1) {
    const squared = (0.5 + STEP[0] * (index + 1)) % 1
    const angle = 2 * Math.PI * ((0.5 + STEP[1] * (index + 1)) % 1)
    const [sine, cosine] = [Math.sqrt(squared), Math.sqrt(1 - squared)]
    const [across, along] = [sine * Math.cos(angle), sine * Math.sin(angle)]
    towards[3 * index] = across * x.east + along * y.east + cosine * normal.east
    towards[3 * index + 1] = across * x.north + along * y.north + cosine * normal.north
    towards[3 * index + 2] = across * x.up + along * y.up + cosine * normal.up
    point[index] = (0.5 + STEP[2] * (index + 1)) % 1
  }
  const dome = { towards, point }
  last = { axes, dome, count }
  return dome
}

function isSame(a: PlaneAxes, b: PlaneAxes): boolean {
  return a.normal.east === b.normal.east && a.normal.north === b.normal.north && a.normal.up === b.normal.up
}

/** What a module sees of an even sky and of the ground. */
export interface DomeShares {
  /** Share of the sky's light on the free plane that arrives, twelve months. */
  readonly sky: Float64Array
  /** Share of the ground's light on the free plane that arrives. */
  readonly ground: number
}

/**
 * Shares of sky and ground that nothing hides. What a solid hides of the ground counts as dark, of the sky too; the
 * module's own roof reflects as the ground does.
 */
export function domeShares(view: ModuleView, count = DOME_DIRECTIONS): DomeShares {
  const { face, points, opaque, porous } = view
  const { towards, point } = domeOver(face.axes, count)
  const pointCount = points.length / 3
  const hidden = new Float64Array(12)
  const through = new Float64Array(12)
  const direction = { east: 0, north: 0, up: 0 }
  let [skies, grounds, hiddenSkies, hiddenGrounds] = [0, 0, 0, 0]
  for (let index = 0; index < count; index += 1) {
    direction.east = towards[3 * index]!
    direction.north = towards[3 * index + 1]!
    direction.up = towards[3 * index + 2]!
    const above = direction.up > 0
    if (above) skies += 1
    else grounds += 1
    const at = 3 * Math.floor(point[index]! * pointCount)
    const [east, north, up] = [points[at]!, points[at + 1]!, points[at + 2]!]
    const isHidden =
      (above && isBelowHorizon(view, direction)) ||
      opaque.some(
        (seen) => isIn(above ? seen.above : seen.whole, direction) && isMet(seen.solid, east, north, up, direction),
      )
    if (isHidden) {
      if (above) hiddenSkies += 1
      else hiddenGrounds += 1
      continue
    }
    if (!above || porous.length === 0) continue
    let isBehind = false
    for (const { solid, above: cone } of porous) {
      if (!isIn(cone, direction) || !isMet(solid, east, north, up, direction)) continue
      if (!isBehind) through.fill(1)
      isBehind = true
      for (let month = 0; month < 12; month += 1) through[month] = through[month]! * (solid.transmittance?.[month] ?? 0)
    }
    if (isBehind) for (let month = 0; month < 12; month += 1) hidden[month] = hidden[month]! + 1 - through[month]!
  }
  return {
    sky: hidden.map((months) => (skies === 0 ? 1 : 1 - (months + hiddenSkies) / skies)),
    ground: grounds === 0 ? 1 : 1 - hiddenGrounds / grounds,
  }
}

function isIn({ east, north, up, cosine }: Cone, towards: { east: number; north: number; up: number }): boolean {
  return east * towards.east + north * towards.north + up * towards.up >= cosine
}
