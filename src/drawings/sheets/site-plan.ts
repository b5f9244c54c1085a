import type { Project, SitePlan } from '../../project/index.js'
import { SAFETY_FIGURES } from '../../tables/fieldwork/index.js'
import {
  centredOrigin,
  counted,
  feetInches,
  SITE_SCALES,
  label,
  mapMarks,
  notesOf,
  planRoom,
  TYPE_PT,
  type Block,
  type SheetDraft,
} from '../layout/index.js'
import { boundsOf, onLayer, xy, type Box, type Primitive } from '../model/index.js'
import { continued, type SheetJob } from './job.js'
import { planPoint } from './plan-frame.js'
import { EQUIPMENT, siteFigures } from './site-figures.js'
import { obstaclesBeyond } from './site-obstacles.js'
import { overheadLines, overheadNotes, overheadRows, supportsShown } from './site-overhead.js'

/** Room on paper round the lot for street, lot lines and their lengths, points. */
const AROUND = { left: 40, right: 40, top: 38, bottom: 38 } as const
/** Height of the notes when they stand below the plan. */
const NOTES_HEIGHT = 150

/** Sheet C-101, when the project states a site plan. */
export function sitePlanSheets(job: SheetJob): SheetDraft[] {
  const plan = job.input.project.site_plan
  if (plan === undefined) return []
  const { body } = job.stationery
  const lot = [
    ...plan.lot,
    ...(plan.driveway ?? []),
    ...Object.values(plan.buildings ?? {}).flatMap((each) => each.corners),
  ].map(planPoint)
  const bounds = boundsOf([...lot, ...supportsShown(job.input.project, boundsOf(lot))])
  const placed = planRoom(
    body,
    { widthFt: bounds.width, heightFt: bounds.height },
    AROUND,
    SITE_SCALES,
    job.stationery.unitPt,
    NOTES_HEIGHT,
  )
  const { scale } = placed
  const north = (360 - (plan.up_azimuth_deg ?? 0)) % 360
  // What a reader of plans knows anyway is not worth a sheet of its own.
  const tries = [true, false].map((all) => notesOf([mapMarks(scale, north), ...notes(job, bounds, all)], placed, body))
  const least = Math.min(...tries.map(({ pages }) => pages.length))
  const { pages, room, drawBox } =
    tries.find((each) => each.pages.length === least) ?? notesOf([mapMarks(scale, north)], placed, body)
  const originPt = centredOrigin(
    xy(bounds.x, bounds.y),
    xy(bounds.x + bounds.width, bounds.y + bounds.height),
    scale,
    room,
  )
  const viewport = {
    scalePtPerFt: scale.ptPerFt,
    originPt,
    box: drawBox,
    says: siteSays(job, plan),
    primitives: siteFigures(job.input, plan, bounds),
  }
  return pages.map((paper, page) =>
    page > 0
      ? { id: continued('C-101', page), title: 'Site plan, continued', scale: 'None', paper }
      : { id: 'C-101', title: 'Site plan', scale: scale.note, viewports: [viewport], paper },
  )
}

/** The plan in words. */
function siteSays({ input }: SheetJob, plan: SitePlan): string {
  const sides = plan.lot.map((from, index) => {
    const to = plan.lot[(index + 1) % plan.lot.length] ?? from
    return feetInches(Math.hypot(to.x_ft - from.x_ft, to.y_ft - from.y_ft), 1)
  })
  const buildings = Object.keys(plan.buildings ?? {}).length
  const modules = input.arrangement.values.modules.length
  return `Plan of the lot with sides of ${sides.join(', ')}, ${counted(buildings, 'building')}, ${counted(modules, 'module')} on the roof, the equipment that the table beside it names, and the distances of the main building to the lot lines.`
}

/** @param all Whether notes that explain the view stand there too. */
function notes(job: SheetJob, sheet: Box, all: boolean): Block[] {
  const { project, wire } = job.input
  const plan = project.site_plan
  const overhead = wire?.values.overhead ?? []
  const pieces = Object.values(plan?.equipment ?? {})
  const named = new Map(pieces.map((each) => [`${each.kind} ${each.name ?? ''}`, each]))
  const keys: Block = {
    kind: 'table',
    columns: [
      { heading: 'Mark', share: 0.22, bold: true },
      { heading: 'What it is', share: 0.78 },
    ],
    rows: [
      ...[...named.values()].map((each) => [EQUIPMENT[each.kind][0], each.name ?? EQUIPMENT[each.kind][1]]),
      ...(plan?.ground_access === undefined ? [] : [['L', 'Place for a ladder to the roof pathways']]),
    ],
  }
  return [
    { kind: 'heading', text: 'Equipment' },
    keys,
    { kind: 'heading', text: 'Legend' },
    legend(project),
    { kind: 'heading', text: 'Notes' },
    {
      kind: 'list',
      numbered: true,
      items: [
        ...overheadNotes(project),
        'Made from what the owner knows of the lot; it is not a survey.',
        'Distances to the lot lines are measured from the nearest corner of the main building.',
        ...(all
          ? [
              'Roof planes and modules are seen from above, so lengths up the slope look shorter than on the roof plans.',
            ]
          : []),
        'Where the raceway crosses a roof it keeps clear of the pathways and takes the shortest way to the wall.',
        ...obstaclesBeyond(project, sheet),
      ],
    },
    ...(overhead.length === 0
      ? []
      : [{ kind: 'heading', text: 'Overhead lines' } as const, overheadTable(project, overhead)]),
  ]
}

const OVERHEAD_LEGEND: readonly (readonly [string, (x: number, y: number) => Primitive])[] = [
  [
    'Overhead line with its supports',
    (x, y) => ({ kind: 'path', points: [xy(x, y + 4.5), xy(x + 24, y + 4.5)], pen: 'medium' }),
  ],
  [
    `${SAFETY_FIGURES.lineDistanceFt} ft from an overhead line, level`,
    (x, y) => ({ kind: 'rectangle', x, y, width: 24, height: 9, pen: 'thin', dash: 'hidden' }),
  ],
]

/** Heights that are kept and needed; distances to places of work too. */
function overheadTable(project: Project, values: Parameters<typeof overheadRows>[1]): Block {
  return {
    kind: 'table',
    columns: [
      { heading: 'Line', share: 0.16 },
      { heading: 'Over or near', share: 0.24 },
      { heading: 'Is', share: 0.16 },
      { heading: 'Least', share: 0.19 },
      { heading: 'By', share: 0.25 },
    ],
    rows: overheadRows(project, values),
  }
}

function legend(project: Project): Block {
  const rows: readonly (readonly [string, (x: number, y: number) => Primitive])[] = [
    [
      'Lot line',
      (x, y) => ({ kind: 'path', points: [xy(x, y + 4.5), xy(x + 24, y + 4.5)], pen: 'heavy', dash: 'center' }),
    ],
    ['Building, at the walls', (x, y) => ({ kind: 'rectangle', x, y, width: 24, height: 9, pen: 'medium' })],
    ['Roof plane', (x, y) => ({ kind: 'rectangle', x, y, width: 24, height: 9, pen: 'thin', dash: 'dashed' })],
    ['Module', (x, y) => ({ kind: 'rectangle', x, y, width: 24, height: 9, pen: 'thin', fill: 'mid' })],
    [
      'Fire access pathway on the roof',
      (x, y) => ({
        kind: 'rectangle',
        x,
        y,
        width: 24,
        height: 9,
        pen: 'hair',
        dash: 'dashed',
        hatch: { angleDeg: 135, gapPt: 4, cross: true },
      }),
    ],
    [
      'Raceway',
      (x, y) => ({ kind: 'path', points: [xy(x, y + 4.5), xy(x + 24, y + 4.5)], pen: 'heavy', dash: 'dashed' }),
    ],
    ...(Object.values(project.roof_planes).every(({ obstructions }) => obstructions === undefined)
      ? []
      : [
          [
            'Chimney, vent or other thing on the roof',
            (x: number, y: number): Primitive => ({ kind: 'rectangle', x, y, width: 9, height: 9, pen: 'thin' }),
          ] as const,
        ]),
    ...(overheadLines(project).length === 0 ? [] : OVERHEAD_LEGEND),
  ]
  return {
    kind: 'figure',
    heightPt: rows.length * 15,
    draw: (x, y, width) =>
      onLayer(
        'legend',
        rows.flatMap(([text, draw], index) => [
          draw(x, y + index * 15),
          label(x + 32, y + index * 15 + 4.5, text, {
            sizePt: TYPE_PT.small,
            valign: 'middle',
            maxWidthPt: width - 32,
          }),
        ]),
      ),
  }
}
