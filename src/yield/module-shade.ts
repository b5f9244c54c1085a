import {
  dot,
  horizonElevationDeg,
  isBehindBox,
  isBehindObstacle,
  type Direction,
  type FarObstacle,
  type HorizonPoint,
  type PlaneAxes,
  type PlumbFrame,
  type Point,
  type RoofBox,
} from '../sun/index.js'
import { isInShadow, rowShadows, type RowNeighbour } from './row-shade.js'
import type { SkySteps } from './sky-steps.js'
import { degreesOf, radiansOf, type Feet } from '../values/index.js'

/** What shades one array. */
export interface ShadeScene {
  /** Axes of the roof plane on which modules and boxes stand. */
  readonly roof: PlaneAxes
  /** Axes of the module plane (the same unless racks turn the modules). */
  readonly modulePlane: PlaneAxes
  readonly horizon: readonly HorizonPoint[]
  readonly obstacles: readonly FarObstacle[]
  readonly boxes: readonly RoofBox[]
  /** Plumb coordinates of the roof, in which the boxes stand. */
  readonly plumb: PlumbFrame
  /** Height of the module surface above the roof, ft. */
  readonly moduleHeightFt: Feet
}

/** One module as shade falls on it. */
export interface ShadedModule {
  /** Middle of the module relative to the middle of the array, local ft. */
  readonly middle: Point
  /** Rectangle in roof-plane coordinates, ft; undefined when the module has no place. */
  readonly rectangle:
    | { readonly xFt: number; readonly yFt: number; readonly widthFt: Feet; readonly heightFt: Feet }
    | undefined
  /** Bypass sections, and whether they lie side by side along the eave (portrait) or up the slope (landscape). */
  readonly sections: number
  readonly sectionsAlongX: boolean
  /** Modules of other rows in front of its face; none unless racks lift the modules off the roof. */
  readonly neighbours: readonly RowNeighbour[]
}

/** Shade on one module, per sun position and month. */
export interface ModuleShade {
  /** Share of direct light that horizon and far obstacles let through, by sun position. */
  readonly far: Float64Array
  /** Share of the module's area that neither a box on the roof nor another row shades, by sun position. */
  readonly nearLit: Float64Array
  /** Share of the bypass sections that none of them touches with its shadow, by sun position. */
  readonly sectionsLit: Float64Array
  /** Share of the sky's light that arrives, twelve months. */
  readonly sky: Float64Array
}

const NO_BOXES: readonly RoofBox[] = []

/** Sample points along a bypass section. */
const SAMPLES_ALONG = 8
/** Sample points across a bypass section. */
const SAMPLES_ACROSS = 2

/**
 * Shade on one module for every sun position of the year, beam and sky.
 *
 * @param steps The sky, for its sun positions.
 * @param withSky Whether the diffuse sky is shaded too.
 */
export function moduleShade(steps: SkySteps, scene: ShadeScene, module: ShadedModule, withSky: boolean): ModuleShade {
  const far = new Float64Array(steps.sunCount).fill(1)
  const nearLit = new Float64Array(steps.sunCount).fill(1)
  const sectionsLit = new Float64Array(steps.sunCount).fill(1)
  const isNear = module.rectangle !== undefined && (scene.boxes.length > 0 || module.neighbours.length > 0)
  let done = -1
  // One direction for all suns: this runs for every module and every sun position.
  const towards = { east: 0, north: 0, up: 0 }
  for (let step = 0; step < steps.length; step += 1) {
    const sun = steps.sunIndex[step]!
    if (sun <= done) continue
    done = sun
    towards.east = steps.sunEast[step]!
    towards.north = steps.sunNorth[step]!
    towards.up = steps.sunUp[step]!
    far[sun] = farTransmittance(scene, module.middle, towards, steps.month[step]!)
    if (isNear && far[sun] > 0) {
      const near = nearShade(scene, module, towards)
      if (near === undefined) continue
      nearLit[sun] = near.lit
      sectionsLit[sun] = near.sectionsLit
    }
  }
  return { far, nearLit, sectionsLit, sky: withSky ? skyShare(scene, module) : new Float64Array(12).fill(1) }
}

function isBelowHorizon(scene: ShadeScene, towards: Direction): boolean {
  if (scene.horizon.length === 0) return false
  const azimuth = degreesOf(Math.atan2(towards.east, towards.north))
  const elevation = degreesOf(Math.asin(Math.min(1, towards.up)))
  return elevation < horizonElevationDeg(scene.horizon, azimuth)
}

function farTransmittance(scene: ShadeScene, from: Point, towards: Direction, month: number): number {
  if (isBelowHorizon(scene, towards)) return 0
  let through = 1
  for (const obstacle of scene.obstacles) {
    if (isBehindObstacle(obstacle, from, towards)) through *= obstacle.transmittance[month]!
  }
  return through
}

/** Shadow of boxes and other rows on a grid of points of the module; undefined where none comes near. */
function nearShade(
  scene: ShadeScene,
  module: ShadedModule,
  towards: Direction,
): { readonly lit: number; readonly sectionsLit: number } | undefined {
  const { shift, stretch } = scene.plumb
  const outward = dot(towards, scene.roof.normal)
  const alongX = dot(towards, scene.roof.x)
  const alongY = dot(towards, scene.roof.y) - outward * shift
  const away = outward * stretch
  const rectangle = module.rectangle
  if (rectangle === undefined) return undefined
  const { xFt, widthFt, heightFt } = rectangle
  const yFt = rectangle.yFt - scene.moduleHeightFt * shift
  const moduleHeightFt = scene.moduleHeightFt * stretch
  const ray = { heightFt: moduleHeightFt, alongX, alongY, away }
  let boxes: RoofBox[] | undefined
  for (const box of away > 0 ? scene.boxes : NO_BOXES) {
    if (mayReach(box, { xFt, yFt, widthFt, heightFt }, moduleHeightFt, alongX / away, alongY / away))
      (boxes ??= []).push(box)
  }
  const shadows = rowShadows(module.neighbours, scene.modulePlane, widthFt, heightFt, towards)
  if (boxes === undefined && shadows.length === 0) return undefined
  let litPoints = 0
  let litSections = 0
  for (let section = 0; section < module.sections; section += 1) {
    let shaded = 0
    for (let along = 0; along < SAMPLES_ALONG; along += 1) {
      for (let across = 0; across < SAMPLES_ACROSS; across += 1) {
        const side = (section + (across + 0.5) / SAMPLES_ACROSS) / module.sections
        const length = (along + 0.5) / SAMPLES_ALONG
        const right = widthFt * (module.sectionsAlongX ? side : length)
        const up = heightFt * (module.sectionsAlongX ? length : side)
        if (shadows.length > 0 && isInShadow(shadows, right - widthFt / 2, up - heightFt / 2)) {
          shaded += 1
          continue
        }
        const x = xFt + right
        const y = yFt + up
        for (const box of boxes ?? NO_BOXES) {
          if (!isBehindBox(box, x, y, ray)) continue
          shaded += 1
          break
        }
      }
    }
    litPoints += SAMPLES_ALONG * SAMPLES_ACROSS - shaded
    if (shaded === 0) litSections += 1
  }
  return {
    lit: litPoints / (module.sections * SAMPLES_ALONG * SAMPLES_ACROSS),
    sectionsLit: litSections / module.sections,
  }
}

/** Whether the rectangle round a box and its shadow touches the module: a quick no for most suns and modules. */
function mayReach(
  box: RoofBox,
  module: NonNullable<ShadedModule['rectangle']>,
  moduleHeightFt: Feet,
  perHeightX: number,
  perHeightY: number,
): boolean {
  const height = box.heightFt + box.risePerFt * box.lengthFt - moduleHeightFt
  if (height <= 0) return false
  const shiftX = -perHeightX * height
  const shiftY = -perHeightY * height
  return (
    box.xFt + Math.min(0, shiftX) < module.xFt + module.widthFt &&
    box.xFt + box.widthFt + Math.max(0, shiftX) > module.xFt &&
    box.yFt + Math.min(0, shiftY) < module.yFt + module.heightFt &&
    box.yFt + box.lengthFt + Math.max(0, shiftY) > module.yFt
  )
}

/** Points up the face of a module, from its middle as shares of its height, at which other rows hide the sky. */
const ROW_SKY_POINTS = [-0.4, -0.2, 0, 0.2, 0.4] as const

/** Rings and spokes of the sky dome: 5 degrees high, 10 degrees wide. */
const DOME: readonly { readonly direction: Direction; readonly solidAngle: number }[] = Array.from(
  { length: 18 * 36 },
  (_, index) => {
    const elevation = radiansOf((Math.floor(index / 36) + 0.5) * 5)
    const azimuth = radiansOf(((index % 36) + 0.5) * 10)
    return {
      direction: {
        east: Math.sin(azimuth) * Math.cos(elevation),
        north: Math.cos(azimuth) * Math.cos(elevation),
        up: Math.sin(elevation),
      },
      solidAngle: Math.cos(elevation),
    }
  },
)

/** Share of an even sky's light on the module plane that nothing hides, by month. */
function skyShare(scene: ShadeScene, module: ShadedModule): Float64Array {
  const rectangle = module.rectangle
  const x = rectangle === undefined ? 0 : rectangle.xFt + rectangle.widthFt / 2
  const y = rectangle === undefined ? 0 : rectangle.yFt + rectangle.heightFt / 2
  const hidden = new Float64Array(12)
  let all = 0
  for (const { direction, solidAngle } of DOME) {
    const weight = dot(direction, scene.modulePlane.normal) * solidAngle
    if (weight <= 0) continue
    all += weight
    if (isBelowHorizon(scene, direction) || (rectangle !== undefined && isBehindAnyBox(scene, x, y, direction))) {
      for (let month = 0; month < 12; month += 1) hidden[month] = hidden[month]! + weight
      continue
    }
    const behindRows = shareBehindRows(scene, module, direction)
    if (behindRows === 0 && !scene.obstacles.some((obstacle) => isBehindObstacle(obstacle, module.middle, direction))) {
      continue
    }
    for (let month = 0; month < 12; month += 1) {
      const through = (1 - behindRows) * farTransmittance(scene, module.middle, direction, month)
      hidden[month] = hidden[month]! + weight * (1 - through)
    }
  }
  return hidden.map((value) => 1 - value / all)
}

/** Share of a module's face from which other rows hide a direction. */
function shareBehindRows(scene: ShadeScene, { neighbours, rectangle }: ShadedModule, towards: Direction): number {
  if (neighbours.length === 0 || rectangle === undefined) return 0
  const { widthFt, heightFt } = rectangle
  const shadows = rowShadows(neighbours, scene.modulePlane, widthFt, heightFt, towards)
  if (shadows.length === 0) return 0
  return ROW_SKY_POINTS.filter((share) => isInShadow(shadows, 0, share * heightFt)).length / ROW_SKY_POINTS.length
}

function isBehindAnyBox(scene: ShadeScene, x: number, y: number, towards: Direction): boolean {
  if (scene.boxes.length === 0) return false
  const { shift, stretch } = scene.plumb
  const outward = dot(towards, scene.roof.normal)
  const alongX = dot(towards, scene.roof.x)
  const alongY = dot(towards, scene.roof.y) - outward * shift
  const foot = y - scene.moduleHeightFt * shift
  const ray = { heightFt: scene.moduleHeightFt * stretch, alongX, alongY, away: outward * stretch }
  return scene.boxes.some((box) => isBehindBox(box, x, foot, ray))
}
