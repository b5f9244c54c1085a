import type { RoofProject, RoofPlane } from '../project/index.js'
import { StageError, type Source, type Worksheet } from '../worksheet/index.js'
import { own } from '../values/index.js'
import type { FireAccess, PlaneFireAccess, RidgeCase } from './fire-access.js'
import { edgeKeepOuts, obstructionKeepOuts, rescueKeepOuts, type KeepOut } from './keep-out.js'
import { pathwayNeed, type PathwayNeed } from './pathway-need.js'
import { roofSurface, type RoofSurface } from './roof-surface.js'

/** A plane with everything on it that must stay free of modules, but for pathways, whose place is still open. */
export interface PlaneField {
  readonly surface: RoofSurface
  readonly plane: RoofPlane
  readonly fire: PlaneFireAccess | undefined
  readonly keepOuts: readonly KeepOut[]
  readonly need: PathwayNeed
}

const NO_RULE: Source = { document: 'No rule for rescue openings in the edition stated', standing: 'project file' }

/** Fields of the planes that state an outline, by id. */
export function planeFields(
  project: RoofProject,
  access: FireAccess | undefined,
  ridgeCase: RidgeCase,
  worksheet: Worksheet,
): Map<string, PlaneField> {
  const fields = new Map<string, PlaneField>()
  for (const [id, plane] of Object.entries(project.roof_planes)) {
    const surface = roofSurface(id, plane, worksheet)
    if (surface === undefined) continue
    const fire = access?.forPlane(surface, ridgeCase)
    const rescueSource = fire?.exempt === true ? undefined : access?.rules.rescueOpening
    const keepOuts = [
      ...edgeKeepOuts(surface, plane, fire),
      ...obstructionKeepOuts(project, id, worksheet),
      ...rescueKeepOuts(surface, plane, fire?.pathwayIn.value ?? 0, rescueSource ?? NO_RULE),
    ]
    fields.set(id, { surface, plane, fire, keepOuts, need: pathwayNeed(plane, fire, access?.rules) })
  }
  return fields
}

/** The plane of an array; throws a StageError when the array names none that exists. */
export function planeOf(project: RoofProject, arrayId: string): RoofPlane {
  const planeId = own(project.arrays, arrayId)?.roof_plane ?? ''
  const plane = own(project.roof_planes, planeId)
  if (plane !== undefined) return plane
  throw new StageError(
    `arrays.${arrayId}.roof_plane`,
    `roof plane '${planeId}' is not under roof_planes (known: ${Object.keys(project.roof_planes).join(', ')})`,
    'Name one that is there, or add the plane.',
  )
}
