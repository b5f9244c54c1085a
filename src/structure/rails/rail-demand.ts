import { solveContinuousBeam } from '../beam/index.js'
import type { LoadedRail } from './loaded-rail.js'
import { feelsRoofSuction, mountChecks, type MountCheck } from '../mounts/index.js'
import { railChecks, type RailCheck } from './rail-checks.js'
import { railBeam, type SupportedRail } from './rail-loads.js'
import { LEAST_AREA_FT2, patchLoads, type RailPatch, type WindKey } from './rail-patches.js'
import { roofSuctionPsf, windPressurePsf } from '../wind/index.js'
import { at, feetOf, type Pounds, type SquareFeet } from '../../values/index.js'

/** Demand on one mount, ASD. */
export interface MountDemand {
  readonly xIn: number
  readonly zone: string
  readonly exposed: boolean
  readonly areaFt2: SquareFeet
  readonly upliftLb: Pounds
  readonly downLb: Pounds
  readonly alongLb: Pounds
  /** Wind at right angles to the roof at strength level, uncombined, both as sizes. */
  readonly windUpLb: Pounds
  readonly windDownLb: Pounds
  readonly combination: string
  /** Reaction to 1 psf on everything, lb: the area that the continuous rail really gives to this mount, ft2. */
  readonly reactionAreaFt2: SquareFeet
  /** The worst check of each name over all combinations. */
  readonly checks: readonly MountCheck[]
}

export interface RailDemand {
  readonly mounts: readonly MountDemand[]
  readonly checks: readonly RailCheck[]
  /** Largest ratio of any check of the rail and its mounts. */
  readonly ratio: number
}

/**
 * Demand on the mounts and the rail of one layout, by continuous-beam statics over the actual supports.
 *
 * Wind on a mount is read at the area that the mount carries, wind on the rail at the smallest span's area (the safe side).
 *
 * @param supported Mounts along the rail, in, ascending, at least two, and joints that are hinges.
 * @returns ASD loads in lb, checks with demand and capacity.
 */
export function railDemand(rail: LoadedRail, supported: SupportedRail): RailDemand {
  const { supportsIn } = supported
  const unit = unitReactions(rail, supported)
  const mounts = supportsIn.map((xIn, index) => mountDemand(rail, supportsIn, xIn, index, unit))
  const checks = railChecks(rail, supported)
  const ratios = [...checks, ...mounts.flatMap((m) => m.checks)].map((check) => check.ratio)
  return { mounts, checks, ratio: Math.max(...ratios) }
}

interface UnitReactions {
  readonly key: WindKey
  /** lb at every support for 1 psf on this key's area. */
  readonly perPsf: readonly Pounds[]
}

function keysOf(patches: readonly RailPatch[]): WindKey[] {
  const keys = new Map(patches.flatMap((p) => p.widths.map((w) => [`${w.key.zone}${w.key.exposed}`, w.key] as const)))
  return [...keys.values()]
}

function unitReactions(rail: LoadedRail, supported: SupportedRail): UnitReactions[] {
  return keysOf(rail.patches).map((key) => {
    const loads = patchLoads(rail.patches, (k, widthFt) =>
      k.zone === key.zone && k.exposed === key.exposed ? widthFt : 0,
    )
    return { key, perPsf: solveContinuousBeam(railBeam(rail, supported, loads)).reactionsLb }
  })
}

function mountDemand(
  rail: LoadedRail,
  supports: readonly number[],
  xIn: number,
  index: number,
  unit: readonly UnitReactions[],
): MountDemand {
  const [before, after] = [supports[index - 1], supports[index + 1]]
  const from = before === undefined ? rail.line.startIn : (before + xIn) / 2
  const to = after === undefined ? rail.line.endIn : (xIn + after) / 2
  const { areaFt2, worst } = tributary(rail, from, to)
  const total = unit.reduce((sum, u) => sum + at(u.perPsf, index), 0)
  // A zone whose load would relieve this mount is left out: a gust need not press on all zones at once.
  const windLb = (direction: 'uplift' | 'down'): Pounds =>
    unit.reduce((sum, u) => {
      const lbPerPsf = Math.max(0, at(u.perPsf, index))
      return sum + lbPerPsf * windPressurePsf(rail.wind, u.key.zone, areaFt2, u.key.exposed, direction)
    }, 0)
  const wind = { uplift: windLb('uplift'), down: windLb('down') }
  const suction = feelsRoofSuction(rail.mount) ? roofSuctionPsf(rail.wind, worst.zone) : 0
  const held = new Map<string, MountCheck>()
  let [uplift, down, along, combination, highest] = [0, 0, 0, '', -1]
  for (const load of rail.combinations) {
    const sign = load.direction === 'uplift' ? 1 : -1
    const normal = sign * load.windFactor * wind[load.direction] - load.normalPsf * total
    const slope = load.alongPsf * total
    uplift = Math.max(uplift, normal)
    down = Math.max(down, -normal)
    along = Math.max(along, slope)
    const roofUplift = load.direction === 'uplift' ? load.windFactor * suction : 0
    for (const check of mountChecks(rail.mount, normal, slope, load.loadDuration, roofUplift)) {
      if (check.ratio > (held.get(check.name)?.ratio ?? -1)) held.set(check.name, check)
      if (check.ratio > highest) [highest, combination] = [check.ratio, load.name]
    }
  }
  return {
    xIn,
    zone: worst.zone,
    exposed: worst.exposed,
    areaFt2,
    upliftLb: uplift,
    downLb: down,
    alongLb: along,
    windUpLb: wind.uplift,
    windDownLb: wind.down,
    combination,
    reactionAreaFt2: total,
    checks: [...held.values()],
  }
}

/** Share of the carried area below which a zone does not name the mount. */
const NAMING_SHARE = 0.1

/** Roof area between two places of the rail, ft2, and the worst zone that holds a real part of it. */
function tributary(rail: LoadedRail, from: number, to: number): { areaFt2: SquareFeet; worst: WindKey } {
  const areas = new Map<string, { key: WindKey; areaFt2: SquareFeet }>()
  let total = 0
  for (const patch of rail.patches) {
    const length = feetOf(Math.min(patch.toIn, to) - Math.max(patch.fromIn, from))
    if (length <= 0) continue
    total += length * patch.totalWidthFt
    for (const { key, widthFt } of patch.widths) {
      const name = `${key.zone}${key.exposed}`
      areas.set(name, { key, areaFt2: (areas.get(name)?.areaFt2 ?? 0) + length * Math.max(0, widthFt) })
    }
  }
  const area = Math.max(total, LEAST_AREA_FT2)
  const ranked = [...areas.values()]
    .filter((part) => part.areaFt2 >= NAMING_SHARE * total)
    .map((part) => ({ ...part, psf: windPressurePsf(rail.wind, part.key.zone, area, part.key.exposed, 'uplift') }))
    // Of two zones with the same pressure the one with more area names the mount.
    .sort((a, b) => (Math.abs(b.psf - a.psf) > 1e-9 ? b.psf - a.psf : b.areaFt2 - a.areaFt2))
  return { areaFt2: area, worst: ranked[0]?.key ?? keysOf(rail.patches)[0] ?? { zone: '1', exposed: false } }
}
