import type { OverheadValues } from '../../electrical/index.js'
import type { OverheadLine, Project } from '../../project/index.js'
import { SAFETY_FIGURES } from '../../tables/fieldwork/index.js'
import { label, TYPE_PT } from '../layout/index.js'
import { xy, type Box, type Primitive, type XY } from '../model/index.js'
import { planPoint } from './plan-frame.js'
import { clippedLine, clippedTo } from './plane-figures.js'
import { degreesOf, own } from '../../values/index.js'

/** How far beyond the lot a support may stand and still be on the sheet, ft. */
const BESIDE_LOT_FT = 30
/** Corners of half a circle. */
const HALF_ROUND = 12

export const overheadLines = ({ site }: Pick<Project, 'site'>): readonly (readonly [string, OverheadLine])[] =>
  site.overhead_lines === undefined || site.overhead_lines === 'none' ? [] : Object.entries(site.overhead_lines)

/** Supports that the sheet makes room for: those on the lot or next to it. */
export function supportsShown(project: Project, lot: Box): XY[] {
  return overheadLines(project)
    .flatMap(([, line]) => line.points.map(planPoint))
    .filter(
      ({ x, y }) =>
        x > lot.x - BESIDE_LOT_FT &&
        x < lot.x + lot.width + BESIDE_LOT_FT &&
        y > lot.y - BESIDE_LOT_FT &&
        y < lot.y + lot.height + BESIDE_LOT_FT,
    )
}

/** Lines with their supports and heights, each in the zone that people and ladders keep out of, as far as the sheet goes. */
export function overheadFigures(project: Project, sheet: Box): Primitive[] {
  const frame = cornersOf(sheet)
  return overheadLines(project).flatMap(([id, line]): Primitive[] => {
    const points = line.points.map(planPoint)
    const spans = points.slice(1).map((to, index) => [points[index]!, to] as const)
    const on = line.points.filter(({ x_ft: x, y_ft: y }) => isIn(sheet, xy(x, y)))
    return [
      ...spans.flatMap(([from, to]): Primitive[] => {
        const zone = clippedTo(frame, capsule(from, to, SAFETY_FIGURES.lineDistanceFt))
        return zone.length < 3 ? [] : [{ kind: 'path', points: zone, closed: true, pen: 'thin', dash: 'hidden' }]
      }),
      ...spans.flatMap((span): Primitive[] => {
        const shown = clippedLine(span, sheet)
        if (shown === undefined) return []
        const [a, b] = shown
        return [
          { kind: 'path', points: shown, pen: 'medium' },
          label((a.x + b.x) / 2, (a.y + b.y) / 2, lineName(id, line), {
            sizePt: TYPE_PT.small,
            face: 'bold',
            align: 'center',
            valign: 'middle',
            rotationDeg: upright(degreesOf(Math.atan2(b.y - a.y, b.x - a.x))),
            halo: true,
            shifts: [0, 12, -12, 24, -24, 40, -40].flatMap((dy) => [0, 30, -30, 60, -60].map((dx) => xy(dx, dy))),
          }),
        ]
      }),
      ...spans.slice(0, 1).flatMap((span): Primitive[] => {
        const shown = clippedLine(span, sheet)
        return shown === undefined ? [] : [caution(...shown)]
      }),
      ...on.flatMap((point): Primitive[] => [
        { kind: 'circle', center: planPoint(point), radiusPt: 3, pen: 'medium', fill: 'white' },
        label(point.x_ft, point.y_ft, `${point.height_ft} ft`, {
          sizePt: TYPE_PT.small,
          align: 'center',
          valign: 'middle',
          halo: true,
          shifts: [12, -12, 22, -22].flatMap((dy) => [0, 22, -22].map((dx) => xy(dx, dy))),
        }),
      ]),
    ]
  })
}

/**
 * The caution at a line, with a line to it.
 *
 * @source common practice, no source: no edition of the electrical code that was read asks for a label there, so it is on the plan
 *   and not among the labels.
 */
function caution(a: XY, b: XY): Primitive {
  return label(a.x + 0.35 * (b.x - a.x), a.y + 0.35 * (b.y - a.y), CAUTION, {
    sizePt: TYPE_PT.small,
    face: 'bold',
    maxWidthPt: 88,
    aside: true,
    shifts: [],
  })
}

const CAUTION = `CAUTION: OVERHEAD LINE, KEEP ${SAFETY_FIGURES.lineDistanceFt} FT AWAY`

/** `SERVICE DROP drop 240 V` */
export function lineName(id: string, line: OverheadLine): string {
  return `${line.kind === 'service_drop' ? 'SERVICE DROP' : 'OVERHEAD LINE'} ${id}, ${line.between_v} V`
}

/** Rows of the table: what lies below or near, what there is, what is needed. */
export function overheadRows(project: Project, values: readonly OverheadValues[]): string[][] {
  return values.map((each) => [
    each.id.replaceAll('_', ' '),
    placeWords(project, each.to),
    `${(Math.floor((each.clearance_ft - each.error_ft) * 10 + 1e-6) / 10).toFixed(1)} ft`,
    `${each.required_ft.toFixed(1)} ft`,
    each.complies ? each.section : `${each.section}: NOT KEPT`,
  ])
}

/** What a line passes, as the plan names it, from its path in the project file. */
function placeWords({ site_plan: plan }: Project, path: string): string {
  const [part = '', ...rest] = path.replace(/^site_plan\./u, '').split('.')
  const key = rest.join('.')
  if (rest.length === 0) return path.replaceAll('_', ' ')
  if (part === 'buildings') return own(plan?.buildings, key)?.name ?? key.replaceAll('_', ' ')
  if (part === 'ground_access') return `ladder place ${Number(key) + 1}`
  return `${part.replace(/s$/u, '').replaceAll('_', ' ')} ${key.replaceAll('_', ' ')}`
}

export function overheadNotes(project: Project): string[] {
  const stated = project.site.overhead_lines
  if (stated === undefined) return []
  if (stated === 'none') return ['The owner states that no overhead line passes over or near roofs and ladder places.']
  return [
    `DANGER: overhead lines. People, ladders, rails and tools keep ${SAFETY_FIGURES.lineDistanceFt} ft from every line in every direction; in the dashed zone work is done only with the line cut or covered by the utility.`,
    'Heights at supports are those of the lowest conductor over the ground; between them the line hangs lower. Needed heights are those of NEC 230.24; the authority and the utility decide.',
    'The caution at a line is no label of the electrical code; the utility may ask for other words.',
  ]
}

/** All places within a distance of a span. */
function capsule(a: XY, b: XY, byFt: number): XY[] {
  const way = Math.atan2(b.y - a.y, b.x - a.x)
  const half = (center: XY, from: number): XY[] =>
    Array.from({ length: HALF_ROUND + 1 }, (_, index) => {
      const angle = from + (index / HALF_ROUND) * Math.PI
      return xy(center.x + byFt * Math.cos(angle), center.y + byFt * Math.sin(angle))
    })
  return [...half(b, way - Math.PI / 2), ...half(a, way + Math.PI / 2)]
}

const upright = (deg: number): number =>
  Math.round((deg > 90 || deg <= -90 ? deg - Math.sign(deg) * 180 : deg) * 1000) / 1000

const cornersOf = ({ x, y, width, height }: Box): XY[] => [
  xy(x, y),
  xy(x + width, y),
  xy(x + width, y + height),
  xy(x, y + height),
]

const isIn = (box: Box, { x, y }: XY): boolean =>
  x >= box.x - 1e-6 && x <= box.x + box.width + 1e-6 && y >= box.y - 1e-6 && y <= box.y + box.height + 1e-6
