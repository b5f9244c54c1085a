import type { Project } from '../project/index.js'
import { fireClassFindings } from '../roof/index.js'
import { StageError, Worksheet, type Result } from '../worksheet/index.js'
import {
  collectChecks,
  type PartCheck,
  type MountValue,
  type MountValues,
  type RailValue,
  type RoofArrangement,
} from './model/index.js'
import {
  arrayWeight,
  collectValues,
  groupChecks,
  moduleChecks,
  mountRows,
  modulePartChecks,
  railPartChecks,
  reportFieldRules,
  reportHardestMount,
  reportMountKind,
  reportRail,
  reportSite,
  reportSnowNotes,
  reportSplices,
  reportStrength,
  railMovementChecks,
  splicePartChecks,
} from './report/index.js'
import {
  cutLaidRail,
  rafterPartChecks,
  reportPlaneRafters,
  railKit,
  type SpaceMountsOptions,
  reportPlane,
  solvePlaneOnce,
  type SolvedPlane,
} from './planes/index.js'
import { siteLoads } from './loads/index.js'
import { checkSeismic } from './seismic/index.js'
import type { SquareFeet } from '../values/index.js'

/**
 * Places mounts and rails under the modules and checks roof, rail, screw, wind and snow against each other.
 *
 * @param project Needs codes.loads, structure, roof_planes, arrays and the equipment they name.
 * @param arrangement Planes with their edges (ft) and all modules on them (ft).
 * @param options spacingIn: wished distance between mounts, in; optimise: look for the fewest mounts; documents: ids of documents
 *   whose file is there; documentTroubles: why that of others is of no use.
 * @returns Loads by zone, spans, mounts, rails and checks; a failing check is an error finding.
 * @throws StageError when a safety input is missing or the case is outside the methods.
 * @source ASCE 7 (edition of the project) 29.4.4 or components and cladding; NDS chapter 12; statics of continuous beams
 * @limits Gable and hip roofs of over 7 up to 45 degrees, at most 60 ft high, enclosed, not on a hill; trusses get mounts and loads, no
 *   verdict.
 */
export function spaceMounts(
  project: Project,
  arrangement: RoofArrangement,
  options: SpaceMountsOptions = {},
): Result<MountValues> {
  const worksheet = new Worksheet()
  const site = siteLoads(project)
  const kit = railKit(project, worksheet)
  if (arrangement.modules.length === 0) {
    throw new StageError('arrays', 'no module lies on a roof plane', 'Give the arrays an arrangement that fits.')
  }
  const wood = woodEdition(project, worksheet)
  for (const finding of fireClassFindings(project)) worksheet.find(finding)
  reportSite(site, worksheet)
  reportRail(kit, worksheet)
  const planes = arrangement.planes
    .filter((plane) => arrangement.modules.some((m) => m.roofPlane === plane.id))
    .map((plane) => {
      const modules = arrangement.modules.filter((m) => m.roofPlane === plane.id)
      return solvePlaneOnce({ project, site, kit, options }, plane, modules, worksheet)
    })
  const known = new Set(planes.map((plane) => plane.model.geometry.id))
  const lost = arrangement.modules.find((m) => !known.has(m.roofPlane))
  if (lost !== undefined) {
    throw new StageError(
      `roof_planes.${lost.roofPlane}.outline`,
      `module ${lost.id} lies on roof plane '${lost.roofPlane}', whose outline is not known`,
      'State the outline of the plane.',
    )
  }
  const parts: PartCheck[] = []
  const rails: RailValue[] = []
  for (const plane of planes) {
    reportPlane(site, plane.model, plane.zones, worksheet)
    reportStrength(plane, kit, wood, worksheet)
    reportFieldRules(project, plane, kit, worksheet)
    reportMountKind(project, plane, kit, worksheet)
    for (const rail of plane.rails) {
      const ids = mountRows(plane, rail).map((row) => row.id)
      parts.push(...railPartChecks(rail, ids, kit, wood))
      parts.push(...splicePartChecks(rail, kit))
      rails.push(cutLaidRail(rail, kit, project, worksheet))
    }
    for (const [array, { combinations }] of plane.arrays) {
      const own = plane.model.modules.filter((m) => m.array === array)
      parts.push(...modulePartChecks(moduleChecks(project, plane.model, combinations, own), kit))
    }
    reportPlaneRafters(plane, worksheet)
    const rafters = plane.rafters?.result
    if (rafters !== undefined) parts.push(...rafterPartChecks(plane.model.geometry.id, rafters, plane.covered))
    parts.push(...groupChecks(plane, kit, worksheet))
  }
  const laid = planes.flatMap((plane) => plane.rails)
  reportSplices(laid, kit, worksheet)
  parts.push(...railMovementChecks(project, laid, kit, worksheet))
  reportSnowNotes(project, site, planes, worksheet)
  reportHardestMount(planes.flatMap(mountsWithAreas), worksheet)
  const weightLb = arrayWeight(planes, rails, kit).lb
  const seismic = checkSeismic({ project, site, planes, kit, weightLb }, worksheet)
  const checks = collectChecks([...parts, ...seismic.parts], worksheet)
  return worksheet.result(collectValues({ site, arrangement, planes, rails, checks, kit, seismic: seismic.values }))
}

function woodEdition(project: Project, worksheet: Worksheet): string {
  return (
    project.codes?.wood ??
    worksheet.assume({
      path: 'codes.wood',
      value: 'NDS 2018',
      unit: '',
      why: 'the lag screw values used here are the same in NDS 2012, 2015 and 2018',
      source: { document: 'NDS 2018', standing: 'secondary' },
    })
  )
}

/** Mounts of a plane with the roof area that the continuous rail gives to each. */
function mountsWithAreas(plane: SolvedPlane): (MountValue & { reactionAreaFt2: SquareFeet })[] {
  return plane.rails.flatMap((rail) =>
    mountRows(plane, rail).map((row, index) => ({
      ...row,
      reactionAreaFt2: rail.demand.mounts[index]?.reactionAreaFt2 ?? 0,
    })),
  )
}
