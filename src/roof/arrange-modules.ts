import { roofText, type RoofProject } from '../project/facts.js'
import { Kept } from '../values/index.js'
import { Worksheet, type Result } from '../worksheet/index.js'
import { arrayFindings } from './array-findings.js'
import type { ArrangedPlane, Arrangement } from './arrangement.js'
import { overlapFindings, placementFindings } from './check-placement.js'
import { fitAlternatives } from './fit-alternative.js'
import { fireAccess } from './fire-access.js'
import { checkFireAccess } from './fire-findings.js'
import { flueFindings } from './flue.js'
import type { Pathway } from './pathways.js'
import { planeOf, type PlaneField } from './plane-field.js'
import type { ModulePlacement } from './placement.js'
import { recordArrangement } from './record-arrangement.js'
import { solveRidgeCase } from './ridge-case.js'
import { usableAreaFt2 } from './usable-area.js'

/**
 * Lays out the modules of all arrays, as the person placed them or fitted, and checks them against the outlines, the
 * obstructions, each other and the fire access rules of the edition that the project states.
 *
 * @throws StageError when an outline is impossible, a module that is placed has no dimensions, or a value replaces the
 * code's without a note.
 * @source Fire access: IFC 2012 and 2015 605.11, IRC 2018 and 2021 R324.6.
 * @limits Clearances are measured along the roof surface. A fitted module keeps square, not round, corners of clearance.
 */
export function arrangeModules(project: RoofProject): Result<Arrangement> {
  return arranged.of(roofText(project), () => arrange(project))
}

/** Almost every stage asks for the modules of one project, and the houses of a fleet often share their roof. */
const arranged = new Kept<Result<Arrangement>>(64)

function arrange(project: RoofProject): Result<Arrangement> {
  const worksheet = new Worksheet()
  for (const arrayId of Object.keys(project.arrays)) planeOf(project, arrayId)
  const access = fireAccess(project)
  const { trial, roofPlanAreaFt2 } = solveRidgeCase(project, access, worksheet)
  const fire = checkFireAccess(project, access, trial)
  const planes: Record<string, ArrangedPlane> = {}
  for (const [planeId, field] of trial.fields) {
    const modules = trial.modules.filter((module) => module.roofPlane === planeId)
    planes[planeId] = arrangedPlane(field, modules, fire.pathways.get(planeId) ?? [])
    for (const finding of placementFindings(field.surface, field.keepOuts, modules)) worksheet.find(finding)
  }
  const findings = [
    ...overlapFindings(trial.modules),
    ...arrayFindings(project, trial),
    ...fire.findings,
    ...flueFindings(project, trial.modules),
  ]
  for (const finding of findings) worksheet.find(finding)
  recordArrangement(worksheet, access, trial, planes, roofPlanAreaFt2)
  const roofCoverageShare = roofPlanAreaFt2 === undefined ? null : trial.planAreaFt2 / roofPlanAreaFt2
  const alternatives = fitAlternatives(project, trial)
  const others = Object.keys(alternatives).length === 0 ? {} : { alternatives }
  return worksheet.result({ modules: trial.modules, planes, roofCoverageShare, ...others })
}

function arrangedPlane(
  field: PlaneField,
  modules: readonly ModulePlacement[],
  pathways: readonly Pathway[],
): ArrangedPlane {
  const { surface, keepOuts, fire } = field
  const figures = [...keepOuts.map((keepOut) => keepOut.corners), ...pathways.flatMap((pathway) => pathway.figures)]
  const coveredFt2 = modules.reduce((sum, module) => sum + module.widthFt * module.heightFt, 0)
  return {
    ...surface,
    keepOuts,
    pathways,
    ridgeSetbackIn: fire?.ridgeIn.value ?? 0,
    usableShare: usableAreaFt2(surface.corners, figures) / surface.areaFt2,
    modules: modules.length,
    coveredShare: coveredFt2 / surface.areaFt2,
  }
}
