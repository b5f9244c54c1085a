import { label, line, wrapText, type Color, type Piece, type Primitive, type Tag } from '../../drawings/index.js'
import type { PageBlock } from './page-block.js'
import { PAGE_LEADING } from './page-style.js'

type Of<Kind extends PageBlock['kind']> = Extract<PageBlock, { kind: Kind }>

const ARTIFACT: Tag = { kind: 'Artifact' }
const BAR = 3
const PAD = 10

/** A callout line by line on a ground with a bar at its left, so that a long one goes on at the next page. */
export function boxPieces(
  { title, lines, sizePt: own, tone = 'plain' }: Of<'box'>,
  widthPt: number,
  textPt: number,
): Piece[] {
  const sizePt = own ?? textPt
  const [ground, bar]: [Color, Color] = tone === 'warning' ? ['sand', 'clay'] : ['mist', 'pine']
  const inside = widthPt - BAR - 2 * PAD
  const set = (text: string, face: 'plain' | 'bold', gapPt: number) => {
    const tag: Tag = { kind: 'P' }
    return wrapText(text, sizePt, face, inside).map((each, index) => ({
      each,
      face,
      tag,
      gap: index === 0 ? gapPt : 0,
    }))
  }
  const all = [
    ...(title === undefined ? [] : set(title, 'bold', 0)),
    ...lines.flatMap((text, index) => set(text, 'plain', index === 0 && title === undefined ? 0 : 3)),
  ]
  const last = all.length - 1
  const pad = 6
  return all.map(({ each, face, tag, gap }, index) => {
    const above = index === 0 ? pad : gap
    const heightPt = above + sizePt * PAGE_LEADING + (index === last ? pad : 0)
    const rectangle = (x: number, y: number, width: number, fill: Color): Primitive => ({
      kind: 'rectangle',
      x,
      y,
      width,
      height: heightPt,
      fill,
      tag: ARTIFACT,
    })
    return {
      heightPt,
      gapPt: index === 0 ? 8 : 0,
      // A short one stays whole; a long one keeps its first and last two lines together.
      keep: index < last && (all.length <= 14 || index === 0 || index === last - 1),
      draw: (x, y) => [
        rectangle(x, y, widthPt, ground),
        rectangle(x, y, BAR, bar),
        label(x + BAR + PAD, y + above + (sizePt * (PAGE_LEADING - 1)) / 2, each, { sizePt, face, tag }),
      ],
    }
  })
}

const BLANK_PT = 34
const BETWEEN = 18

/** Lines to write on with their labels below, side by side. */
export function blankPieces({ rows }: Of<'blanks'>, widthPt: number, textPt: number): Piece[] {
  return rows.map((labels) =>
    blankRow(
      labels.map((text) => ({ text, share: 1 })),
      widthPt,
      textPt,
    ),
  )
}

export function signaturePieces({ people, dateLabel }: Of<'signatures'>, widthPt: number, textPt: number): Piece[] {
  return people.map(({ label: text, name }) => {
    const below = name === undefined || name === '' ? text : `${text}\n${name}`
    return blankRow(
      [
        { text: below, share: 2.2 },
        { text: dateLabel, share: 1 },
      ],
      widthPt,
      textPt,
    )
  })
}

function blankRow(
  cells: readonly { readonly text: string; readonly share: number }[],
  widthPt: number,
  sizePt: number,
): Piece {
  const room = widthPt - BETWEEN * (cells.length - 1)
  const shares = cells.reduce((sum, { share }) => sum + share, 0)
  let left = 0
  const placed = cells.map(({ text, share }) => {
    const width = (room * share) / shares
    const at = left
    left += width + BETWEEN
    return { at, width, lines: wrapText(text, sizePt, 'plain', width) }
  })
  const most = Math.max(1, ...placed.map(({ lines }) => lines.length))
  return {
    heightPt: BLANK_PT + most * sizePt * PAGE_LEADING,
    gapPt: 4,
    draw: (x, y) =>
      placed.flatMap(({ at, width, lines }): Primitive[] => {
        const tag: Tag = { kind: 'P' }
        return [
          line(x + at, y + BLANK_PT - 4, x + at + width, y + BLANK_PT - 4, { pen: 'thin', tag: ARTIFACT }),
          ...lines.map((each, row) =>
            label(x + at, y + BLANK_PT + row * sizePt * PAGE_LEADING, each, { sizePt, color: 'grey', tag }),
          ),
        ]
      }),
  }
}
