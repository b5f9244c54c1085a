import type { ArrangedPlane, ModulePlacement } from '../../roof/index.js'
import type { PacketInput } from '../inputs.js'
import { feetInches, inches } from '../layout/index.js'
import { xy, type Primitive } from '../model/index.js'
import { chain, chainName, FIRST_PT, rowPt, STEP_PT, stops } from './dimension-chain.js'
import { mountPatterns } from './mount-patterns.js'
import { railDimensions } from './rail-heights.js'
import { objectDimensions } from './roof-objects.js'
import { toXY } from './plane-figures.js'
import { feetOf, inchesOf } from '../../values/index.js'

/** Patterns of mounts that are dimensioned; the schedule lists every rail. */
const PATTERNS = 2

/** Rows of dimensions below a plane: mounts nearest to it, then arrays, then the whole. */
export function rowsBelow(input: PacketInput, plane: ArrangedPlane): number {
  return Math.min(PATTERNS, mountPatterns(input, plane).length) + 2
}

/** Room on paper that the dimensions of a plane take, points. */
export function dimensionRoom(
  input: PacketInput,
  plane: ArrangedPlane,
): { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number } {
  return {
    left: rowPt(Math.max(1, railRow(plane))) + 21,
    right: 40,
    top: 26,
    bottom: FIRST_PT + (rowsBelow(input, plane) - 1) * STEP_PT + 14,
  }
}

/** Row of the rails at the left: nearest, but beyond the slanting edges of other planes than rectangles. */
const railRow = (plane: ArrangedPlane): number => (isRectangle(plane) ? 0 : 2)

/** Dimensions of a plane: its edges, where the arrays lie, and the distances of mounts along one rail of each pattern. */
export function planDimensions(input: PacketInput, plane: ArrangedPlane, ptPerFt: number): Primitive[] {
  const modules = input.arrangement.values.modules.filter((module) => module.roofPlane === plane.id)
  const left = Math.min(...plane.corners.map(({ xFt }) => xFt))
  return [
    ...edgeDimensions(plane, rowsBelow(input, plane)),
    ...setbackDimensions(plane),
    ...arrayDimensions(plane, modules, rowsBelow(input, plane)),
    ...mountDimensions(input, plane),
    ...railDimensions(input, plane, { fromFt: left, offsetPt: rowPt(railRow(plane)), ptPerFt }),
    ...objectDimensions(input, plane),
  ]
}

function edgeDimensions(plane: ArrangedPlane, rows: number): Primitive[] {
  const rectangle = isRectangle(plane)
  const shown = rectangle ? plane.edges.slice(0, 2) : plane.edges
  const edges = shown.map((edge): Primitive => {
    const down = isLevel(edge) && edge.to.xFt > edge.from.xFt
    const length = rectangle && isUpright(edge) ? edge : undefined
    return {
      kind: 'dimension',
      from: toXY(edge.from),
      to: toXY(edge.to),
      // The plane lies on the left, so the outside is at a negative distance.
      offsetPt: down ? -rowPt(rows - 1) : length === undefined ? -FIRST_PT : -(FIRST_PT - 2),
      text: feetInches(edge.lengthFt),
    }
  })
  return edges
}

/** Strips that stay free along level edges. */
function setbackDimensions(plane: ArrangedPlane): Primitive[] {
  return plane.keepOuts.flatMap((keepOut): Primitive[] => {
    const [from, to] = keepOut.thing
    if (keepOut.kind !== 'edge' || keepOut.clearanceIn === 0 || from === undefined || to === undefined) return []
    if (Math.abs(from.yFt - to.yFt) > 1e-6) return []
    const inward = to.xFt > from.xFt ? 1 : -1
    const x = from.xFt + 0.07 * (to.xFt - from.xFt)
    const end = xy(x, from.yFt + feetOf(inward * keepOut.clearanceIn))
    return [
      { kind: 'dimension', from: xy(x, from.yFt), to: end, offsetPt: 0, text: feetInches(feetOf(keepOut.clearanceIn)) },
    ]
  })
}

const isLevel = (edge: ArrangedPlane['edges'][number]): boolean => Math.abs(edge.to.yFt - edge.from.yFt) < 1e-6
const isUpright = (edge: ArrangedPlane['edges'][number]): boolean => Math.abs(edge.to.xFt - edge.from.xFt) < 1e-6

const isRectangle = ({ edges }: ArrangedPlane): boolean =>
  edges.length === 4 && edges.every((edge) => isLevel(edge) || isUpright(edge))

/** Along the eave: from the left end to each array, across it, and to the right end. Up the slope: the same. */
function arrayDimensions(plane: ArrangedPlane, modules: readonly ModulePlacement[], rows: number): Primitive[] {
  if (modules.length === 0) return []
  const xs = plane.corners.map((corner) => corner.xFt)
  const ys = plane.corners.map((corner) => corner.yFt)
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const across = stops(
    modules.map((module) => [module.xFt, module.xFt + module.widthFt]),
    left,
    right,
  )
  const up = stops(
    modules.map((module) => [module.yFt, module.yFt + module.heightFt]),
    low,
    high,
  )
  return [
    ...chain(
      across.map((x) => xy(x, low)),
      -rowPt(rows - 2),
    ),
    ...chain(
      up.map((y) => xy(left, y)),
      FIRST_PT + STEP_PT,
    ),
  ]
}

/** One chain for each different set of mount places, the first two of them; the schedule lists every rail. */
function mountDimensions(input: PacketInput, plane: ArrangedPlane): Primitive[] {
  const low = Math.min(...plane.corners.map((corner) => corner.yFt))
  return mountPatterns(input, plane)
    .slice(0, PATTERNS)
    .flatMap(({ letter, stopsIn }, index) => {
      const stopsFt = stopsIn.map((stop) => xy(feetOf(stop), low))
      const write = (ft: number): string => (ft < 1 ? inches(inchesOf(ft), 8) : feetInches(ft))
      return [...chain(stopsFt, -rowPt(index), true, write), chainName(stopsFt[0], `MOUNTS ${letter}`, rowPt(index))]
    })
}
