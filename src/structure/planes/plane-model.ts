import type { RoofProject } from '../../project/index.js'
import type { ClampZone, ModulePlacement } from '../../roof/index.js'
import { StageError } from '../../worksheet/index.js'
import { feetOf, inchesOf, own, type Feet, type Inches } from '../../values/index.js'
import {
  exposedStrips,
  isInStrip,
  type ExposedStrip,
  zoneFinder,
  edgeStripWidthFt,
  velocityPressurePsf,
  type WindOnPlane,
} from '../wind/index.js'
import type { FramingSpec } from '../rafters/index.js'
import { need, inPlan, isInPlane, type PlaneGeometry } from '../model/index.js'
import type { WindKey } from '../rails/index.js'
import type { SiteLoads } from '../loads/index.js'
import type { SnowCase } from '../snow/index.js'
import { snowOfPlane, type PlaneSnowLoads } from './plane-snow.js'

/** One roof plane with its modules, wind and snow. */
export interface PlaneModel {
  readonly geometry: PlaneGeometry
  readonly modules: readonly ModulePlacement[]
  readonly wind: WindOnPlane
  readonly stripFt: Feet
  /** On the modules, the worst of all cases over their extent, and balanced on the bare roof, psf of horizontal area. */
  readonly snowPsf: { readonly modules: number; readonly roof: number }
  /** All ways that snow may lie on the plane, balanced first. */
  readonly snowCases: readonly SnowCase[]
  /** What the cases were worked out from. */
  readonly snow: PlaneSnowLoads
  readonly exposed: readonly ExposedStrip[]
  /** Zone and exposure at a point, the same object for the same answer. */
  readonly keyAt: (xFt: number, yFt: number) => WindKey
}

const ENGINEER = 'Ask a structural engineer.'

/** Slopes of the method, degrees: over the first, up to the second. */
const SLOPES = { over: 7, upTo: 45 } as const

/**
 * Puts wind, snow and zones on one plane.
 *
 * @throws StageError when the slope is outside the method, or a module hangs over the roof or its overhang.
 */
export function planeModel(
  project: RoofProject,
  site: SiteLoads,
  geometry: PlaneGeometry,
  framing: FramingSpec,
  modules: readonly ModulePlacement[],
): PlaneModel {
  const tiltDeg = geometry.tiltDeg
  if (tiltDeg <= SLOPES.over || tiltDeg > SLOPES.upTo) {
    throw new StageError(
      `roof_planes.${geometry.id}.tilt_deg`,
      `outside the method: a slope of ${tiltDeg.toFixed(1)} degrees is not over ${SLOPES.over} and up to ${SLOPES.upTo} degrees`,
      ENGINEER,
    )
  }
  for (const module of modules) refuseOverhang(geometry, framing, module)
  const { edition, roofKind, wind } = site
  const shape = { edition, roofKind, tiltDeg, heightOverWidth: wind.meanRoofHeightFt / site.widthFt }
  const stripFt = edgeStripWidthFt(site.widthFt, wind.meanRoofHeightFt)
  const exposed = stripsOf(project, site, geometry, modules)
  const snow = snowOfPlane(project, site, geometry, framing, modules)
  const zoneOf = zoneFinder(geometry, stripFt, { edition, roofKind })
  // One object a key, so that equal keys are the same object.
  const keys = new Map<string, readonly [WindKey, WindKey]>()
  return {
    geometry,
    modules,
    wind: { shape, velocityPressurePsf: velocityPressurePsf(wind) },
    stripFt,
    snowPsf: { modules: snow.modulesPsf, roof: snow.balancedPsf },
    snowCases: snow.cases.map(({ snowCase }) => snowCase),
    snow,
    exposed,
    keyAt: (xFt, yFt) => {
      const zone = zoneOf(xFt, yFt)
      let both = keys.get(zone)
      if (both === undefined) {
        both = [
          { zone, exposed: false },
          { zone, exposed: true },
        ]
        keys.set(zone, both)
      }
      return both[isInStrip(exposed, { xFt, yFt }) ? 1 : 0]
    },
  }
}

function refuseOverhang(plane: PlaneGeometry, framing: FramingSpec, module: ModulePlacement): void {
  const corners = [0, 1].flatMap((i) =>
    [0, 1].map((j) => ({ xFt: module.xFt + i * module.widthFt, yFt: module.yFt + j * module.heightFt })),
  )
  const outside = corners.some((corner) => !isInPlane(plane, corner))
  const overhang = corners.some((corner) =>
    plane.edges.some((edge) => {
      const depthIn = edge.kind === 'eave' ? framing.eaveOverhangIn : edge.kind === 'rake' ? framing.rakeOverhangIn : 0
      const [p, a, b] = [inPlan(plane, corner), inPlan(plane, edge.from), inPlan(plane, edge.to)]
      const [dx, dy] = [b.xFt - a.xFt, b.yFt - a.yFt]
      const length = Math.hypot(dx, dy)
      const along = ((p.xFt - a.xFt) * dx + (p.yFt - a.yFt) * dy) / length
      const away = (dx * (p.yFt - a.yFt) - dy * (p.xFt - a.xFt)) / length
      // A place on the far side of an edge is over another part of an angled plane.
      const within = inchesOf(away) > -1e-6 && inchesOf(away) < depthIn - 1e-6
      return depthIn > 0 && along >= 0 && along <= length && within
    }),
  )
  if (!outside && !overhang) return
  throw new StageError(
    `arrays.${module.array}.arrangement`,
    `outside the method: module ${module.id} lies ${outside ? 'past the edge of the roof plane' : 'over the roof overhang'}, where wind also presses from below`,
    'Move the module over the house, or ask a structural engineer.',
  )
}

/** h2 of an array: top of the modules above the roof, in. */
export function topHeightIn(project: RoofProject, arrayId: string): Inches {
  const array = need(own(project.arrays, arrayId), `arrays.${arrayId}`, `array '${arrayId}'`, 'Define it under arrays.')
  const thickness = own(project.equipment.modules, array.module)?.thickness_in
  return (
    array.standoff_in +
    need(
      thickness,
      `equipment.modules.${array.module}.thickness_in`,
      'the frame height of the module',
      'It stands on the data sheet.',
    )
  )
}

function stripsOf(
  project: RoofProject,
  site: SiteLoads,
  plane: PlaneGeometry,
  modules: readonly ModulePlacement[],
): ExposedStrip[] {
  const { edition } = site
  if (edition === 'ASCE 7-10' || modules.length === 0) return []
  return exposedStrips(plane, modules, {
    edition,
    meanRoofHeightFt: site.wind.meanRoofHeightFt,
    topHeightFt: feetOf(Math.max(...modules.map((m) => topHeightIn(project, m.array)))),
    moduleLengthFt: Math.max(...modules.flatMap((m) => [m.widthFt, m.heightFt])),
    ridgeIsRoofEdge: site.ridgeIsRoofEdge,
  })
}

/**
 * Where the clamps of a module may sit along the side that crosses the rails.
 *
 * @throws StageError when the data sheet's zone is not stated.
 */
export function clampZoneOf(project: RoofProject, module: ModulePlacement): ClampZone {
  const id = need(
    own(project.arrays, module.array),
    `arrays.${module.array}`,
    `array '${module.array}'`,
    'Define it under arrays.',
  ).module
  const product = own(project.equipment.modules, id)
  const portrait = module.orientation === 'portrait'
  const key = portrait ? 'clamp_zone_from_corner_in' : 'clamp_zone_short_side_in'
  const zone = portrait ? product?.clamp_zone_from_corner_in : product?.clamp_zone_short_side_in
  const [nearestIn, farthestIn] = need(
    zone,
    `equipment.modules.${id}.${key}`,
    `the clamp zone on the ${portrait ? 'long' : 'short'} side of the module`,
    'It stands in the installation manual of the module.',
  )
  const where = `equipment.modules.${id}.${key}`
  return {
    nearestIn: need(nearestIn, where, 'the near end', 'State two numbers.'),
    farthestIn: need(farthestIn, where, 'the far end', 'State two numbers.'),
  }
}
