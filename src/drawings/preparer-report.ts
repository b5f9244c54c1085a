import { checkGlyphs } from './check-glyphs.js'
import type { PacketInput } from './inputs.js'
import { auditPacket } from './audit/index.js'
import { composeSheet, makeStationery, PAPER_SIZES } from './layout/index.js'
import type { Sheet } from './model/index.js'
import { drawPacket } from './packet.js'
import { auditBlocks } from './preparer/audit-blocks.js'
import { preparerSheets } from './preparer/preparer-sheets.js'
import { titleFacts } from './title-facts.js'

/**
 * The preparer's report: what stands behind the sheets of a packet and is not filed with them.
 *
 * @throws StageError when a text of the project has a character that the embedded font cannot print.
 */
export function drawPreparerReport(input: PacketInput): Sheet[] {
  checkGlyphs(input.project)
  // The audit is of the packet as it is drawn on its own paper; the report is always on letter paper.
  const { values } = auditPacket(input, drawPacket(input))
  const stationery = makeStationery(PAPER_SIZES.letter, titleFacts(input))
  return preparerSheets({ input, stationery }, auditBlocks(values)).map((draft) => composeSheet(draft, stationery))
}
