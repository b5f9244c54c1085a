import type { Box, Primitive } from '../model/index.js'
import type { Block } from './block.js'
import { flowBlocks } from './flow.js'
import type { PlanRoom } from './plan-room.js'

/** Distance between a plan and notes below it. */
const GAP = 14
/** Less room below a plan takes no notes. */
const LEAST = 40
/** Notes of this width stand in two columns. */
const TWO_COLUMNS = 330

/**
 * Notes of a plan that stand beside it, go on below it where the plan leaves room enough for all that is left, take the width
 * that it leaves where this does without a sheet, and otherwise go on at sheets that follow.
 *
 * @returns the notes by sheet, and where the plan lies: at the head of its room when there are notes below it.
 */
export function notesOf(
  blocks: readonly Block[],
  plan: PlanRoom,
  body: Box,
): Pick<PlanRoom, 'drawBox' | 'room'> & { readonly pages: Primitive[][] } {
  const { drawBox, room, notesBox, notesColumns, neededPt, sparePt } = plan
  const asked = flowBlocks(blocks, notesBox, notesColumns, body)
  // Below a plan one column more may do without another sheet.
  const narrower = asked.length > 1 && notesColumns > 1 ? flowBlocks(blocks, notesBox, notesColumns + 1, body) : asked
  const pages = narrower.length < asked.length ? narrower : asked
  const below = { ...drawBox, y: drawBox.y + neededPt + GAP, height: drawBox.height - neededPt - GAP }
  if (pages.length === 1 || drawBox.width === body.width) return { drawBox, room, pages }
  const [first = [], second = [], ...more] =
    below.height < LEAST ? pages : flowBlocks(blocks, notesBox, notesColumns, below)
  if (more.length === 0 && below.height >= LEAST) {
    return {
      drawBox: { ...drawBox, height: neededPt },
      room: { ...room, height: room.height - (drawBox.height - neededPt) },
      pages: [[...first, ...second]],
    }
  }
  const wide = { ...notesBox, x: notesBox.x - sparePt, width: notesBox.width + sparePt }
  const wider = flowBlocks(blocks, wide, wide.width >= TWO_COLUMNS ? 2 : 1, body)
  if (wider.length >= pages.length) return { drawBox, room, pages }
  return {
    drawBox: { ...drawBox, width: drawBox.width - sparePt },
    room: { ...room, width: room.width - sparePt },
    pages: wider,
  }
}
