import { roofText } from '../../project/facts.js'
import type { ModulePlacement } from '../../roof/index.js'
import { Kept } from '../../values/index.js'
import { Worksheet, type Result } from '../../worksheet/index.js'
import type { PlaneGeometry } from '../model/index.js'
import { solvePlane, type HouseToMount, type SolvedPlane } from './solve-plane.js'

/** Planes that are kept; one with its rails and rafters takes some 200 kB. */
const MOST_PLANES = 64
const known = new Kept<Result<SolvedPlane>>(MOST_PLANES)

/**
 * `solvePlane`, which is worked out once for equal roofs: many houses of a fleet differ in their place and their tariff only.
 *
 * @param house Its loads and its kit follow from its project.
 */
export function solvePlaneOnce(
  house: HouseToMount,
  geometry: PlaneGeometry,
  modules: readonly ModulePlacement[],
  worksheet: Worksheet,
): SolvedPlane {
  const { id, tiltDeg, edges } = geometry
  const text = JSON.stringify([...allOf(house), { id, tiltDeg, edges }, modules])
  const solved = known.of(text, () => {
    const own = new Worksheet()
    return own.result(solvePlane(house, geometry, modules, own))
  })
  worksheet.include(solved)
  return solved.values
}

function allOf({ project, options }: HouseToMount): unknown[] {
  const { documents = [], documentTroubles = [], ...wishes } = options
  const troubles = [...documentTroubles].map((one) => JSON.stringify(one)).sort()
  return [roofText(project), project.documents, wishes, [...documents].sort(), troubles]
}
