import type { Feet } from '../../values/index.js'
import type { Box } from '../model/index.js'
import { largestScale, type Scale } from './scales.js'

/** Room round a plan for names of edges and dimensions, units of the layout. */
export interface Around {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Where a plan and its notes lie on a sheet. */
export interface PlanRoom {
  readonly scale: Scale
  /** Part of the paper that the plan with its dimensions keeps to. */
  readonly drawBox: Box
  /** Inside it, the room for the plan itself. */
  readonly room: Box
  readonly notesBox: Box
  readonly notesColumns: number
  /** Height that the plan takes with what stands round it. */
  readonly neededPt: number
}

/** Distance between plan and notes. */
const GAP = 12

/**
 * Places a plan beside or above its notes, whichever lets it be drawn at the larger scale; beside them when both do.
 *
 * @param body Room for the drawing, units of the layout.
 * @param notesHeight Height of the notes when they stand below.
 */
export function planRoom(
  body: Box,
  plan: { readonly widthFt: Feet; readonly heightFt: Feet },
  around: Around,
  scales: readonly Scale[],
  unitPt: number,
  notesHeight: number,
): PlanRoom {
  const notesWidth = Math.max(150, body.width * 0.25)
  const made = (drawBox: Box, notesBox: Box, notesColumns: number): PlanRoom => {
    const room = {
      x: drawBox.x + around.left,
      y: drawBox.y + around.top,
      width: drawBox.width - around.left - around.right,
      height: drawBox.height - around.top - around.bottom,
    }
    const scale = largestScale(scales, plan.widthFt, plan.heightFt, room, unitPt)
    const neededPt = plan.heightFt * scale.ptPerFt + around.top + around.bottom
    return { scale, drawBox, room, notesBox, notesColumns, neededPt }
  }
  const beside = made(
    { ...body, width: body.width - notesWidth - GAP },
    { ...body, x: body.x + body.width - notesWidth, width: notesWidth },
    1,
  )
  const columns = body.width > 560 ? 3 : 2
  const over = (height: number): PlanRoom =>
    made({ ...body, height }, { ...body, y: body.y + height + GAP, height: body.height - height - GAP }, columns)
  const most = over(body.height - notesHeight - GAP)
  // The notes take what the plan leaves.
  const above = over(Math.min(most.drawBox.height, most.neededPt + 1))
  const fits = above.room.height >= plan.heightFt * above.scale.ptPerFt
  return fits && above.scale.ptPerFt > beside.scale.ptPerFt ? above : beside
}
