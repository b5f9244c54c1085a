import { LOAD_DURATION } from '../../tables/nds/index.js'
import type { Pounds } from '../../values/index.js'
import { lateralReferenceLb, penetrationIn, penetrationShare } from '../fasteners/index.js'
import type { PartCheck } from '../model/index.js'
import { lagCapacity, lagsOf, type LagScrews, type MountStrength } from '../mounts/index.js'
import { mountRows } from '../report/index.js'
import type { RailKit, SolvedPlane } from '../planes/index.js'
import type { SiteLoads } from '../loads/index.js'
import { mountForce, type MountForce } from './mount-force.js'

/** A mount with what an earthquake does to it and what wind does. */
export interface ShakenRow {
  readonly id: string
  readonly plane: SolvedPlane
  readonly force: MountForce
  readonly weightLb: Pounds
  readonly windUpliftLb: Pounds
  readonly alongLb: Pounds
}

/** SDS, g, and Fp / Wp. */
export interface Shaking {
  readonly sdsG: number
  readonly perWeight: number
}

/** Every mount of the planes; the array's heaviest dead load on the area that the rail gives to the mount. */
export function shakenMounts(site: SiteLoads, planes: readonly SolvedPlane[], shaking: Shaking): ShakenRow[] {
  return planes.flatMap((plane) =>
    plane.rails.flatMap((rail) => {
      const deadPsf = plane.arrays.get(rail.loaded.line.array)?.dead.mostPsf ?? 0
      return mountRows(plane, rail).map((row, index) => {
        const areaFt2 = Math.max(0, rail.demand.mounts[index]?.reactionAreaFt2 ?? 0)
        const weightLb = areaFt2 * deadPsf
        const force = mountForce({
          edition: site.edition,
          snowIsAllowable: site.snowIsAllowable,
          ...shaking,
          tiltDeg: plane.model.geometry.tiltDeg,
          weightLb,
          areaFt2,
          snowPsf: plane.model.snowPsf.modules,
        })
        return { id: row.id, plane, force, weightLb, windUpliftLb: row.uplift_lb, alongLb: row.along_lb }
      })
    }),
  )
}

/** Capacities of a mount under an earthquake, lb; undefined where nothing states them. */
export interface ShakenCapacity {
  readonly alongLb: Pounds | undefined
  readonly acrossLb: Pounds | undefined
  readonly upliftLb: Pounds
}

/**
 * What a mount holds along the slope, across it and away from it: the smaller of its sheet and its screws.
 *
 * @param sheetAcrossLb Allowable load of the mount across the slope.
 * @source NDS 2018 chapter 12 with CD 1.6 for earthquake (secondary)
 */
export function shakenCapacity(mount: MountStrength, sheetAcrossLb: Pounds | undefined): ShakenCapacity {
  const least = (...values: readonly (Pounds | undefined)[]): Pounds | undefined => {
    const known = values.filter((value) => value !== undefined)
    return known.length === 0 ? undefined : Math.min(...known)
  }
  const screws = screwsHold(mount)
  return {
    alongLb: least(mount.lateralLb, screws.alongLb),
    // A load between both directions is held against the weaker of them.
    acrossLb: least(sheetAcrossLb, screws.acrossLb, sheetAcrossLb === undefined ? undefined : mount.lateralLb),
    upliftLb: Math.min(mount.upliftLb, screws.upliftLb),
  }
}

/** What the screws of a mount hold by tables or their report; clamps and deck mounts stand on their sheets alone. */
function screwsHold(mount: MountStrength): ShakenCapacity {
  // Earthquake has the load duration of wind.
  const duration = LOAD_DURATION.wind
  const lags = lagsOf(mount)
  if (lags !== undefined) {
    const { lateralLb, withdrawalLb, rootTensionLb } = lagCapacity(lags, duration)
    return {
      alongLb: lags.plate === undefined ? undefined : lateralLb,
      acrossLb: screwsAcross(lags),
      upliftLb: Math.min(withdrawalLb, rootTensionLb),
    }
  }
  if (mount.kind !== 'structural_screw') return { alongLb: undefined, acrossLb: undefined, upliftLb: Infinity }
  const times = mount.screwCount * duration * mount.serviceFactor
  return {
    alongLb: times * mount.screwLateralLb,
    acrossLb: undefined,
    upliftLb: Math.min(times * mount.withdrawalLb, mount.screwCount * mount.tensionLb),
  }
}

/** Screws loaded across the rafter, at right angles to its grain. */
function screwsAcross(mount: LagScrews): Pounds | undefined {
  const { plate, lag, lagCount, specificGravity } = mount
  if (plate === undefined) return undefined
  const reference = lateralReferenceLb(specificGravity, lag.size, plate, 'perpendicular')
  const service = LOAD_DURATION.wind * mount.wetFactor * mount.temperatureFactor
  return lagCount * reference * penetrationShare(penetrationIn(lag), lag.size) * service
}

const FIX =
  'Put the mounts closer together, choose a stronger mount, or (7-22) state car and rpo of its table 13.6-1 instead of taking the cap.'

/** The checks of each mount in the three directions. */
export function seismicPartChecks(
  rows: readonly ShakenRow[],
  kit: RailKit,
  site: SiteLoads,
  sheetAcrossLb: Pounds | undefined,
): PartCheck[] {
  return rows.flatMap(({ id, plane, force }) => {
    const capacity = shakenCapacity(plane.mount, sheetAcrossLb)
    const directions = [
      { where: `${id}, along the slope`, demand: force.alongLb, held: capacity.alongLb },
      { where: `${id}, across the slope`, demand: force.acrossLb, held: capacity.acrossLb },
      { where: `${id}, away from the roof`, demand: force.upliftLb, held: capacity.upliftLb },
    ]
    return directions.flatMap(({ where, demand, held }) =>
      held === undefined || demand <= 0 ? [] : [mountCheck(where, demand, held, site, kit)],
    )
  })
}

function mountCheck(where: string, demand: Pounds, capacity: Pounds, site: SiteLoads, kit: RailKit): PartCheck {
  return {
    name: 'mount seismic',
    demand,
    capacity,
    unit: 'lb',
    where,
    source: { document: site.edition, place: '13.3.1 and 2.4.5', standing: 'secondary' },
    path: kit.mount.at,
    fix: FIX,
  }
}
