import type { RoofProject } from '../../project/index.js'
import { lumberSource } from '../../tables/nds/index.js'
import { feetOf, inchesOf, own } from '../../values/index.js'
import { liveLoadLeftOut, roofCombinations, roofLiveLoadPsf, type SiteLoads } from '../loads/index.js'
import type { PartCheck } from '../model/index.js'
import {
  checkRafters,
  highestRatio,
  placeOf,
  rafterNumber,
  withoutBeams,
  worstCheck,
  type FramingSpec,
  type RafterCheckName,
  type RafterInput,
  type RafterPoint,
  type RafterResult,
} from '../rafters/index.js'
import { gridOf, type MountGrid } from '../mounts/index.js'
import type { LaidRail } from '../rails/index.js'
import { bareRoofPressurePsf } from '../wind/index.js'
import type { PlaneModel } from './plane-model.js'
import type { ArrayOnPlane } from './plane-rails.js'

const SHARE =
  'Put a mount on every rafter or stagger them, take modules away there, or strengthen the rafter; have a structural engineer check it, put the letter under documents and name its id as rafters_verified_by.'

/** A plane as it is laid out, with what loads its rafters. */
export interface LaidPlane {
  readonly model: PlaneModel
  readonly framing: FramingSpec
  readonly rails: readonly LaidRail[]
  readonly arrays: ReadonlyMap<string, ArrayOnPlane>
}

/**
 * What the mounts of a rail bring to the rafters; one between two rafters (on a seam or the sheathing) hands its load to both as a
 * beam on two supports does.
 */
function pointsOf(rail: LaidRail, framing: FramingSpec, dead: ArrayOnPlane['dead'] | undefined): RafterPoint[] {
  return rail.demand.mounts.flatMap((mount) =>
    rafterShares(framing, gridOf(rail.loaded.mount), mount.xIn).map(({ rafter, share }) => {
      const areaFt2 = share * Math.max(0, mount.reactionAreaFt2)
      return {
        rafter,
        yIn: rail.loaded.line.yIn,
        deadLb: areaFt2 * (dead?.mostPsf ?? 0),
        leastDeadLb: areaFt2 * (dead?.leastPsf ?? 0),
        areaFt2,
        windDownLb: share * mount.windDownLb,
        windUpLb: share * mount.windUpLb,
      }
    }),
  )
}

function rafterShares(framing: FramingSpec, grid: MountGrid, xIn: number): { rafter: number; share: number }[] {
  const place = (xIn - framing.firstOffsetIn) / framing.spacingIn
  const [below, part] = [Math.floor(place), place - Math.floor(place)]
  if (grid === 'rafter' || part < 1e-9 || below < 0) return [{ rafter: rafterNumber(framing, xIn), share: 1 }]
  return [
    { rafter: below + 1, share: 1 - part },
    { rafter: below + 2, share: part },
  ]
}

/** Loads and rules that the rafters of a plane stand under. */
export function rafterInput(project: RoofProject, site: SiteLoads, laid: LaidPlane): RafterInput {
  const { model, framing, rails, arrays } = laid
  const { geometry, wind } = model
  const codes = { loads: site.edition, residential: project.codes?.residential }
  const clearIn = Math.max(0, ...[...arrays.keys()].map((id) => own(project.arrays, id)?.standoff_in ?? 0))
  const points = rails.flatMap((rail) => pointsOf(rail, framing, arrays.get(rail.loaded.line.array)?.dead))
  // The zones of a plane are few, and rafters ask at the same areas.
  const pressures = new Map<string, number>()
  return {
    framing,
    plane: geometry,
    points,
    coveredIn: (rafter) => {
      const xFt = feetOf(framing.firstOffsetIn + (rafter - 1) * framing.spacingIn)
      return model.modules
        .filter((m) => m.xFt <= xFt && xFt <= m.xFt + m.widthFt)
        .map((m) => ({ fromIn: inchesOf(m.yFt), toIn: inchesOf(m.yFt + m.heightFt) }))
    },
    livePsf: roofLiveLoadPsf(geometry.tiltDeg, codes),
    liveLeftOut: liveLoadLeftOut(codes, clearIn),
    snow: model.snowCases,
    combinations: roofCombinations(site.edition, site.snowIsAllowable),
    bareWindPsf: ({ xIn, yIn }, areaFt2, direction) => {
      const { zone } = model.keyAt(feetOf(xIn), feetOf(yIn))
      const key = `${zone} ${direction} ${areaFt2}`
      const held = pressures.get(key) ?? bareRoofPressurePsf(wind, zone, areaFt2, direction)
      pressures.set(key, held)
      return held
    },
  }
}

/** The highest ratio of any check of the rafters of a layout; 0 for trusses and unknown wood. */
export function rafterRatio(project: RoofProject, site: SiteLoads, laid: LaidPlane): number {
  if (laid.framing.kind === 'truss') return 0
  return highestRatio(checkRafters(rafterInput(project, site, laid)).rafters)
}

const CHECKS: readonly { readonly name: string; readonly of: RafterCheckName; readonly place: string }[] = [
  {
    name: 'rafter bending strength',
    of: 'bending',
    place: '3.3',
  },
  {
    name: 'rafter shear',
    of: 'shear',
    place: '3.4',
  },
  {
    name: 'rafter bearing',
    of: 'bearing',
    place: '3.10',
  },
  {
    name: 'rafter deflection',
    of: 'deflection',
    place: 'table R301.7',
  },
]

/**
 * The checks of the rafters of one plane as parts, the worst rafter of each.
 *
 * @param covered Title and date of the document that the rafters stand on, when there is one.
 */
export function rafterPartChecks(
  id: string,
  { rafters, wood }: RafterResult,
  covered: string | undefined,
): PartCheck[] {
  if (wood === undefined) return []
  return CHECKS.flatMap(({ name, of, place }) => {
    const worst = worstCheck(rafters, of)
    if (worst === undefined) return []
    const { rafter, check } = worst
    return [
      {
        name,
        demand: check.demand,
        capacity: check.capacity,
        unit: check.unit,
        where: `${placeOf(id, rafter.number, check.place)}, ${check.combination}`,
        source:
          of === 'deflection'
            ? { document: 'IRC 2021', place, standing: 'secondary' as const }
            : lumberSource(wood.species, place),
        path: `structure.framing.${id}`,
        fix: SHARE,
        ...(of === 'deflection' ? { limitIs: 'code limit' as const } : {}),
        ...(covered === undefined ? {} : { covered }),
      },
    ]
  })
}

/** Steps and findings of the rafters of a plane that a method of this tool reaches. */
export interface PlaneRafters {
  readonly input: RafterInput
  readonly result: RafterResult
}

/** @returns Undefined for trusses, which are not judged. */
export function solveRafters(project: RoofProject, site: SiteLoads, laid: LaidPlane): PlaneRafters | undefined {
  if (laid.framing.kind === 'truss') return undefined
  const input = rafterInput(project, site, laid)
  return { input, result: withoutBeams(checkRafters(input)) }
}
