import { statedModuleCount, tiltDegOf } from '../project/facts.js'
import type { RoofProject } from '../project/index.js'
import { StageError, type Worksheet } from '../worksheet/index.js'
import { boxCorners, own, radiansOf, type SquareFeet } from '../values/index.js'
import type { FireAccess, RidgeCase } from './fire-access.js'
import { fitArray, fitRequestOf, type ArrayFit } from './fit-array.js'
import { moduleSize } from './module-size.js'
import { pathwayChoices, pathwayOptions, type Pathway } from './pathways.js'
import { placeBlocks } from './place-blocks.js'
import type { ModulePlacement } from './placement.js'
import { railGround } from './rail-ground.js'
import { planeFields, planeOf, type PlaneField } from './plane-field.js'

/** One way to lay out the whole roof. */
export interface Trial {
  readonly ridgeCase: RidgeCase
  readonly fields: ReadonlyMap<string, PlaneField>
  /** In the order of the arrays. */
  readonly modules: readonly ModulePlacement[]
  readonly fits: ReadonlyMap<string, ArrayFit>
  /** Area of all modules seen from above, square ft, those without a place included. */
  readonly planAreaFt2: SquareFeet
}

/**
 * Lays out the whole roof for one ridge strip: first the blocks that the person placed, then the arrays to be fitted
 * in the order of the file, each round what lies there already.
 *
 * @param budgetFt2 Plan-view area that all modules together may cover, square ft.
 */
export function layOut(
  project: RoofProject,
  access: FireAccess | undefined,
  ridgeCase: RidgeCase,
  budgetFt2: SquareFeet,
  worksheet: Worksheet,
): Trial {
  const fields = planeFields(project, access, ridgeCase, worksheet)
  const placed = new Map<string, readonly ModulePlacement[]>()
  const fits = new Map<string, ArrayFit>()
  const taken = new Map<string, readonly Pathway[]>()
  for (const arrayId of Object.keys(project.arrays)) placed.set(arrayId, placeBlocks(project, arrayId, worksheet))
  let planAreaFt2 = fixedPlanAreaFt2(project, placed)
  for (const arrayId of Object.keys(project.arrays)) {
    const request = fitRequestOf(project, arrayId)
    const array = own(project.arrays, arrayId)
    if (request === undefined || array === undefined) continue
    const field = fields.get(array.roof_plane)
    if (field === undefined) throw needOutline(arrayId, array.roof_plane)
    const each = modulePlanAreaFt2(project, arrayId)
    const affordable = Math.max(0, Math.floor((budgetFt2 - planAreaFt2) / each + 1e-9))
    const there = [...placed.values()].flat().filter((module) => module.roofPlane === array.roof_plane)
    const area = {
      corners: field.surface.corners,
      keepOuts: [...field.keepOuts.map((keepOut) => keepOut.corners), ...there.map(boxCorners)],
      ground: railGround(project, arrayId, field.surface),
      choices: choicesOf(field, there, taken.get(array.roof_plane)),
      atMost: Math.min(statedModuleCount(array) ?? Infinity, affordable),
    }
    const fit = fitArray(project, arrayId, request, area, worksheet)
    fits.set(arrayId, fit)
    placed.set(arrayId, fit.modules)
    taken.set(array.roof_plane, fit.pathways)
    planAreaFt2 += fit.modules.length * each
  }
  return { ridgeCase, fields, modules: [...placed.values()].flat(), fits, planAreaFt2 }
}

function choicesOf(field: PlaneField, there: readonly ModulePlacement[], taken: readonly Pathway[] | undefined) {
  if (taken !== undefined) return [taken]
  const { surface, need } = field
  if (need.count === 0) return [[]]
  return pathwayChoices(pathwayOptions(surface, blockersOf(field, there), need.widthFt, need.sidesOnly), need.count)
}

/** What no pathway may cross: obstructions and modules, ft. */
export function blockersOf(field: PlaneField, modules: readonly ModulePlacement[]) {
  const obstructions = field.keepOuts.filter((keepOut) => keepOut.kind === 'obstruction')
  return [...obstructions.map((keepOut) => keepOut.thing), ...modules.map(boxCorners)]
}

/** Area of one module of an array seen from above, square ft. */
export function modulePlanAreaFt2(project: RoofProject, arrayId: string): SquareFeet {
  const { longFt, shortFt } = moduleSize(project, arrayId)
  const tiltDeg = tiltDegOf(planeOf(project, arrayId))
  return longFt * shortFt * Math.cos(radiansOf(tiltDeg))
}

/** Plan area of the arrays that are not fitted. */
function fixedPlanAreaFt2(project: RoofProject, placed: ReadonlyMap<string, readonly ModulePlacement[]>): SquareFeet {
  let sum = 0
  for (const [arrayId, array] of Object.entries(project.arrays)) {
    if (fitRequestOf(project, arrayId) !== undefined) continue
    const placedCount = placed.get(arrayId)?.length ?? 0
    const count = placedCount > 0 ? placedCount : (statedModuleCount(array) ?? 0)
    const module = own(project.equipment.modules, array.module)
    const sized = module?.length_in !== undefined && module.width_in !== undefined
    if (placedCount > 0 || sized) sum += count * modulePlanAreaFt2(project, arrayId)
  }
  return sum
}

function needOutline(arrayId: string, planeId: string): StageError {
  return new StageError(
    `roof_planes.${planeId}.outline`,
    `array '${arrayId}' is to be fitted on plane '${planeId}', which has no outline`,
    'State the outline: measure eave, ridge and the length from eave to ridge along the surface.',
  )
}
