import { checkGlyphs } from './check-glyphs.js'
import type { PacketInput } from './inputs.js'
import { composeSheet, makeStationery, PAPER_SIZES, type Block } from './layout/index.js'
import type { Sheet } from './model/index.js'
import { preparerSheets } from './preparer/preparer-sheets.js'
import { titleFacts } from './title-facts.js'

/**
 * The preparer's report: what stands behind the sheets of a packet and is not filed with them.
 *
 * @param more Parts that follow the list of what to confirm.
 * @throws StageError when a text of the project has a character that the embedded font cannot print.
 */
export function drawPreparerReport(input: PacketInput, more: readonly Block[] = []): Sheet[] {
  checkGlyphs(input.project)
  const stationery = makeStationery(PAPER_SIZES[input.size], titleFacts(input))
  return preparerSheets({ input, stationery }, more).map((draft) => composeSheet(draft, stationery))
}
