import { counted, label, TYPE_PT, type Block, type SheetDraft } from '../layout/index.js'
import { inPart, onLayer, type Box, type Primitive, type Tag } from '../model/index.js'
import { labelMarks } from '../labels/label-marks.js'
import { continued, type SheetJob } from './job.js'
import { oneLineDiagram } from './one-line-diagram.js'
import { rowHeightPt } from './one-line-row.js'
import type { DiagramJob } from './one-line-job.js'
import { placesFor, type Places } from './one-line-places.js'
import { oneLineSources, type OneLineSource } from './one-line-sources.js'
import { oneLineLegend } from './one-line-legend.js'
import { placeSections, type Sections } from './one-line-sections.js'
import { conductorSchedule } from './conductor-schedule.js'
import { equipmentTable } from './schedules.js'
import { storageDiagram } from './one-line-storage.js'
import { treeSheets } from '../tree/tree-sheets.js'
import { wireTags } from '../diagram/wire-tags.js'

const CONTINUED = 'One-line diagram, continued'
/** Share of the sheet that the diagram may take before it goes on at another sheet. */
const DIAGRAM_SHARE = 0.66
/** The same on a narrow sheet, whose tables stand on sheets of their own. */
const STACKED_SHARE = 0.92
/** Room above, below and for grounding, points. */
const AROUND_PT = 150
/** Room that the words under an inverter may need before the next one, points. */
const UNIT_GAP_PT = 40
/** Room above and below the rows of a sheet that goes on, points. */
const ROWS_AROUND_PT = 56

/** Sheets E-601, and the ratings of the equipment where they have no room there without a sheet of their own. */
interface OneLine {
  readonly sheets: SheetDraft[]
  readonly left: readonly Block[]
}

/** Sheet E-601: the diagram from the circuits, and its symbols, the conductors by tag and the ratings below it. */
export function oneLineSheets(job: SheetJob): OneLine {
  const wiring = job.input.wire?.values
  if (wiring === undefined) return { sheets: [], left: [] }
  const { body } = job.stationery
  const sources = oneLineSources(job.input, wiring)
  const places = placesFor(body.width, wiring)
  const roomOf = (share: number): number => body.height * share - AROUND_PT + 54
  const usual = roomOf(places.stacked ? STACKED_SHARE : DIAGRAM_SHARE)
  // Sheets that go on have rows only.
  const roomThen = body.height - ROWS_AROUND_PT
  // One diagram on one sheet before symbols below it.
  const isWhole = grouped(sources, places, body.width, roomOf(STACKED_SHARE), roomThen).length === 1
  const room = isWhole ? roomOf(STACKED_SHARE) : usual
  const groups = grouped(sources, places, body.width, room, roomThen)
  const tags = wireTags(wiring)
  const labels = labelMarks(job.input.project, wiring)
  const diagrams: { readonly drawn: readonly Primitive[]; readonly bottom: number }[] = []
  for (const [index, group] of groups.entries()) {
    const heights = group.reduce((sum, source) => sum + rowHeightPt(source, body.width, places, index === 0), 0)
    const more = groups.length > 1
    const spreadPt = Math.max(
      0,
      Math.min(34, ((index > 0 ? roomThen : heights > usual ? room : usual) - heights) / group.length),
    )
    const box = { ...body, y: body.y + (more ? 12 : 0) }
    const diagram: DiagramJob = {
      input: job.input,
      wiring,
      tags,
      labels,
      box,
      places,
      withConnection: index === 0,
      further: index === 0 ? sources.length - group.length : 0,
      spreadPt,
      note: `TO ${wiring.combiner === null ? 'MAIN PANEL' : 'AC COMBINER'}, SHEET E-601`,
    }
    const heading = more
      ? [
          label(
            body.x,
            body.y,
            `${sourceNumbers(firstOf(groups, index), group.length)} of ${sources.length}; sheets E-601 and following are one diagram`,
            { sizePt: TYPE_PT.small },
          ),
        ]
      : []
    const { drawn: figure, bottom } = oneLineDiagram(diagram, group)
    const drawn = [...heading, ...inPart(diagramTag(group.length, sources.length), onLayer('oneLine', figure))]
    diagrams.push({ drawn, bottom })
  }
  const [one = { drawn: [], bottom: body.y }, ...further] = diagrams
  const tree = treeSheets(job.input.project, wiring, one.bottom + 20, body)
  const sections: Sections = {
    legend: oneLineLegend({ input: job.input, wiring, sources }, body.width),
    conductors: [
      ...storageDiagram(wiring, labels),
      { kind: 'heading', text: 'Conductors by tag' },
      conductorSchedule(wiring),
    ],
    ratings: [{ kind: 'heading', text: 'Ratings' }, equipmentTable(job.input)],
  }
  const treePart = (drawn: readonly Primitive[]): Primitive[] => inPart({ ...TREE }, onLayer('oneLine', drawn))
  const drawn = [
    { drawn: [...one.drawn, ...treePart(tree.below?.drawn ?? [])], bottom: tree.below?.bottom ?? one.bottom },
    ...further,
    ...tree.sheets.map((sheet) => ({ drawn: treePart(sheet.drawn), bottom: sheet.bottom })),
  ]
  const rooms = drawn.map(({ bottom }) => lowerPart(body, bottom + 14))
  const { below, more, left } = placeSections(sections, rooms, body)
  const papers = [...drawn.map((each, index) => [...each.drawn, ...(below[index] ?? [])]), ...more]
  const sheets = papers.map((paper, index) => ({
    id: continued('E-601', index),
    title: index === 0 ? 'One-line diagram' : CONTINUED,
    scale: 'None',
    paper,
  }))
  return { sheets, left }
}

const sourceNumbers = (first: number, count: number): string =>
  count === 1 ? `Source ${first}` : `Sources ${first} to ${first + count - 1}`

const lowerPart = (body: Box, top: number): Box => ({ ...body, y: top, height: body.y + body.height - top })

/** The diagram in words; what each conductor is stands in the table below it. */
function diagramTag(shown: number, all: number): Tag {
  const which = shown === all ? counted(all, 'source') : `${shown} of ${counted(all, 'source')}`
  return {
    kind: 'Figure',
    says: `One-line diagram, not to scale: ${which} from the modules through inverters, boxes and devices to the main panel and the utility, with grounding; the circled tags are those of the table of conductors.`,
  }
}

const TREE: Tag = {
  kind: 'Figure',
  says: 'Diagram of the installation, not to scale: service, panels, feeders and breakers with their ratings, as the tables list them.',
}

function grouped(
  sources: readonly OneLineSource[],
  places: Places,
  widthPt: number,
  firstPt: number,
  thenPt: number,
): OneLineSource[][] {
  const groups: OneLineSource[][] = [[]]
  let used = 0
  for (const source of sources) {
    const before = groups.at(-1)?.at(-1)?.unit
    const gap = source.unit !== undefined && before !== undefined && source.unit !== before ? UNIT_GAP_PT : 0
    const height = gap + rowHeightPt(source, widthPt, places, groups.length === 1)
    const roomPt = groups.length === 1 ? firstPt : thenPt
    // Strings of one inverter stay on one sheet.
    const tied = source.unit !== undefined && groups.at(-1)?.at(-1)?.unit === source.unit
    if (used + height > roomPt && !tied && (groups.at(-1)?.length ?? 0) > 0) {
      groups.push([])
      used = 0
    }
    groups.at(-1)?.push(source)
    used += used === 0 ? rowHeightPt(source, widthPt, places, groups.length === 1) : height
  }
  return groups
}

function firstOf(groups: readonly (readonly unknown[])[], index: number): number {
  return 1 + groups.slice(0, index).reduce((sum, group) => sum + group.length, 0)
}
