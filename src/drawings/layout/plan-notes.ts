import type { Box, Primitive } from '../model/index.js'
import type { Block } from './block.js'
import { flowBlocks } from './flow.js'
import type { PlanRoom } from './plan-room.js'

/** Distance between a plan and notes below it. */
const GAP = 14
/** Less room below a plan takes no notes. */
const LEAST = 40

/**
 * Notes of a plan that stand beside it, go on below it where the plan leaves room enough for all that is left, and otherwise
 * on sheets that follow.
 *
 * @returns the notes by sheet, and where the plan lies: at the head of its room when there are notes below it.
 */
export function notesOf(
  blocks: readonly Block[],
  plan: PlanRoom,
  body: Box,
): Pick<PlanRoom, 'drawBox' | 'room'> & { readonly pages: Primitive[][] } {
  const { drawBox, room, notesBox, notesColumns, neededPt } = plan
  const asked = flowBlocks(blocks, notesBox, notesColumns, body)
  // Below a plan one column more may do without another sheet.
  const narrower = asked.length > 1 && notesColumns > 1 ? flowBlocks(blocks, notesBox, notesColumns + 1, body) : asked
  const pages = narrower.length < asked.length ? narrower : asked
  const below = { ...drawBox, y: drawBox.y + neededPt + GAP, height: drawBox.height - neededPt - GAP }
  if (pages.length === 1 || drawBox.width === body.width || below.height < LEAST) return { drawBox, room, pages }
  const [first = [], second = [], ...more] = flowBlocks(blocks, notesBox, notesColumns, below)
  if (more.length > 0) return { drawBox, room, pages }
  return {
    drawBox: { ...drawBox, height: neededPt },
    room: { ...room, height: room.height - (drawBox.height - neededPt) },
    pages: [[...first, ...second]],
  }
}
