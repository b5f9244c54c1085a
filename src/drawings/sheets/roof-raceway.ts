import type { ArrangedPlane } from '../../roof/index.js'
import { own } from '../../values/index.js'
import type { PacketInput } from '../inputs.js'
import { label, TYPE_PT } from '../layout/index.js'
import { asSymbol, xy, type Primitive, type XY } from '../model/index.js'
import { NEAR } from './near-places.js'

function middleOfLongest(points: readonly XY[]): XY | undefined {
  const pieces = points.slice(1).map((to, index) => ({ from: points[index] ?? to, to }))
  const lengthOf = ({ from, to }: { from: XY; to: XY }): number => Math.hypot(to.x - from.x, to.y - from.y)
  const longest = pieces.toSorted((a, b) => lengthOf(b) - lengthOf(a))[0]
  return longest === undefined
    ? undefined
    : xy((longest.from.x + longest.to.x) / 2, (longest.from.y + longest.to.y) / 2)
}

/** The way of the raceway over a plane, with its junction boxes. */
export function raceway(input: PacketInput, plane: ArrangedPlane): Primitive[] {
  const stated = own(input.project.site_plan?.roof_planes, plane.id)
  const points = (stated?.raceway ?? []).map((point) => xy(point.x_ft, point.y_ft))
  const way: Primitive[] = points.length < 2 ? [] : [{ kind: 'path', points, pen: 'heavy', dash: 'dashed' }]
  const first = middleOfLongest(points)
  const name: Primitive[] =
    first === undefined
      ? []
      : [
          label(first.x, first.y, 'RACEWAY', {
            sizePt: TYPE_PT.small,
            halo: true,
            align: 'center',
            valign: 'middle',
            shifts: [xy(-24, 0), xy(24, 0), xy(0, -9), xy(0, 9), ...NEAR.slice(3)],
          }),
        ]
  const boxes = (stated?.junction_boxes ?? []).flatMap((at, index): Primitive[] => [
    ...asSymbol('JUNCTION-BOX', xy(at.x_ft, at.y_ft), [
      {
        kind: 'rectangle',
        x: at.x_ft - 0.35,
        y: at.y_ft - 0.35,
        width: 0.7,
        height: 0.7,
        pen: 'medium',
        fill: 'white',
        layer: 'equipment',
      } as const,
    ]),
    label(at.x_ft, at.y_ft, `JB${index + 1}`, {
      sizePt: TYPE_PT.small,
      face: 'bold',
      halo: true,
      align: 'center',
      valign: 'middle',
      shifts: [xy(0, -13), xy(0, 13), xy(-16, 0), xy(16, 0), xy(22, -12), xy(22, 12)],
    }),
  ])
  return [...way, ...name, ...boxes]
}
