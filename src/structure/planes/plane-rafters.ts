import type { Worksheet } from '../../worksheet/index.js'
import { LOAD_COMBINATIONS } from '../../tables/asce7/index.js'
import { bendingSource } from '../../tables/nds/index.js'
import type { PartCheck } from '../model/index.js'
import {
  type FramingSpec,
  checkRafters,
  type RafterInput,
  type RafterPoint,
  type RafterResult,
  rafterNumber,
  placeOf,
} from '../rafters/index.js'
import type { LaidRail } from '../rails/index.js'
import type { PlaneModel } from './plane-model.js'
import type { ArrayOnPlane } from './plane-rails.js'
import { reportGravity, reportRafters } from './report-rafters.js'
import { reportSpans } from './report-spans.js'
import type { SiteLoads } from '../loads/index.js'
import { feetOf, inchesOf, radiansOf } from '../../values/index.js'

const SHARE =
  'Stagger the mounts or put them closer together so that more rafters share the load; otherwise have a structural engineer check the rafters, put the letter under documents and name its id as rafters_verified_by.'

/** Factor of snow in the gravity combination of the edition. */
function snowFactor(site: SiteLoads): number {
  if (site.snowIsAllowable) return 1
  return LOAD_COMBINATIONS[site.edition].find((c) => c.snow > 0 && c.wind === 0)?.snow ?? 1
}

/** Bending of the rafters of one plane as checks, with their steps: what was allowed before, and the strength of the wood. */
export function rafterPartChecks(
  site: SiteLoads,
  { model, framing, rails, arrays, covered }: LaidPlane,
  worksheet: Worksheet,
): PartCheck[] {
  const { id } = model.geometry
  const arrayDead = Math.max(0, ...[...arrays.values()].map((a) => a.dead.mostPsf))
  const input = rafterInput(site, model, framing, rails, arrays)
  const result = checkRafters(input, arrayDead)
  reportSpans(model, framing, result, covered, worksheet)
  reportGravity(model, framing, arrayDead, input.snowPsf, worksheet)
  reportRafters({ id, framing, snowPsf: input.snowPsf, result, covered }, worksheet)
  const path = `structure.framing.${id}`
  const letter = covered === undefined ? {} : { covered }
  return [...increaseCheck(id, path, result, letter), ...strengthCheck(id, path, result, letter)]
}

interface LaidPlane {
  readonly model: PlaneModel
  readonly framing: FramingSpec
  readonly rails: readonly LaidRail[]
  readonly arrays: ReadonlyMap<string, ArrayOnPlane>
  /** Title and date of the document that the rafters stand on, when there is one. */
  readonly covered: string | undefined
}

/** The highest ratio of bending of the rafters, increase and (where the wood is known) strength. */
export function rafterRatio(
  site: SiteLoads,
  plane: PlaneModel,
  framing: FramingSpec,
  rails: readonly LaidRail[],
  arrays: ReadonlyMap<string, ArrayOnPlane>,
): number {
  const arrayDead = Math.max(0, ...[...arrays.values()].map((a) => a.dead.mostPsf))
  const { increase, stress, strength } = checkRafters(rafterInput(site, plane, framing, rails, arrays), arrayDead)
  return Math.max(
    increase === undefined ? 0 : increase.momentLbFt / increase.allowedLbFt,
    stress === undefined || strength.notStated !== undefined ? 0 : stress.stressPsi / stress.allowablePsi,
  )
}

function rafterInput(
  site: SiteLoads,
  plane: PlaneModel,
  framing: FramingSpec,
  rails: readonly LaidRail[],
  arrays: ReadonlyMap<string, ArrayOnPlane>,
): RafterInput {
  const cos = Math.cos(radiansOf(plane.geometry.tiltDeg))
  const factor = snowFactor(site)
  const points: RafterPoint[] = rails.flatMap((rail) => {
    const dead = arrays.get(rail.loaded.line.array)?.dead.mostPsf ?? 0
    return rail.demand.mounts.map((mount) => {
      const areaFt2 = Math.max(0, mount.reactionAreaFt2)
      return {
        rafter: rafterNumber(framing, mount.xIn),
        yIn: rail.loaded.line.yIn,
        deadLb: areaFt2 * dead,
        snowLb: areaFt2 * factor * plane.snow.balancedOnModulesPsf * cos,
      }
    })
  })
  const coveredIn: RafterInput['coveredIn'] = (rafter) => {
    const xFt = feetOf(framing.firstOffsetIn + (rafter - 1) * framing.spacingIn)
    return plane.modules
      .filter((m) => m.xFt <= xFt && xFt <= m.xFt + m.widthFt)
      .map((m) => ({ fromIn: inchesOf(m.yFt), toIn: inchesOf(m.yFt + m.heightFt) }))
  }
  return { framing, plane: plane.geometry, snowPsf: factor * plane.snowPsf.roof, points, coveredIn }
}

function increaseCheck(
  id: string,
  path: string,
  { increase }: RafterResult,
  letter: Pick<PartCheck, 'covered'>,
): PartCheck[] {
  if (increase === undefined) return []
  const byTable = increase.basis === 'span table'
  const check: PartCheck = {
    name: 'rafter bending increase',
    demand: increase.momentLbFt,
    capacity: increase.allowedLbFt,
    limitIs: byTable ? 'span table' : 'allowed increase',
    unit: 'lb-ft',
    where: placeOf(id, increase.rafter, increase.place),
    source: byTable
      ? { document: 'IBC 2018', place: 'table 2308.7.2(2), twin of IRC 2018 R802.4.1(2)', standing: 'read' }
      : { document: 'IEBC 2021', place: '805.2, gravity load up by at most 5 %', standing: 'secondary' },
    path,
    fix: SHARE,
    ...letter,
  }
  return [check]
}

function strengthCheck(
  id: string,
  path: string,
  { stress, strength }: RafterResult,
  letter: Pick<PartCheck, 'covered'>,
): PartCheck[] {
  if (stress === undefined || strength.notStated !== undefined) return []
  const check: PartCheck = {
    name: 'rafter bending strength',
    demand: stress.stressPsi,
    capacity: stress.allowablePsi,
    unit: 'psi',
    where: `${placeOf(id, stress.rafter, stress.place)}, ${stress.combination}`,
    source: bendingSource(strength.species),
    path,
    severity: 'warning',
    fix: SHARE,
    ...letter,
  }
  return [check]
}
