import { own, type Inches } from '../values/index.js'
import type { RoofProject } from '../project/index.js'
import type { Worksheet } from '../worksheet/index.js'

/**
 * Length of rail past the frame of the last module of a row, for the end clamp, in; 0 when the project states no rail.
 *
 * @param worksheet Takes the assumption when the sheet's value is not stated.
 */
export function railEndIn(project: RoofProject, worksheet: Worksheet): Inches {
  const id = project.structure?.rail
  const rail = own(project.equipment.rails, id)
  if (rail === undefined) return 0
  return (
    rail.end_allowance_in ??
    worksheet.assume({
      path: `equipment.rails.${id}.end_allowance_in`,
      value: 1.5,
      unit: 'in',
      why: 'an end clamp needs 1 to 1.5 in of rail past the frame',
      source: { document: '', standing: 'common practice, no source' },
    })
  )
}
