import {
  dot,
  horizonElevationDeg,
  isBehindBox,
  isBehindObstacle,
  type Direction,
  type FarObstacle,
  type HorizonPoint,
  type PlaneAxes,
  type Point,
  type RoofBox,
} from '../sun/index.js'
import type { SkySteps } from './sky-steps.js'

/** What shades one array. */
export interface ShadeScene {
  /** Axes of the roof plane on which modules and boxes stand. */
  readonly roof: PlaneAxes
  /** Axes of the module plane (the same unless racks turn the modules). */
  readonly modulePlane: PlaneAxes
  readonly horizon: readonly HorizonPoint[]
  readonly obstacles: readonly FarObstacle[]
  readonly boxes: readonly RoofBox[]
  /** Height of the module surface above the roof, ft. */
  readonly moduleHeightFt: number
}

/** One module as shade falls on it. */
export interface ShadedModule {
  /** Middle of the module relative to the middle of the array, local ft. */
  readonly middle: Point
  /** Rectangle in roof-plane coordinates, ft; undefined when the module has no place. */
  readonly rectangle:
    | { readonly xFt: number; readonly yFt: number; readonly widthFt: number; readonly heightFt: number }
    | undefined
  /** Bypass sections, and whether they lie side by side along the eave (portrait) or up the slope (landscape). */
  readonly sections: number
  readonly sectionsAlongX: boolean
}

/** Shade on one module, per sun position and month. */
export interface ModuleShade {
  /** Share of direct light that horizon and far obstacles let through, by sun position. */
  readonly far: Float64Array
  /** Share of the module's area that no box on the roof shades, by sun position. */
  readonly nearLit: Float64Array
  /** Share of the bypass sections that no box touches with its shadow, by sun position. */
  readonly sectionsLit: Float64Array
  /** Share of the sky's light that arrives, twelve months. */
  readonly sky: Float64Array
}

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
  let done = -1
  // One direction for all suns: this runs for every module and every sun position.
  const towards = { east: 0, north: 0, up: 0 }
  for (let step = 0; step < steps.length; step += 1) {
    const sun = steps.sunIndex[step] as number
    if (sun <= done) continue
    done = sun
    towards.east = steps.sunEast[step] as number
    towards.north = steps.sunNorth[step] as number
    towards.up = steps.sunUp[step] as number
    far[sun] = farTransmittance(scene, module.middle, towards, steps.month[step] as number)
    if (scene.boxes.length > 0 && module.rectangle !== undefined && far[sun] > 0) {
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
  const azimuth = (Math.atan2(towards.east, towards.north) * 180) / Math.PI
  const elevation = (Math.asin(Math.min(1, towards.up)) * 180) / Math.PI
  return elevation < horizonElevationDeg(scene.horizon, azimuth)
}

function farTransmittance(scene: ShadeScene, from: Point, towards: Direction, month: number): number {
  if (isBelowHorizon(scene, towards)) return 0
  let through = 1
  for (const obstacle of scene.obstacles) {
    if (isBehindObstacle(obstacle, from, towards)) through *= obstacle.transmittance[month] as number
  }
  return through
}

/** Shadow of the boxes on a grid of points of the module; undefined where none comes near. */
function nearShade(
  scene: ShadeScene,
  module: ShadedModule,
  towards: Direction,
): { readonly lit: number; readonly sectionsLit: number } | undefined {
  const alongX = dot(towards, scene.roof.x)
  const alongY = dot(towards, scene.roof.y)
  const away = dot(towards, scene.roof.normal)
  const rectangle = module.rectangle
  if (rectangle === undefined || away <= 0) return undefined
  const { xFt, yFt, widthFt, heightFt } = rectangle
  let boxes: RoofBox[] | undefined
  for (const box of scene.boxes) {
    if (mayReach(box, rectangle, scene.moduleHeightFt, alongX / away, alongY / away)) (boxes ??= []).push(box)
  }
  if (boxes === undefined) return undefined
  let litPoints = 0
  let litSections = 0
  for (let section = 0; section < module.sections; section += 1) {
    let shaded = 0
    for (let along = 0; along < SAMPLES_ALONG; along += 1) {
      for (let across = 0; across < SAMPLES_ACROSS; across += 1) {
        const side = (section + (across + 0.5) / SAMPLES_ACROSS) / module.sections
        const length = (along + 0.5) / SAMPLES_ALONG
        const x = xFt + widthFt * (module.sectionsAlongX ? side : length)
        const y = yFt + heightFt * (module.sectionsAlongX ? length : side)
        for (const box of boxes) {
          if (!isBehindBox(box, x, y, scene.moduleHeightFt, alongX, alongY, away)) continue
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
  moduleHeightFt: number,
  perHeightX: number,
  perHeightY: number,
): boolean {
  const height = box.heightFt - moduleHeightFt
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

/** Rings and spokes of the sky dome: 5 degrees high, 10 degrees wide. */
const DOME: readonly { readonly direction: Direction; readonly solidAngle: number }[] = Array.from(
  { length: 18 * 36 },
  (_, index) => {
    const elevation = ((Math.floor(index / 36) + 0.5) * 5 * Math.PI) / 180
    const azimuth = (((index % 36) + 0.5) * 10 * Math.PI) / 180
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
      for (let month = 0; month < 12; month += 1) hidden[month] = (hidden[month] as number) + weight
      continue
    }
    if (!scene.obstacles.some((obstacle) => isBehindObstacle(obstacle, module.middle, direction))) continue
    for (let month = 0; month < 12; month += 1) {
      hidden[month] =
        (hidden[month] as number) + weight * (1 - farTransmittance(scene, module.middle, direction, month))
    }
  }
  return hidden.map((value) => 1 - value / all)
}

function isBehindAnyBox(scene: ShadeScene, x: number, y: number, towards: Direction): boolean {
  if (scene.boxes.length === 0) return false
  const alongX = dot(towards, scene.roof.x)
  const alongY = dot(towards, scene.roof.y)
  const away = dot(towards, scene.roof.normal)
  return scene.boxes.some((box) => isBehindBox(box, x, y, scene.moduleHeightFt, alongX, alongY, away))
}
