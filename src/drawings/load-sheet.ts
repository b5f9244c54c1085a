import { checkGlyphs } from './check-glyphs.js'
import type { PacketInput } from './inputs.js'
import { composeSheet, makeStationery, PAPER_SIZES } from './layout/index.js'
import type { Sheet } from './model/index.js'
import type { SheetJob } from './sheets/job.js'
import { loadSheets } from './sheets/load-sheet.js'
import { roofPlanSheets } from './sheets/roof-plan.js'
import { stationeryWishes, titleFacts } from './title-facts.js'

/**
 * The load sheet for the engineer of the roof framing: the roof plans with numbered rafters, then loads and sums.
 *
 * @throws StageError when a text of the project has a character that the embedded font cannot print.
 */
export function drawLoadSheet(input: PacketInput): Sheet[] {
  checkGlyphs(input.project)
  const stationery = makeStationery(PAPER_SIZES[input.size], titleFacts(input), stationeryWishes(input))
  const job: SheetJob = { input, stationery }
  return [...loadSheets(job), ...roofPlanSheets(job)].map((draft, index, { length }) =>
    composeSheet(draft, stationery, { number: index + 1, of: length }),
  )
}
