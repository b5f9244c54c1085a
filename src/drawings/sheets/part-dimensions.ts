import type { ArrangedPlane } from '../../roof/index.js'
import { feetOf, inchesOf } from '../../values/index.js'
import type { PacketInput } from '../inputs.js'
import { feetInches, inches } from '../layout/index.js'
import { boundsOf, xy, type Primitive } from '../model/index.js'
import { chain, chainName, rowPt, stops } from './dimension-chain.js'
import { mountPatterns } from './mount-patterns.js'
import { partModules, type PlanPart } from './plan-parts.js'
import { toXY } from './plane-figures.js'
import { railDimensions } from './rail-heights.js'

/** Patterns of mounts that are dimensioned in a part. */
const PATTERNS = 3

/** Room on paper that the dimensions of a part take, units of the layout. */
export const PART_ROOM = { left: 62, right: 40, top: 26, bottom: rowPt(PATTERNS) + 14 } as const

/** Dimensions of a part of a plane: edges of the plane and of arrays in it, mounts along its rails, rails up the slope. */
export function partDimensions(
  input: PacketInput,
  plane: ArrangedPlane,
  { region }: PlanPart,
  ptPerFt: number,
): Primitive[] {
  const { x, y, width, height } = boundsOf(plane.corners.map(toXY))
  const modules = partModules(
    input.arrangement.values.modules.filter(({ roofPlane }) => roofPlane === plane.id),
    region,
  )
  const inX = (at: number): boolean => at >= region.x - 1e-6 && at <= region.x + region.width + 1e-6
  const inY = (at: number): boolean => at >= region.y - 1e-6 && at <= region.y + region.height + 1e-6
  const across = stops(
    modules.map((module) => [module.xFt, module.xFt + module.widthFt]),
    x,
    x + width,
  ).filter(inX)
  const up = stops(
    modules.map((module) => [module.yFt, module.yFt + module.heightFt]),
    y,
    y + height,
  ).filter(inY)
  const write = (ft: number): string => (ft < 1 ? inches(inchesOf(ft), 8) : feetInches(ft))
  const rails = (input.mounts?.values.rails ?? []).filter(
    (rail) => rail.plane === plane.id && inY(feetOf(rail.y_in)) && feetOf(rail.x_in) < region.x + region.width,
  )
  const rows = mountPatterns(input, plane)
    .filter((pattern) => rails.some(({ id }) => pattern.rails.includes(id)))
    .map(({ letter, stopsIn }) => ({ letter, at: stopsIn.map((stop) => feetOf(stop)).filter(inX) }))
    .filter(({ at }) => at.length > 1)
    .slice(0, PATTERNS)
  return [
    ...chain(
      across.map((at) => xy(at, region.y)),
      -rowPt(rows.length),
    ),
    ...chain(
      up.map((at) => xy(region.x, at)),
      rowPt(1),
    ),
    ...railDimensions(input, plane, { fromFt: region.x, offsetPt: rowPt(0), ptPerFt }, [
      region.y,
      region.y + region.height,
    ]),
    ...rows.flatMap(({ letter, at }, index) => [
      ...chain(
        at.map((each) => xy(each, region.y)),
        -rowPt(index),
        true,
        write,
      ),
      chainName(xy(at[0] ?? 0, region.y), `MOUNTS ${letter}`, rowPt(index)),
    ]),
  ]
}
