import { radiansOf } from '../../values/index.js'
import type { LayerKey, XY } from '../model/index.js'
import { at, head, type Owner } from './entity-head.js'
import { dxfFormatted, dxfText, type Pair } from './pairs.js'
import type { Shape } from './shapes.js'

/** Names of the two styles of text. */
export const TEXT_STYLES = { plain: 'GW-PLAIN', bold: 'GW-BOLD' } as const

/** The entity of a shape. @source public DXF reference of its maker, entities (secondary) */
export function shapeEntity(shape: Shape, handle: string, owner: Owner): Pair[] {
  const { layer } = shape
  switch (shape.kind) {
    case 'line':
      return lineEntity(shape, handle, owner)
    case 'circle':
      return [
        ...head('CIRCLE', handle, owner, layer, shape),
        [100, 'AcDbCircle'],
        ...at(10, shape.center),
        [40, shape.radius],
      ]
    case 'fill':
      return hatchEntity(head('HATCH', handle, owner, layer, shape), [loop(shape.points)], SOLID)
    case 'disc': {
      const { x, y } = shape.center
      const ends = [x - shape.radius, x + shape.radius]
      // Two half circles: the tangent of a quarter of half a turn is 1.
      const round: Pair[] = [
        [92, 3],
        [72, 1],
        [73, 1],
        [93, 2],
        ...ends.flatMap((end): Pair[] => [
          [10, end],
          [20, y],
          [42, 1],
        ]),
        [97, 0],
      ]
      return hatchEntity(head('HATCH', handle, owner, layer, shape), [round], SOLID)
    }
    case 'hatch':
      return hatchEntity(
        head('HATCH', handle, owner, layer, shape),
        [loop(shape.points), ...shape.islands.map((each) => loop(each, 2))],
        {
          solid: false,
          pattern: linesPattern(shape),
        },
      )
    case 'text':
      return [
        ...head('TEXT', handle, owner, layer, shape),
        [100, 'AcDbText'],
        ...at(10, shape.from),
        [40, shape.heightIn],
        [1, dxfText(shape.text)],
        [50, shape.rotationDeg],
        [7, shape.bold ? TEXT_STYLES.bold : TEXT_STYLES.plain],
        // Fitted between its ends, so that another font makes it no longer than it was laid out.
        [72, 5],
        ...at(11, shape.to),
        [100, 'AcDbText'],
      ]
  }
}

function lineEntity(shape: Shape & { kind: 'line' }, handle: string, owner: Owner): Pair[] {
  const [from, to, ...more] = shape.points
  if (from === undefined || to === undefined) throw new Error('a line of one point')
  if (more.length === 0) {
    return [...head('LINE', handle, owner, shape.layer, shape), [100, 'AcDbLine'], ...at(10, from), ...at(11, to)]
  }
  return [
    ...head('LWPOLYLINE', handle, owner, shape.layer, shape),
    [100, 'AcDbPolyline'],
    [90, shape.points.length],
    [70, shape.closed ? 1 : 0],
    [43, 0],
    ...shape.points.flatMap(({ x, y }): Pair[] => [
      [10, x],
      [20, y],
    ]),
  ]
}

interface Pattern {
  readonly solid: boolean
  readonly pattern: readonly Pair[]
}

const SOLID: Pattern = { solid: true, pattern: [] }

/** A boundary of a hatch: bit 1 says that it is the outer one, bit 2 that it is a polyline. */
const loop = (points: readonly XY[], kind = 3): Pair[] => [
  [92, kind],
  [72, 0],
  [73, 1],
  [93, points.length],
  ...points.flatMap(({ x, y }): Pair[] => [
    [10, x],
    [20, y],
  ]),
  [97, 0],
]

function hatchEntity(
  start: readonly Pair[],
  boundaries: readonly (readonly Pair[])[],
  { solid, pattern }: Pattern,
): Pair[] {
  return [
    ...start,
    [100, 'AcDbHatch'],
    ...at(10, { x: 0, y: 0 }),
    [210, 0],
    [220, 0],
    [230, 1],
    [2, solid ? 'SOLID' : '_USER'],
    [70, solid ? 1 : 0],
    [71, 0],
    [91, boundaries.length],
    ...boundaries.flat(),
    [75, 0],
    [76, solid ? 1 : 0],
    ...pattern,
    [98, 0],
  ]
}

/** Parallel lines as the user of a CAD program states them: direction and distance. */
function linesPattern({ angleDeg, gapIn, cross }: Shape & { kind: 'hatch' }): Pair[] {
  const angles = cross ? [angleDeg, angleDeg + 90] : [angleDeg]
  return [
    [52, angleDeg],
    [41, gapIn],
    [77, cross ? 1 : 0],
    [78, angles.length],
    ...angles.flatMap((deg): Pair[] => {
      const turn = radiansOf(deg)
      return [
        [53, deg],
        [43, 0],
        [44, 0],
        [45, -gapIn * Math.sin(turn)],
        [46, gapIn * Math.cos(turn)],
        [79, 0],
      ]
    }),
  ]
}

/** A block at a place. */
export function insertEntity(block: string, place: XY, layer: LayerKey, handle: string, owner: Owner): Pair[] {
  return [...head('INSERT', handle, owner, layer), [100, 'AcDbBlockReference'], [2, block], ...at(10, place)]
}

/** What a dimension states of itself beside the block with its picture, inches. */
export interface DimensionFacts {
  readonly block: string
  readonly style: string
  readonly text: string
  readonly from: XY
  readonly to: XY
  readonly lineTo: XY
  readonly middle: XY
}

export function dimensionEntity(facts: DimensionFacts, layer: LayerKey, handle: string, owner: Owner): Pair[] {
  return [
    ...head('DIMENSION', handle, owner, layer),
    [100, 'AcDbDimension'],
    [2, facts.block],
    ...at(10, facts.lineTo),
    ...at(11, facts.middle),
    // Along its points, with a block of its own, its text where it was put.
    [70, 1 + 32 + 128],
    [1, facts.text === '' ? ' ' : dxfFormatted(facts.text)],
    [71, 5],
    [42, Math.hypot(facts.to.x - facts.from.x, facts.to.y - facts.from.y)],
    [3, facts.style],
    [100, 'AcDbAlignedDimension'],
    ...at(13, facts.from),
    ...at(14, facts.to),
  ]
}
