import type { Step } from '../worksheet/index.js'
import { checkGlyphs, checkTexts } from './check-glyphs.js'
import type { PacketInput } from './inputs.js'
import { composeSheet, makeStationery, PAPER_SIZES, type SheetDraft } from './layout/index.js'
import type { Sheet } from './model/index.js'
import { attachmentFacts } from './sheets/attachment-facts.js'
import { attachmentSheets } from './sheets/attachment.js'
import { electricalCalculation, structuralCalculation } from './sheets/calculation.js'
import { coverSheets } from './sheets/cover.js'
import { indexedDocuments } from './sheets/document-index.js'
import type { SheetJob } from './sheets/job.js'
import { labelSheets } from './sheets/labels.js'
import { oneLineSheets } from './sheets/one-line.js'
import { responseSheets } from './sheets/response.js'
import { roofPlanSheets } from './sheets/roof-plan.js'
import { scheduleSheets } from './sheets/schedules.js'
import { sitePlanSheets } from './sheets/site-plan.js'
import { stationeryWishes, titleFacts } from './title-facts.js'
import { windZoneSheets } from './sheets/wind-zones.js'
import { threeLineSheets } from './three-line/three-line-sheets.js'
import { wallSheets } from './wall/wall-sheets.js'

/**
 * The drawings of the packet, in order, before the person's own documents.
 *
 * @throws StageError when a text of the project or of comments has a character that the embedded font cannot print.
 */
export function drawPacket(input: PacketInput): Sheet[] {
  checkGlyphs(input.project)
  if (input.comments !== undefined) checkTexts(input.comments, 'comments')
  const stationery = makeStationery(PAPER_SIZES[input.size], titleFacts(input), stationeryWishes(input))
  const job: SheetJob = { input, stationery }
  const oneLine = oneLineSheets(job)
  const sheets = inOrder(input.authority?.sheet_order, [
    ...sitePlanSheets(job),
    ...roofPlanSheets(job, attachmentFacts(input) === undefined ? undefined : 'S-501'),
    ...attachmentSheets(job),
    ...windZoneSheets(job),
    ...stepsOr(input.mounts?.worksheet, (steps) => structuralCalculation(job, steps)),
    ...oneLine.sheets,
    ...scheduleSheets(job, oneLine.left),
    ...stepsOr(input.wire?.worksheet, (steps) => electricalCalculation(job, steps)),
    ...labelSheets(job),
    ...(input.threeLine === true || input.project.drawings?.three_line === true ? threeLineSheets(job) : []),
    ...wallSheets(job),
  ])
  const drafts = [...responseSheets(job), ...sheets]
  const following = [...drafts.map((each) => [each.id, each.title] as const), ...indexedDocuments(input)]
  // The cover lists itself, and may be so long that it goes on at another sheet.
  let covers = coverSheets(job, [['G-001', 'Cover sheet'], ...following])
  if (covers.length > 1)
    covers = coverSheets(job, [...covers.map((each) => [each.id, each.title] as const), ...following])
  const all = [...covers, ...drafts]
  const of = input.documents.reduce((sum, { pages }) => sum + pages, all.length)
  return all.map((draft, index) => composeSheet(draft, stationery, { number: index + 1, of }))
}

/** Sheets for a calculation, where there is one. */
function stepsOr(steps: readonly Step[] = [], sheets: (steps: readonly Step[]) => SheetDraft[]): SheetDraft[] {
  return steps.length === 0 ? [] : sheets(steps)
}

/** The sheets by the letters of their disciplines as the authority wants them; those that it leaves out follow as they stood. */
function inOrder(order: readonly string[] = [], drafts: SheetDraft[]): SheetDraft[] {
  const rank = ({ id }: SheetDraft): number => {
    const place = order.indexOf(id.charAt(0))
    return place === -1 ? order.length : place
  }
  return drafts.toSorted((a, b) => rank(a) - rank(b))
}
