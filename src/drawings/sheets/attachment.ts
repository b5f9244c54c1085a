import type { Mount } from '../../project/index.js'
import type { MountValues } from '../../structure/index.js'
import {
  centredOrigin,
  DETAIL_SCALES,
  flowBlocks,
  inches,
  label,
  largestScale,
  plainNumber,
  TYPE_PT,
  type Block,
  type SheetDraft,
} from '../layout/index.js'
import { onLayer, onPaper, wrapText, xy, type Box, type Primitive, type Viewport } from '../model/index.js'
import { attachmentFacts, type AttachmentFacts } from './attachment-facts.js'
import { attachmentSection, type Detail } from './attachment-section.js'
import { endClamp, midClamp } from './clamp-details.js'
import { continued, type SheetJob } from './job.js'
import { railsApart } from './roof-plan.js'
import { noteColumn } from './note-column.js'
import { framingRows } from './framing-rows.js'
import { rafterDocuments } from './rafter-documents.js'
import { feetOf } from '../../values/index.js'

/** Share of the width that the details take, and of the height that the section has of it. */
const DETAILS_SHARE = 0.58
const SECTION_SHARE = 0.62
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
  const starts = tables.flatMap(({ kind }, index) => (kind === 'heading' ? [index] : []))
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
  const named = wrapText(name.toUpperCase(), TYPE_PT.text, 'bold', box.width - 30)
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

/** How the mounts of a kind are set. */
const SETTING: Readonly<Record<NonNullable<Mount['kind']>, readonly string[]>> = {
  rafter_screw: [
    'Drill the lead hole at right angles to the roof, fill it with sealant, and turn the screw in; never drive it with a hammer.',
    'A screw that does not bite is in no rafter: take it out, seal the hole, flash it, and find the rafter.',
  ],
  standing_seam_clamp: [
    'Set each clamp square on the seam and tighten its setscrews to the torque of its sheet for this metal and gauge; it makes no hole.',
    'No clamp sits on the end of a panel or bridges two panels; what the panel needs to move stays free.',
  ],
  tile_hook: [
    'Lift the tile, find the rafter, screw the base on with both screws in line with the grain, and grind the tile so that it lies flat.',
    'The hook keeps its gap to the tile below; the underlay is sealed round its base.',
  ],
  deck: [
    'Set each mount where its test holds: on sound, dry sheathing of the stated kind and thickness, with all of its screws.',
    'A screw that spins holds nothing: move the mount, seal and flash the holes.',
  ],
}

const NOTES = [
  'Rail, clamp and foot profiles are drawn in general form; their sheets show their true shape and torque.',
  'The listing of rail, clamps and feet covers bonding of module frames and rails, or bonding jumpers are added.',
]

function blocks(job: SheetJob, facts: AttachmentFacts): Block[] {
  const values = job.input.mounts?.values
  const rows = [
    ...productRows(facts),
    ...(values === undefined ? [] : mountRows(values)),
    ...framingRows(job.input.project),
    ...rafterDocuments(job.input).map((text): Row => ['Rafters', text]),
  ]
  return [
    { kind: 'heading', text: 'Attachment' },
    { kind: 'facts', facts: rows },
    { kind: 'heading', text: 'Notes' },
    { kind: 'list', numbered: true, items: [...SETTING[facts.mount.kind ?? 'rafter_screw'], ...NOTES] },
  ]
}

type Row = [string, string]

/** What is screwed to the roof, as the project states it. */
function productRows({ planeId, mountId, mount, railId, rail }: AttachmentFacts): Row[] {
  const { lag } = mount
  const rows: Row[] = [
    ['Roof plane', `${planeId} (typical of all)`],
    ['Mount', [mount.name ?? mountId, mount.sheet].filter((each) => each !== undefined).join('; ')],
    ['Rail', [rail.name ?? railId, rail.alloy, rail.sheet].filter((each) => each !== undefined).join('; ')],
  ]
  const { fire } = rail
  if (fire?.class !== undefined) {
    rows.push([
      'Fire class',
      `${fire.class} with modules of fire type ${(fire.module_types ?? []).join(', ')}; listing ${fire.listing ?? 'not stated'}`,
    ])
  }
  if (mount.kind !== undefined) rows.push(['Kind of mount', mount.kind.replaceAll('_', ' ')])
  if (mount.test_report?.id !== undefined) {
    rows.push(['Test report', `${mount.test_report.id}, ${mount.test_report.date ?? 'no date'}`])
  }
  const torque = mount.seam_clamp?.setscrew_torque_lb_in
  if (torque !== undefined) rows.push(['Setscrew torque', `${plainNumber(torque)} lb-in`])
  if (lag === undefined || !hasLags(mount)) return rows
  rows.push(['Lag screw', `${lag.count} of ${lag.size} x ${inches(lag.length_in)} per mount`])
  if (lag.lead_hole_in !== undefined) rows.push(['Lead hole', inches(lag.lead_hole_in)])
  return rows
}

/** Whether lag screws hold it. */
function hasLags({ kind }: Mount): boolean {
  return kind === undefined || kind === 'rafter_screw' || kind === 'tile_hook'
}

/** What the mounts were computed to. */
function mountRows(values: MountValues): Row[] {
  const { lag, fastener, weakest_link: weakest } = values
  const screws: Row[] =
    lag === null
      ? [['Fastener', `${fastener.each} x ${fastener.name} per mount, into the ${fastener.into}`]]
      : [
          ['Thread in the rafter', `${inches(lag.thread_in_rafter_in)} without the tip`],
          ['Lead hole allowed', `${inches(lag.lead_hole_least_in, 64)} to ${inches(lag.lead_hole_most_in, 64)}`],
          ['From the middle of the rafter', `at most ${inches(lag.centring_tolerance_in)}`],
        ]
  return [
    ...screws,
    [
      'Largest distance of mounts',
      Object.entries(values.max_span_in)
        .map(([zone, span]) => `${zone.replaceAll('_', ' ')}: ${inches(span)}`)
        .join('; '),
    ],
    ['Weakest link', `${weakest.name} at ${weakest.where}, ${plainNumber(100 * weakest.ratio, 0)} % used`],
    [
      'Added dead load',
      `${plainNumber(values.added_dead_load_psf)} psf of module area; array ${plainNumber(values.array_weight_lb, 0)} lb`,
    ],
  ]
}

function checkBlocks({ checks }: MountValues): Block[] {
  return [
    { kind: 'heading', text: 'Checks' },
    {
      kind: 'table',
      columns: [
        { heading: 'Part', share: 0.24 },
        { heading: 'Demand', share: 0.16, align: 'right' },
        { heading: 'Limit', share: 0.16, align: 'right' },
        { heading: 'Limit is', share: 0.13 },
        { heading: 'Used', share: 0.09, align: 'right' },
        { heading: 'Where', share: 0.32 },
      ],
      rows: checks.map((check) => [
        check.name,
        `${plainNumber(check.demand)} ${check.unit}`,
        `${plainNumber(check.capacity)} ${check.unit}`,
        check.limit_is,
        `${plainNumber(100 * check.ratio, 0)} %`,
        check.where,
      ]),
    },
  ]
}
