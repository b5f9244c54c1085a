import type { RoofProject } from '../project/index.js'
import type { Worksheet } from '../worksheet/index.js'
import type { FireAccess } from './fire-access.js'
import { layOut, type Trial } from './trial.js'
import type { SquareFeet } from '../values/index.js'

/** The layout that was chosen, and the coverage that decided the ridge strip. */
export interface RidgeSolution {
  readonly trial: Trial
  /** Plan-view area of the whole roof, square ft; undefined when the file states neither it nor any outline. */
  readonly roofPlanAreaFt2: SquareFeet | undefined
}

/**
 * Lays the roof out so that the ridge strip and the coverage that results agree: with the small strip, and when that
 * covers more of the roof than the small strip allows, with the large strip or with as many modules as the small strip
 * allows, whichever holds more.
 */
export function solveRidgeCase(
  project: RoofProject,
  access: FireAccess | undefined,
  worksheet: Worksheet,
): RidgeSolution {
  const small = layOut(project, access, 'small', Infinity, worksheet)
  const roofPlanAreaFt2 = wholeRoofFt2(project, small, access, worksheet)
  const limitPct = access?.limitPct?.value
  if (access === undefined || limitPct === undefined) return { trial: small, roofPlanAreaFt2 }
  if (roofPlanAreaFt2 === undefined) {
    return { trial: layOut(project, access, 'large', Infinity, worksheet), roofPlanAreaFt2 }
  }
  const budgetFt2 = (limitPct / 100) * roofPlanAreaFt2
  if (small.planAreaFt2 <= budgetFt2 + 1e-9) return { trial: small, roofPlanAreaFt2 }
  const large = layOut(project, access, 'large', Infinity, worksheet)
  if (small.fits.size === 0) return { trial: large, roofPlanAreaFt2 }
  const capped = layOut(project, access, 'small', budgetFt2, worksheet)
  const cappedHolds = capped.planAreaFt2 <= budgetFt2 + 1e-9 && capped.modules.length >= large.modules.length
  return { trial: cappedHolds ? capped : large, roofPlanAreaFt2 }
}

function wholeRoofFt2(
  project: RoofProject,
  trial: Trial,
  access: FireAccess | undefined,
  worksheet: Worksheet,
): SquareFeet | undefined {
  const stated = project.roof_access?.total_roof_area_ft2
  if (stated !== undefined) return stated
  const sum = [...trial.fields.values()].reduce((total, field) => total + field.surface.planAreaFt2, 0)
  if (sum === 0 || access?.limitPct === undefined) return sum === 0 ? undefined : sum
  return worksheet.assume({
    path: 'roof_access.total_roof_area_ft2',
    value: sum,
    unit: 'ft2',
    why: 'the area of the whole roof is not stated; the planes of this file are summed, which can only make the coverage look larger',
    source: { document: 'Sum of roof_planes outlines in plan view', standing: 'project file' },
  })
}
