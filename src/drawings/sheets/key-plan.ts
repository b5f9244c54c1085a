import type { ArrangedPlane } from '../../roof/index.js'
import { label, TYPE_PT } from '../layout/index.js'
import { boundsOf, cornersOf, inPart, onLayer, type Box, type Primitive, type XY } from '../model/index.js'
import type { PlanPart } from './plan-parts.js'
import { toXY } from './plane-figures.js'

/** Room for the words beside it, units of the layout. */
const WORDS = 50

/**
 * The outline of a plane with its parts and their letters; those of the sheet in grey.
 *
 * @param room On paper.
 */
export function keyPlan(
  plane: ArrangedPlane,
  parts: readonly PlanPart[],
  shown: readonly PlanPart[],
  room: Box,
): Primitive[] {
  const outline = plane.corners.map(toXY)
  const { x, y, width, height } = boundsOf(outline)
  const scale = Math.min((room.width - WORDS) / width, room.height / height)
  const left = room.x + room.width - width * scale
  const at = (point: XY): XY => ({ x: left + (point.x - x) * scale, y: room.y + (y + height - point.y) * scale })
  const figures: Primitive[] = [
    ...parts.map((part): Primitive => ({
      kind: 'path',
      points: cornersOf(part.region).map(at),
      closed: true,
      pen: 'thin',
      dash: 'hidden',
      ...(shown.includes(part) ? { fill: 'mid' as const } : {}),
    })),
    { kind: 'path', points: outline.map(at), closed: true, pen: 'medium' },
    ...parts.map(({ letter, region }) => {
      const middle = at({ x: region.x + region.width / 2, y: region.y + region.height / 2 })
      return label(middle.x, middle.y, letter, {
        sizePt: TYPE_PT.text,
        face: 'bold',
        align: 'center',
        valign: 'middle',
      })
    }),
    label(left - 6, room.y + room.height / 2, `KEY PLAN\nof ${plane.id}`, {
      sizePt: TYPE_PT.small,
      face: 'bold',
      align: 'right',
      valign: 'middle',
    }),
  ]
  const letters = shown.map(({ letter }) => letter).join(', ')
  const says = `Key plan of roof plane ${plane.id}: this sheet shows ${shown.length === 1 ? 'part' : 'parts'} ${letters} of ${parts.length}.`
  return inPart({ kind: 'Figure', says }, onLayer('symbol', figures))
}
