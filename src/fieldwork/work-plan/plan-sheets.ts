import { flattenSheet, type Sheet } from '../../drawings/index.js'
import { cautionWords, quantityText, stateText, tape } from './plan-facts.js'
import type { PlanStep, WorkPlanValues } from './plan-values.js'

type Primitive = Sheet['paper'][number]
type Face = 'plain' | 'bold'

const PAGE = { name: 'letter, upright', widthPt: 612, heightPt: 792 } as const
const MARGIN = { left: 48, right: 36, top: 40, bottom: 40 } as const
const WIDTH = PAGE.widthPt - MARGIN.left - MARGIN.right
const BOTTOM = PAGE.heightPt - MARGIN.bottom
const SIZE = { title: 16, head: 11, text: 8.5, foot: 7 } as const

/** A piece of the plan that stays on one page. */
interface Piece {
  readonly heightPt: number
  readonly gapPt: number
  /** Height that must follow on the same page. */
  readonly keepPt: number
  readonly draw: (y: number) => readonly Primitive[]
}

/** The plan as upright letter sheets with boxes to tick, for the PDF renderer of the drawings. */
export function planSheets(
  title: string,
  date: string,
  values: WorkPlanValues,
  cautions: readonly string[],
  gaps: readonly string[],
): Sheet[] {
  const pages = paginate([
    textPiece(`Work plan: ${title}`, { sizePt: SIZE.title, face: 'bold', gap: 0 }),
    ...gaps.map((gap) => textPiece(`MISSING: ${gap}`, { face: 'bold', gap: 4 })),
    ...cautions.map((caution) => textPiece(`CAUTION: ${caution}`, { gap: 3 })),
    ...values.steps.flatMap(stepPieces),
    ...mountPieces(values),
    ...weekPieces(values),
  ])
  const foot = { y: BOTTOM + 10, sizePt: SIZE.foot }
  return pages.map((paper, index) =>
    sheetOf(`W-${String(index + 1).padStart(3, '0')}`, [
      ...paper,
      text(`${title}, ${date}`, { ...foot, x: MARGIN.left, maxWidthPt: WIDTH - 80 }),
      text(`page ${index + 1} of ${pages.length}`, { ...foot, x: MARGIN.left + WIDTH - 70, maxWidthPt: 70 }),
    ]),
  )
}

function stepPieces(step: PlanStep, index: number): Piece[] {
  const about = [
    `State: ${stateText(step)}`,
    ...(step.tools.length === 0 ? [] : [`Tools: ${step.tools.join('; ')}`]),
    ...(step.quantities.length === 0 ? [] : [`Quantities: ${step.quantities.map(quantityText).join('; ')}`]),
    ...(step.cautions.length === 0 ? [] : [`Caution: ${cautionWords(step)}`]),
  ]
  return [
    headPiece(`${index + 1}. ${step.title}${step.kind === 'inspection' ? ' (inspection)' : ''}`, 40),
    ...about.map((words) => textPiece(words, { gap: 2, keep: 14 })),
    ...step.tasks.map((task) => boxPiece(`${task.says}${task.source === '' ? '' : ` (${task.source})`}`)),
    ...(step.stop === null ? [] : [stopPiece(`STOP: ${step.stop}`)]),
  ]
}

function mountPieces({ mounts }: WorkPlanValues): Piece[] {
  if (mounts.length === 0) return []
  return [
    headPiece('Mount positions', 30),
    ...mounts.map((mount) =>
      boxPiece(
        `${mount.mount}: ${mount.stands_on === 'rafter' ? `rafter ${mount.rafter}` : mount.stands_on}, ${tape(mount.x_in)} from the left end of the eave, ${tape(mount.y_in)} up the slope`,
      ),
    ),
  ]
}

function weekPieces({ first_week: weeks }: WorkPlanValues): Piece[] {
  return [
    headPiece('First week by month: expected, and range of four cases in five', 30),
    ...weeks.map((week) =>
      textPiece(
        `month ${week.month}: ${week.expected_kwh.toFixed(0)} kWh (${week.p10_kwh.toFixed(0)} to ${week.p90_kwh.toFixed(0)} kWh)`,
        { gap: 1 },
      ),
    ),
  ]
}

/** Pieces from the top of a page down; one that does not fit with what it must keep begins the next. */
function paginate(pieces: readonly Piece[]): Primitive[][] {
  const pages: Primitive[][] = [[]]
  let y: number = MARGIN.top
  for (const piece of pieces) {
    const isFirst = y === MARGIN.top
    const gap = isFirst ? 0 : piece.gapPt
    if (!isFirst && y + gap + piece.heightPt + piece.keepPt > BOTTOM) {
      pages.push([])
      y = MARGIN.top
    } else y += gap
    pages.at(-1)?.push(...piece.draw(y))
    y += piece.heightPt
  }
  return pages
}

function sheetOf(id: string, paper: readonly Primitive[]): Sheet {
  return {
    id,
    title: 'Work plan',
    size: PAGE,
    frame: { x: MARGIN.left - 8, y: MARGIN.top - 8, width: WIDTH + 16, height: PAGE.heightPt - MARGIN.top },
    scaleNote: 'None',
    viewports: [],
    paper,
  }
}

/** Where words stand on a page, and how, pt. */
interface Setting {
  readonly x: number
  readonly y: number
  readonly sizePt: number
  readonly maxWidthPt: number
  /** Missing: plain. */
  readonly face?: Face
}

function text(words: string, { x, y, sizePt, maxWidthPt, face = 'plain' }: Setting): Primitive {
  return { kind: 'text', at: { x, y }, text: words, sizePt, face, maxWidthPt }
}

/** Height of wrapped words, by laying them out once. */
function heightOf(words: string, setting: Omit<Setting, 'x' | 'y'>): number {
  const lines = flattenSheet(sheetOf('W-000', [text(words, { ...setting, x: 0, y: 0 })])).marks.filter(
    (mark) => mark.kind === 'text',
  ).length
  return lines * setting.sizePt * 1.25
}

function textPiece(
  words: string,
  options: {
    readonly gap: number
    readonly sizePt?: number
    readonly indent?: number
    readonly face?: Face
    readonly keep?: number
  },
): Piece {
  const { sizePt = SIZE.text, indent = 0, face = 'plain' } = options
  const setting = { sizePt, maxWidthPt: WIDTH - indent, face }
  return {
    heightPt: heightOf(words, setting),
    gapPt: options.gap,
    keepPt: options.keep ?? 0,
    draw: (y) => [text(words, { ...setting, x: MARGIN.left + indent, y })],
  }
}

/** A heading, with the height that must follow it on its page. */
function headPiece(words: string, keep: number): Piece {
  return textPiece(words, { sizePt: SIZE.head, face: 'bold', gap: 12, keep })
}

function boxPiece(words: string): Piece {
  const body = textPiece(words, { indent: 16, gap: 3 })
  return {
    ...body,
    draw: (y) => [
      { kind: 'rectangle', x: MARGIN.left + 2, y: y + 1, width: 8, height: 8, pen: 'thin' },
      ...body.draw(y),
    ],
  }
}

function stopPiece(words: string): Piece {
  const setting = { sizePt: SIZE.text, maxWidthPt: WIDTH - 12, face: 'bold' } as const
  const heightPt = heightOf(words, setting) + 6
  return {
    heightPt,
    gapPt: 5,
    keepPt: 0,
    draw: (y) => [
      { kind: 'rectangle', x: MARGIN.left, y, width: WIDTH, height: heightPt, pen: 'medium' },
      text(words, { ...setting, x: MARGIN.left + 6, y: y + 3 }),
    ],
  }
}
