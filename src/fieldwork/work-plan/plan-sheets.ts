import { flattenSheet, type Sheet } from '../../drawings/index.js'
import { cautionWords, quantityText, stateText, tape } from './plan-facts.js'
import type { WorkPlanValues } from './plan-values.js'

type Primitive = Sheet['paper'][number]

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
  const pieces = [
    textPiece(`Work plan: ${title}`, SIZE.title, 0, { face: 'bold', gap: 0 }),
    ...gaps.map((gap) => textPiece(`MISSING: ${gap}`, SIZE.text, 0, { face: 'bold' })),
    ...cautions.map((caution) => textPiece(`CAUTION: ${caution}`, SIZE.text, 0, { gap: 3 })),
    ...values.steps.flatMap((step, index) => [
      textPiece(`${index + 1}. ${step.title}${step.kind === 'inspection' ? ' (inspection)' : ''}`, SIZE.head, 0, {
        face: 'bold',
        gap: 12,
        keep: 40,
      }),
      textPiece(`State: ${stateText(step)}`, SIZE.text, 0, { gap: 2, keep: 14 }),
      ...(step.tools.length === 0
        ? []
        : [textPiece(`Tools: ${step.tools.join('; ')}`, SIZE.text, 0, { gap: 2, keep: 14 })]),
      ...(step.quantities.length === 0
        ? []
        : [
            textPiece(`Quantities: ${step.quantities.map(quantityText).join('; ')}`, SIZE.text, 0, {
              gap: 2,
              keep: 14,
            }),
          ]),
      ...(step.cautions.length === 0
        ? []
        : [textPiece(`Caution: ${cautionWords(step)}`, SIZE.text, 0, { gap: 2, keep: 14 })]),
      ...step.tasks.map((task) => boxPiece(`${task.says}${task.source === '' ? '' : ` (${task.source})`}`)),
      ...(step.stop === null ? [] : [stopPiece(`STOP: ${step.stop}`)]),
    ]),
    ...(values.mounts.length === 0
      ? []
      : [textPiece('Mount positions', SIZE.head, 0, { face: 'bold', gap: 12, keep: 30 })]),
    ...values.mounts.map((mount) =>
      boxPiece(
        `${mount.mount}: rafter ${mount.rafter}, ${tape(mount.x_in)} from the left end of the eave, ${tape(mount.y_in)} up the slope`,
      ),
    ),
    textPiece('First week by month: expected, and range of four cases in five', SIZE.head, 0, {
      face: 'bold',
      gap: 12,
      keep: 30,
    }),
    ...values.first_week.map((week) =>
      textPiece(
        `month ${week.month}: ${week.expected_kwh.toFixed(0)} kWh (${week.p10_kwh.toFixed(0)} to ${week.p90_kwh.toFixed(0)} kWh)`,
        SIZE.text,
        0,
        { gap: 1 },
      ),
    ),
  ]
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
  return pages.map((paper, index) =>
    sheetOf(`W-${String(index + 1).padStart(3, '0')}`, [
      ...paper,
      text(`${title}, ${date}`, MARGIN.left, BOTTOM + 10, SIZE.foot, WIDTH - 80),
      text(`page ${index + 1} of ${pages.length}`, MARGIN.left + WIDTH - 70, BOTTOM + 10, SIZE.foot, 70),
    ]),
  )
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

function text(
  words: string,
  x: number,
  y: number,
  sizePt: number,
  maxWidthPt: number,
  face: 'plain' | 'bold' = 'plain',
): Primitive {
  return { kind: 'text', at: { x, y }, text: words, sizePt, face, maxWidthPt }
}

/** Height of wrapped words, by laying them out once. */
function heightOf(words: string, sizePt: number, widthPt: number, face: 'plain' | 'bold'): number {
  const lines = flattenSheet(sheetOf('W-000', [text(words, 0, 0, sizePt, widthPt, face)])).marks.filter(
    (mark) => mark.kind === 'text',
  ).length
  return lines * sizePt * 1.25
}

function textPiece(
  words: string,
  sizePt: number,
  indent: number,
  options: { face?: 'plain' | 'bold'; gap?: number; keep?: number } = {},
): Piece {
  const face = options.face ?? 'plain'
  return {
    heightPt: heightOf(words, sizePt, WIDTH - indent, face),
    gapPt: options.gap ?? 4,
    keepPt: options.keep ?? 0,
    draw: (y) => [text(words, MARGIN.left + indent, y, sizePt, WIDTH - indent, face)],
  }
}

function boxPiece(words: string): Piece {
  const body = textPiece(words, SIZE.text, 16, { gap: 3 })
  return {
    ...body,
    draw: (y) => [
      { kind: 'rectangle', x: MARGIN.left + 2, y: y + 1, width: 8, height: 8, pen: 'thin' },
      ...body.draw(y),
    ],
  }
}

function stopPiece(words: string): Piece {
  const heightPt = heightOf(words, SIZE.text, WIDTH - 12, 'bold') + 6
  return {
    heightPt,
    gapPt: 5,
    keepPt: 0,
    draw: (y) => [
      { kind: 'rectangle', x: MARGIN.left, y, width: WIDTH, height: heightPt, pen: 'medium' },
      text(words, MARGIN.left + 6, y + 3, SIZE.text, WIDTH - 12, 'bold'),
    ],
  }
}
