import {
  centredOrigin,
  DETAIL_SCALES,
  flowBlocks,
  inches,
  label,
  largestScale,
  TYPE_PT,
  type Block,
  type SheetDraft,
} from '../layout/index.js'
import { onLayer, onPaper, wrapText, xy, type Box, type Primitive, type Viewport, inCapitals } from '../model/index.js'
import { attachmentFacts, type AttachmentFacts } from './attachment-facts.js'
import { attachmentSection, type Detail } from './attachment-section.js'
import { endClamp, midClamp } from './clamp-details.js'
import { continued, type SheetJob } from './job.js'
import { railsApart } from './roof-plan.js'
import { noteColumn } from './note-column.js'
import { feetOf } from '../../values/index.js'
import { blocks, checkBlocks } from './attachment-tables.js'

/** Share of the width that the details take, and of the height that the section has of it. */
const DETAILS_SHARE = 0.58
const SECTION_SHARE = 0.62
/** Least width of a table that stands beside the details, points. */
const LEAST_TABLE = 220
/** On a wider sheet the tables stand in two columns, points. */
const TWO_COLUMNS = 560

/** Room beside a detail: its notes at the right as a share of the width, dimensions left and right, above and below. */
interface DetailRoom {
  readonly notes: number
  readonly leftPt: number
  readonly rightPt: number
  readonly upPt: number
}
const SECTION_ROOM: DetailRoom = { notes: 0.3, leftPt: 44, rightPt: 12, upPt: 26 }
const CLAMP_ROOM: DetailRoom = { notes: 0.42, leftPt: 6, rightPt: 14, upPt: 30 }

/** Sheet S-501: section at a mount, the clamps, and the numbers that they must keep. */
export function attachmentSheets(job: SheetJob): SheetDraft[] {
  const facts = attachmentFacts(job.input)
  if (facts === undefined) return []
  const { body, unitPt } = job.stationery
  const width = body.width * DETAILS_SHARE
  const left: Box = { ...body, width, height: body.height * SECTION_SHARE }
  const right: Box = { ...body, x: body.x + width + 14, width: body.width - width - 14 }
  const half = (width - 12) / 2
  const clamps = [0, 1].map((index): Box => ({
    x: left.x + index * (half + 12),
    y: left.y + left.height + 8,
    width: half,
    height: body.height - left.height - 8,
  }))
  const drawn = [
    placeDetail(1, sectionName(facts), attachmentSection(facts), left, SECTION_ROOM, unitPt),
    placeDetail(2, 'Between two modules', midClamp(facts), clamps[0] ?? left, CLAMP_ROOM, unitPt),
    placeDetail(3, 'End of a row', endClamp(facts), clamps[1] ?? left, CLAMP_ROOM, unitPt),
  ]
  const values = job.input.mounts?.values
  const tables = [...(values === undefined ? [] : checkBlocks(values)), ...railsApart(job)]
  return pagesOf(blocks(job, facts), tables, right, body).map((paper, page) =>
    page > 0
      ? { id: continued('S-501', page), title: 'Attachment and rail details, continued', scale: 'None', paper }
      : {
          id: 'S-501',
          title: 'Attachment and rail details',
          scale: 'As noted',
          viewports: drawn.map((each) => each.viewport),
          paper: [...paper, ...drawn.flatMap((each) => each.paper)],
        },
  )
}

/**
 * Facts beside the details, and tables on sheets that follow, as they need more width. The last of them stand beside the
 * details too where this does without a sheet.
 */
function pagesOf(facts: readonly Block[], tables: readonly Block[], beside: Box, body: Box): Primitive[][] {
  const starts = (beside.width < LEAST_TABLE ? [] : tables).flatMap(({ kind }, index) =>
    kind === 'heading' ? [index] : [],
  )
  const ways = [tables.length, ...starts.toReversed()].map((from) => [
    ...flowBlocks([...facts, ...tables.slice(from)], beside, 1, body),
    ...(from === 0 ? [] : flowBlocks(tables.slice(0, from), body, body.width > TWO_COLUMNS ? 2 : 1)),
  ])
  const fewest = Math.min(...ways.map(({ length }) => length))
  return ways.find(({ length }) => length === fewest) ?? []
}

function sectionName({ mount }: AttachmentFacts): string {
  return mount.kind === 'standing_seam_clamp'
    ? 'Section across a seam, looking up the slope'
    : mount.kind === 'deck'
      ? 'Section across the sheathing, looking up the slope'
      : 'Section across the rafter, looking up the slope'
}

/** A detail in its part of the sheet: drawing, notes at its right side, number, name and scale. */
function placeDetail(
  number: number,
  name: string,
  detail: Detail,
  box: Box,
  around: DetailRoom,
  unitPt: number,
): { viewport: Viewport; paper: Primitive[] } {
  const notesPt = box.width * around.notes
  const named = wrapText(inCapitals(name), TYPE_PT.text, 'bold', box.width - 30)
  const bottom = box.y + box.height - 18 - named.length * TYPE_PT.text * 1.22
  const room = {
    x: box.x + around.leftPt,
    y: box.y + around.upPt,
    width: box.width - notesPt - around.leftPt - around.rightPt,
    height: bottom - box.y - 2 * around.upPt,
  }
  const [widthFt, heightFt] = [feetOf(detail.high.x - detail.low.x), feetOf(detail.high.y - detail.low.y)]
  const scale = largestScale(DETAIL_SCALES, widthFt, heightFt, room, unitPt)
  const low = xy(feetOf(detail.low.x), feetOf(detail.low.y))
  const high = xy(feetOf(detail.high.x), feetOf(detail.high.y))
  const originPt = centredOrigin(low, high, scale, room)
  const viewport: Viewport = {
    scalePtPerFt: scale.ptPerFt,
    originPt,
    box,
    hides: true,
    says: `${name}, ${inches(12 * widthFt)} wide and ${inches(12 * heightFt)} high as drawn; its parts: ${detail.notes.map((note) => note.text).join('; ')}.`,
    primitives: onLayer('detail', detail.primitives),
  }
  const tips = detail.notes.map((note) => ({
    tip: onPaper(viewport, xy(feetOf(note.at.x), feetOf(note.at.y))),
    text: note.text,
  }))
  const column = { x: box.x + box.width - notesPt + 4, top: box.y + 2, bottom: bottom - 4, widthPt: notesPt - 6 }
  const notes = noteColumn(tips, { ...column, side: 'right' })
  return {
    viewport,
    paper: [
      ...notes,
      ...onLayer<Primitive>('title', [
        { kind: 'circle', center: xy(box.x + 12, bottom + 13), radiusPt: 10, pen: 'medium' },
        label(box.x + 12, bottom + 13, String(number), {
          face: 'bold',
          sizePt: TYPE_PT.head,
          align: 'center',
          valign: 'middle',
        }),
        label(box.x + 28, bottom + 4, named.join('\n'), { face: 'bold' }),
        label(box.x + 28, box.y + box.height - 1, `SCALE ${scale.note}`, { sizePt: TYPE_PT.small, valign: 'bottom' }),
      ]),
    ],
  }
}
