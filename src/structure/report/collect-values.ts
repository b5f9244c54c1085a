import { feetOf, inchesOf, own } from '../../values/index.js'
import { rafterValues } from './rafter-values.js'
import { threadInRafterIn, centringToleranceIn, leadHoleIn } from '../fasteners/index.js'
import { lagsOf } from '../mounts/index.js'
import { fastenerOf } from './fastener-value.js'
import { spliceValues } from './splice-checks.js'
import { mountRows } from './mount-rows.js'
import type {
  CheckValue,
  LagValues,
  MountValues,
  PlaneLoadsValues,
  RailValue,
  ZoneLoads,
  RoofArrangement,
  SeismicValues,
} from '../model/index.js'
import type { SiteLoads } from '../loads/index.js'
import type { RailKit, SolvedPlane } from '../planes/index.js'
import { snowValues } from './snow-values.js'
import { arrayEdgeFactor } from '../wind/index.js'

const CAUTIONS = [
  'Work at height kills: use fall protection, and stay off a wet, icy or brittle roof.',
  'Find every rafter and verify it with a small probe hole before the lead hole; a screw that misses the rafter holds nothing.',
  'Flash and seal every penetration as the sheet of the mount shows.',
  'Look at the rafters from below: rot, cracks, notches and spliced rafters carry less than this calculation takes for granted.',
  'The building department decides; where this tool refuses, a structural engineer must.',
] as const

const OTHER_CAUTIONS = [
  CAUTIONS[0],
  'Set every mount where its test report holds: this very seam or sheathing, with its own screws and torque.',
  'Look at the roof from below: wet or soft sheathing, loose nails and rotten rafters hold less than this calculation takes for granted.',
  CAUTIONS[4],
] as const

/** All that the stage has worked out. */
export interface SolvedRoof {
  readonly site: SiteLoads
  readonly arrangement: RoofArrangement
  readonly planes: readonly SolvedPlane[]
  readonly rails: readonly RailValue[]
  /** The hardest first. */
  readonly checks: readonly CheckValue[]
  readonly kit: RailKit
  readonly seismic: SeismicValues
}

/** Puts the values of the stage together. */
export function collectValues({ site, arrangement, planes, rails, checks, kit, seismic }: SolvedRoof): MountValues {
  const mounts = planes.flatMap((plane) => plane.rails.flatMap((rail) => mountRows(plane, rail)))
  const [weakest] = checks
  const weight = arrayWeight(planes, rails, kit)
  const fastener = fastenerOf(kit, mounts.length)
  return {
    edition: site.edition,
    loads: {
      zones: worstZones(planes),
      planes: Object.fromEntries(planes.map((p) => [p.model.geometry.id, planeLoads(p)])),
    },
    ...spans(planes),
    mounts,
    rails,
    modules: arrangement.modules.map((m) => ({ id: m.id, x_in: inchesOf(m.xFt), y_in: inchesOf(m.yFt) })),
    added_dead_load_psf: weight.psf,
    array_weight_lb: weight.lb,
    counts: {
      modules: arrangement.modules.length,
      mounts: mounts.length,
      lag_screws: kit.mount.product.lag === undefined || fastener.into !== 'rafter' ? 0 : fastener.count,
      rails: rails.length,
      rail_pieces: rails.reduce((sum, rail) => sum + rail.pieces_in.length, 0),
      splices: rails.reduce((sum, rail) => sum + rail.splices_in.length, 0),
    },
    checks,
    weakest_link: {
      name: weakest?.name ?? '',
      where: weakest?.where ?? '',
      ratio: weakest?.ratio ?? 0,
      limit_is: weakest?.limit_is ?? 'capacity',
    },
    lag: lagValues(planes),
    cautions: [...(fastener.into === 'rafter' ? CAUTIONS : OTHER_CAUTIONS)],
    mount_kind: kit.mount.product.kind ?? 'rafter_screw',
    fastener,
    ...rafterValues(planes),
    snow: snowValues(site, planes),
    seismic,
    splices: planes.flatMap((plane) => plane.rails.flatMap(spliceValues)),
  }
}

/** Lag screws of the plane that asks for most, or null where mounts have none. */
function lagValues(planes: readonly SolvedPlane[]): LagValues | null {
  const lags = planes.flatMap((plane) => {
    const screws = lagsOf(plane.mount)
    return screws === undefined ? [] : [{ screws, breadthIn: plane.framing.breadthIn }]
  })
  if (lags.length === 0) return null
  const gravity = Math.min(...lags.map(({ screws }) => screws.specificGravity))
  const hole = leadHoleIn(gravity, lags[0]?.screws.lag.size ?? '5/16')
  return {
    thread_in_rafter_in: Math.min(...lags.map(({ screws }) => threadInRafterIn(screws.lag))),
    lead_hole_least_in: hole.leastIn,
    lead_hole_most_in: hole.mostIn,
    centring_tolerance_in: Math.min(
      ...lags.map(({ screws, breadthIn }) => centringToleranceIn(breadthIn, screws.lag.size)),
    ),
  }
}

function planeLoads(plane: SolvedPlane): PlaneLoadsValues {
  return {
    slope_deg: plane.model.geometry.tiltDeg,
    velocity_pressure_psf: plane.model.wind.velocityPressurePsf,
    edge_strip_ft: plane.model.stripFt,
    snow_psf: plane.model.snowPsf.modules,
    array_dead_psf: Math.max(...[...plane.arrays.values()].map((a) => a.dead.mostPsf)),
    zones: Object.fromEntries(
      plane.zones.map((z) => [
        z.zone,
        { uplift_psf: z.upliftPsf, down_psf: z.downPsf, area_ft2: z.areaFt2, edge_factor: arrayEdgeFactor(z.exposed) },
      ]),
    ),
  }
}

function worstZones(planes: readonly SolvedPlane[]): Record<string, ZoneLoads> {
  const zones: Record<string, ZoneLoads> = {}
  for (const { zone, upliftPsf, downPsf } of planes.flatMap((plane) => plane.zones)) {
    const held = own(zones, zone)
    zones[zone] = {
      uplift_psf: Math.max(held?.uplift_psf ?? 0, upliftPsf),
      down_psf: Math.max(held?.down_psf ?? 0, downPsf),
    }
  }
  return zones
}

function spans(planes: readonly SolvedPlane[]): Pick<MountValues, 'max_span_in' | 'max_span_governs'> {
  const max: Record<string, number> = {}
  const governs: Record<string, string> = {}
  for (const zone of planes.flatMap((plane) => plane.zones)) {
    if (zone.spanIn >= (own(max, zone.zone) ?? Infinity)) continue
    max[zone.zone] = zone.spanIn
    governs[zone.zone] = zone.governs
  }
  return { max_span_in: max, max_span_governs: governs }
}

/** Weight of modules, inverters behind them, rails and mounts as laid out. */
export function arrayWeight(
  planes: readonly SolvedPlane[],
  rails: readonly Pick<RailValue, 'length_in'>[],
  kit: RailKit,
): { lb: number; psf: number } {
  let [lb, area, mounts] = [0, 0, 0]
  for (const plane of planes) {
    mounts += plane.rails.reduce((sum, rail) => sum + rail.demand.mounts.length, 0)
    for (const module of plane.model.modules) {
      lb += plane.arrays.get(module.array)?.dead.moduleWeightLb ?? 0
      area += module.widthFt * module.heightFt
    }
  }
  const railFt = feetOf(rails.reduce((sum, rail) => sum + rail.length_in, 0))
  lb += railFt * (kit.rail.product.weight_lb_per_ft ?? 0) + mounts * (kit.mount.product.weight_lb ?? 0)
  return { lb, psf: lb / area }
}
