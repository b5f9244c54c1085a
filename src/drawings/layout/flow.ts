import {
  asArtifact,
  blockHeightPt,
  onLayer,
  wrapText,
  type Box,
  type Face,
  type Primitive,
  type Tag,
} from '../model/index.js'
import type { Block } from './block.js'
import type { Piece } from './piece.js'
import { tablePieces } from './table-pieces.js'
import { label, line, TYPE_PT } from './text.js'

/** A table higher than this share of a column is not kept whole. */
const WHOLE_SHARE = 0.5

/**
 * Lets text and tables flow through the columns of as many pages as they need.
 *
 * @param later Area of the pages after the first when it differs; columns keep their width.
 * @returns Primitives by page, at least one page.
 */
export function flowBlocks(
  blocks: readonly Block[],
  first: Box,
  firstColumns = 1,
  later: Box = first,
  columnGapPt = 18,
): Primitive[][] {
  const widthPt = columnWidthPt(first, firstColumns, columnGapPt)
  const pieces = blocks.flatMap((block) =>
    block.kind === 'break' ? (firstColumns >= block.columns ? [BREAK] : []) : piecesOf(block, widthPt, first.height),
  )
  return flowPieces(pieces, first, firstColumns, later, columnGapPt)
}

/** The same for pieces that are as wide as a column. */
export function flowPieces(
  pieces: readonly Piece[],
  first: Box,
  firstColumns = 1,
  later: Box = first,
  columnGapPt = 18,
): Primitive[][] {
  let [area, columns] = [first, firstColumns]
  const widthPt = columnWidthPt(area, columns, columnGapPt)
  const pages: Primitive[][] = [[]]
  let [column, y] = [0, area.y]
  const bottomOf = (): number => area.y + area.height
  for (const [index, piece] of pieces.entries()) {
    const atTop = y === area.y
    const gap = atTop ? 0 : piece.gapPt
    let needed = gap + piece.heightPt
    for (let next = index; pieces[next]?.keep === true; next++) {
      const follower = pieces[next + 1]
      if (follower !== undefined) needed += follower.gapPt + follower.heightPt
    }
    let start = y + gap
    if ((piece.breaks === true || y + Math.min(needed, area.height) > bottomOf() + 1e-6) && !atTop) {
      column += 1
      if (column === columns) {
        column = 0
        pages.push([])
        if (later !== first) {
          area = later
          columns = Math.max(1, Math.floor((later.width + columnGapPt) / (widthPt + columnGapPt)))
        }
      }
      start = area.y
      if (piece.header !== undefined) {
        const x = area.x + column * (widthPt + columnGapPt)
        pages.at(-1)?.push(...asArtifact(piece.header.draw(x, start)))
        start += piece.header.heightPt
      }
    }
    const x = area.x + column * (widthPt + columnGapPt)
    pages.at(-1)?.push(...piece.draw(x, start))
    y = start + piece.heightPt
  }
  return pages
}

const columnWidthPt = ({ width }: Box, columns: number, gapPt: number): number =>
  (width - gapPt * (columns - 1)) / columns

/** A piece of no height that starts a column. */
export const BREAK: Piece = { heightPt: 0, gapPt: 0, breaks: true, draw: () => [] }

function piecesOf(block: Exclude<Block, { kind: 'break' }>, widthPt: number, mostPt: number): Piece[] {
  switch (block.kind) {
    case 'heading': {
      const lines = wrapText(block.text, TYPE_PT.head, 'bold', widthPt).length
      const height = blockHeightPt(lines, TYPE_PT.head) + 3
      const draw: Piece['draw'] = (x, y) =>
        onLayer<Primitive>('title', [
          label(x, y, block.text, { sizePt: TYPE_PT.head, face: 'bold', maxWidthPt: widthPt, tag: { kind: 'H2' } }),
          line(x, y + height, x + widthPt, y + height, { pen: 'medium' }),
        ])
      return [{ heightPt: height, gapPt: 12, keep: true, draw }]
    }
    case 'text':
      return paragraph(block.text, widthPt, block.bold === true ? 'bold' : 'plain')
    case 'list': {
      const list: Tag = { kind: 'L' }
      return block.items.flatMap((item, index) =>
        listItem(item, block.numbered === true ? `${index + 1}.` : '•', widthPt, list),
      )
    }
    case 'facts':
      return tablePieces(
        [
          { heading: '', share: 0.34, bold: true },
          { heading: '', share: 0.66 },
        ],
        block.facts,
        widthPt,
        mostPt,
      )
    case 'table': {
      const rows = tablePieces(block.columns, block.rows, widthPt, mostPt)
      const heightPt = rows.reduce((sum, row) => sum + row.heightPt, 0)
      return block.whole !== true || heightPt > WHOLE_SHARE * mostPt
        ? rows
        : rows.map((row, index) => (index < rows.length - 1 ? { ...row, keep: true } : row))
    }
    case 'figure':
      return [{ heightPt: block.heightPt, gapPt: block.gapPt ?? 8, draw: (x, y) => block.draw(x, y, widthPt) }]
  }
}

function paragraph(text: string, widthPt: number, face: Face): Piece[] {
  const lines = wrapText(text, TYPE_PT.text, face, widthPt)
  const tag: Tag = { kind: 'P' }
  return lines.map((each, index) => ({
    heightPt: TYPE_PT.text * 1.22,
    gapPt: index === 0 ? 5 : 0,
    draw: (x, y) => onLayer('note', [label(x, y, each, { face, tag })]),
  }))
}

function listItem(text: string, mark: string, widthPt: number, list: Tag): Piece[] {
  const item: Tag = { kind: 'LI', within: list }
  const [before, body]: [Tag, Tag] = [
    { kind: 'Lbl', within: item },
    { kind: 'LBody', within: item },
  ]
  const indent = 14
  const lines = wrapText(text, TYPE_PT.text, 'plain', widthPt - indent)
  return lines.map((each, index) => ({
    heightPt: TYPE_PT.text * 1.22,
    gapPt: index === 0 ? 3.5 : 0,
    keep: index < lines.length - 1,
    draw: (x, y) =>
      onLayer('note', [
        ...(index === 0 ? [label(x, y, mark, { tag: before })] : []),
        label(x + indent, y, each, { tag: body }),
      ]),
  }))
}
