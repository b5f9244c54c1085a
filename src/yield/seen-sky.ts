import type { Project } from '../project/index.js'
import type { ModulePlacement } from '../roof/index.js'
import { buildScene, isMet } from '../scene/index.js'
import { StageError } from '../worksheet/index.js'
import { radiansOf, type Degrees } from '../values/index.js'
import { planArray } from './array-plan.js'
import { isBelowHorizon, type ModuleView } from './shade/index.js'

/** What can be seen of the sky from one place on the roof. */
export interface SeenSky {
  /** Module, or array without places. */
  readonly id: string
  readonly isModule: boolean
  /** North positive. */
  readonly latitudeDeg: Degrees
  readonly tiltDeg: Degrees
  /** Direction that the modules face, degrees clockwise from true north. */
  readonly azimuthDeg: Degrees
  /** Share of direct light that arrives from a direction, twelve months, 0 to 1. */
  readonly seen: (azimuthDeg: Degrees, elevationDeg: Degrees) => readonly number[]
}

const ALL: readonly number[] = Array.from({ length: 12 }, () => 1)
const NONE: readonly number[] = Array.from({ length: 12 }, () => 0)

/**
 * What the middle of a module sees, or of the module nearest to the middle of an array.
 *
 * @param placements Places of all modules, as the arrangement has them.
 * @param wanted A module by the id of its placement, or an array.
 * @throws StageError when there is no such module, or a part of the equipment is missing.
 */
export function seenSky(
  project: Project,
  placements: readonly ModulePlacement[],
  wanted: { readonly module: string } | { readonly array: string },
): SeenSky {
  const arrayId = 'array' in wanted ? wanted.array : placements.find(({ id }) => id === wanted.module)?.array
  if (arrayId === undefined) {
    throw new StageError(
      'arrays',
      `no module '${'module' in wanted ? wanted.module : ''}' has a place`,
      'name one of the arrangement',
    )
  }
  const plan = planArray(
    project,
    arrayId,
    placements.filter((placement) => placement.array === arrayId),
    buildScene(project, placements),
  )
  const view = 'module' in wanted ? plan.views.find(({ face }) => face.id === wanted.module) : middleView(plan.views)
  if (view === undefined) {
    throw new StageError(
      `arrays.${arrayId}`,
      'has no place in space to look from',
      'state the outline of its roof plane',
    )
  }
  return {
    id: view.face.id,
    isModule: view.face.id !== arrayId,
    latitudeDeg: project.site.latitude_deg,
    tiltDeg: plan.tiltDeg,
    azimuthDeg: plan.azimuthDeg,
    seen: (azimuthDeg, elevationDeg) => lightFrom(view, azimuthDeg, elevationDeg),
  }
}

/** The view of the module that is nearest to the mean of all; the first of equals. */
function middleView(views: readonly ModuleView[]): ModuleView | undefined {
  const mean = (of: (view: ModuleView) => number): number =>
    views.reduce((sum, view) => sum + of(view), 0) / views.length
  const east = mean(({ face }) => face.middle.east)
  const north = mean(({ face }) => face.middle.north)
  const up = mean(({ face }) => face.middle.up)
  let [nearest, leastFt]: [ModuleView | undefined, number] = [undefined, Infinity]
  for (const view of views) {
    const { middle } = view.face
    const awayFt = Math.hypot(middle.east - east, middle.north - north, middle.up - up)
    // Places that differ by rounding alone are equally far.
    if (awayFt < leastFt - 1e-6) [nearest, leastFt] = [view, awayFt]
  }
  return nearest
}

function lightFrom(view: ModuleView, azimuthDeg: Degrees, elevationDeg: Degrees): readonly number[] {
  const [azimuth, elevation] = [radiansOf(azimuthDeg), radiansOf(elevationDeg)]
  const level = Math.cos(elevation)
  const towards = { east: level * Math.sin(azimuth), north: level * Math.cos(azimuth), up: Math.sin(elevation) }
  const { middle } = view.face
  if (view.horizon.length > 0 && isBelowHorizon(view.horizon, towards)) return NONE
  if (view.opaque.some(({ solid }) => isMet(solid, middle.east, middle.north, middle.up, towards))) return NONE
  return view.porous
    .filter(({ solid }) => isMet(solid, middle.east, middle.north, middle.up, towards))
    .reduce((left, { solid }) => left.map((share, month) => share * (solid.transmittance?.[month] ?? 0)), ALL)
}
