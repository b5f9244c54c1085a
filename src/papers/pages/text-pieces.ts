import { label, line, rowCells, wrapText, type Color, type Face, type Piece, type Tag } from '../../drawings/index.js'
import { PAGE_LEADING, PAGE_TYPE_PT } from './page-style.js'
import type { PageBlock } from './page-block.js'

type Of<Kind extends PageBlock['kind']> = Extract<PageBlock, { kind: Kind }>

interface Setting {
  readonly sizePt: number
  readonly face: Face
  readonly tag: Tag
  readonly indentPt?: number
  readonly color?: Color
}

/** Lines of a text, each a piece, so that a long one goes on at the next page; the first two and last two stay together. */
export function linePieces(text: string, widthPt: number, gapPt: number, setting: Setting): Piece[] {
  const { sizePt, face, tag, indentPt = 0, color = 'black' } = setting
  const lines = wrapText(text, sizePt, face, widthPt - indentPt)
  return lines.map((each, index) => ({
    heightPt: sizePt * PAGE_LEADING,
    gapPt: index === 0 ? gapPt : 0,
    keep: lines.length > 1 && (index === 0 || index === lines.length - 2),
    draw: (x, y) => [label(x + indentPt, y, each, { sizePt, face, tag, color })],
  }))
}

const kept = (pieces: readonly Piece[]): Piece[] => pieces.map((each) => ({ ...each, keep: true }))

export function titlePieces({ text, below }: Of<'title'>, widthPt: number, textPt: number): Piece[] {
  const says = text.replaceAll(/\s+/gu, ' ')
  const title: Setting = { sizePt: PAGE_TYPE_PT.title, face: 'bold', tag: { kind: 'H1', says }, color: 'pine' }
  const under: Setting = { sizePt: textPt + 1, face: 'plain', tag: { kind: 'P' }, color: 'grey' }
  return [
    ...kept(linePieces(text, widthPt, 0, title)),
    ...(below === undefined ? [] : linePieces(below, widthPt, 2, under)),
    ruleBelow('pine'),
  ]
}

export function headingPieces({ text, level = 2 }: Of<'heading'>, widthPt: number, textPt: number): Piece[] {
  const sizePt = level === 2 ? PAGE_TYPE_PT.heading : textPt + 1
  const tag: Tag = { kind: level === 2 ? 'H2' : 'H3', says: text.replaceAll(/\s+/gu, ' ') }
  const lines = linePieces(text, widthPt, level === 2 ? 16 : 9, { sizePt, face: 'bold', tag, color: 'pine' })
  return kept(lines)
}

function ruleBelow(color: Color): Piece {
  return {
    heightPt: 4,
    gapPt: 2,
    draw: (x, y) => [line(x, y + 2, x + 72, y + 2, { pen: 'heavy', color, tag: { kind: 'Artifact' } })],
  }
}

export function textPieces(
  { text, sizePt: own, bold, keepNext }: Of<'text'>,
  widthPt: number,
  textPt: number,
): Piece[] {
  const sizePt = own ?? textPt
  const pieces = linePieces(text, widthPt, 5, { sizePt, face: bold === true ? 'bold' : 'plain', tag: { kind: 'P' } })
  return keepNext === true ? kept(pieces) : pieces
}

const INDENT = 16

export function listPieces({ items, mark = 'dots' }: Of<'list'>, widthPt: number, sizePt: number): Piece[] {
  const list: Tag = { kind: 'L' }
  return items.flatMap((item, index) => {
    const entry: Tag = { kind: 'LI', within: list }
    const before: Tag = { kind: 'Lbl', within: entry }
    const tag: Tag = { kind: 'LBody', within: entry }
    const sign = mark === 'numbers' ? `${index + 1}.` : mark === 'boxes' ? '☐' : '•'
    const pieces = linePieces(item, widthPt, 3, { sizePt, face: 'plain', tag, indentPt: INDENT })
    // Neither the first nor the last item stands alone.
    const isEdge = (index === 0 || index === items.length - 2) && index < items.length - 1
    return pieces.map((one, at) => {
      const piece = isEdge && at === pieces.length - 1 ? { ...one, keep: true } : one
      return at > 0
        ? piece
        : {
            ...piece,
            draw: (x, y, ...rest) => [label(x, y, sign, { sizePt, tag: before }), ...piece.draw(x, y, ...rest)],
          }
    }) satisfies Piece[]
  })
}

const FACTS_SHARE = 0.34
/** Lines of a value that stay together; a longer one goes on over pages. */
const FACT_LINES = 12

/** Labels and values in two columns without lines. */
export function factsPieces({ facts }: Of<'facts'>, widthPt: number, sizePt: number): Piece[] {
  const table: Tag = { kind: 'Table' }
  const left = widthPt * FACTS_SHARE
  const text = (lines: readonly string[], x: number, y: number, tag: Tag | undefined, color: Color) =>
    lines.map((each, at) => label(x, y + at * sizePt * PAGE_LEADING, each, { sizePt, tag, color }))
  return facts.flatMap(([name, value], index) => {
    const [head, cell] = rowCells(table, [{ kind: 'TH', scope: 'Row' }, { kind: 'TD' }])
    const names = wrapText(name, sizePt, 'plain', left - 10)
    const values = wrapText(value, sizePt, 'plain', widthPt - left)
    const parts = Math.ceil(Math.max(names.length, values.length) / FACT_LINES)
    return Array.from({ length: parts }, (_, part): Piece => {
      const cut = (lines: readonly string[]) => lines.slice(part * FACT_LINES, (part + 1) * FACT_LINES)
      return {
        heightPt: Math.max(cut(names).length, cut(values).length) * sizePt * PAGE_LEADING,
        gapPt: part > 0 ? 0 : index === 0 ? 6 : 2,
        draw: (x, y) => [...text(cut(names), x, y, head, 'grey'), ...text(cut(values), x + left, y, cell, 'black')],
      }
    })
  })
}
