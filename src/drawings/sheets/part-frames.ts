import type { ArrangedPlane } from '../../roof/index.js'
import { label, TYPE_PT, type SheetDraft } from '../layout/index.js'
import { boundsOf, cornersOf, inset, onLayer, xy, type Box, type Primitive } from '../model/index.js'
import { toXY } from './plane-figures.js'
import type { PlanPart } from './plan-parts.js'

/** Distance of the frame of a part from its edge on the whole plan, on paper. */
const FRAME_INSET = 1.5

/** A sheet and the parts that it shows. */
export interface PartSheet {
  readonly parts: readonly PlanPart[]
  readonly draft: SheetDraft
}

/** The frames of all parts on the whole plan with their letters, and on which sheets they are drawn. */
export function frames(plane: ArrangedPlane, drawn: readonly PartSheet[], ptPerFt: number): Primitive[] {
  const { x, y, width, height } = boundsOf(plane.corners.map(toXY))
  const listed = drawn.map(({ parts, draft }) => `${parts.map(({ letter }) => letter).join(', ')} ON ${draft.id}`)
  return [
    ...drawn.flatMap(({ parts }) => parts.flatMap(({ letter, region }) => frame(letter, region, ptPerFt))),
    label(x + width / 2, y + height, `FRAMED PARTS ARE DRAWN LARGER: ${listed.join('; ')}`, {
      sizePt: TYPE_PT.small,
      align: 'center',
      // Above the plan and the name of its upper edge; more lines go up, not across the edge.
      valign: 'bottom',
      maxWidthPt: 420,
      halo: true,
      shifts: [-18, -24, -36, -48, -60].flatMap((dy) => [0, 60, -60, 120, -120].map((dx) => xy(dx, dy))),
    }),
  ]
}

/** Places of a letter in its frame, as shares of it: near the corners first. */
const PLACES = [0.06, 0.94, 0.2, 0.8, 0.35, 0.65, 0.5]

function frame(letter: string, region: Box, ptPerFt: number): Primitive[] {
  const { x, y, width, height } = inset(region, FRAME_INSET / ptPerFt)
  const shifts = PLACES.flatMap((up) => PLACES.map((along) => xy(along * width * ptPerFt, (up - 1) * height * ptPerFt)))
  return [
    ...onLayer<Primitive>('symbol', [
      { kind: 'path', points: cornersOf({ x, y, width, height }), closed: true, pen: 'medium', dash: 'hidden' },
    ]),
    label(x, y, letter, { sizePt: TYPE_PT.head, face: 'bold', align: 'center', valign: 'middle', shifts }),
  ]
}
