import { blockHeightPt, onLayer, wrapText, type Face, type Primitive, type Tag } from '../model/index.js'
import type { Block } from './block.js'
import type { Piece } from './piece.js'
import { tablePieces } from './table-pieces.js'
import { label, line, TYPE_PT } from './text.js'

/** A table higher than this share of a column is not kept whole. */
const WHOLE_SHARE = 0.5

/** How close rows of tables and parts of a page stand. */
export interface Spacing {
  /** Room above and below the words of a cell, points. */
  readonly padPt: number
  /** Share of the usual gaps between parts. */
  readonly gapShare: number
}

/** The pieces of a part of a page, from above. */
export function piecesOf(
  block: Exclude<Block, { kind: 'break' }>,
  widthPt: number,
  mostPt: number,
  spacing: Spacing,
): Piece[] {
  return unspaced(block, widthPt, mostPt, spacing.padPt).map((piece) => ({
    ...piece,
    gapPt: piece.gapPt * spacing.gapShare,
  }))
}

function unspaced(block: Exclude<Block, { kind: 'break' }>, widthPt: number, mostPt: number, padPt: number): Piece[] {
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
      return wholeIf(
        block.whole,
        block.items.flatMap((item, index) =>
          listItem(item, block.numbered === true ? `${index + 1}.` : '•', widthPt, list),
        ),
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
        padPt,
      )
    case 'table': {
      const rows = tablePieces(block.columns, block.rows, widthPt, mostPt, padPt)
      const heightPt = rows.reduce((sum, row) => sum + row.heightPt, 0)
      return wholeIf(block.whole === true && heightPt <= WHOLE_SHARE * mostPt, rows)
    }
    case 'figure':
      return [
        {
          heightPt: block.heightPt,
          gapPt: block.gapPt ?? 8,
          ...(block.keep === true ? { keep: true } : {}),
          draw: (x, y) => block.draw(x, y, widthPt),
        },
      ]
  }
}

/** Pieces that stay together, or as they were. */
const wholeIf = (whole: boolean | undefined, pieces: readonly Piece[]): Piece[] =>
  pieces.map((piece, index) => (whole === true && index < pieces.length - 1 ? { ...piece, keep: true } : piece))

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
