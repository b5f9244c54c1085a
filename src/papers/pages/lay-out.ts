import {
  asArtifact,
  BREAK,
  flowPieces,
  label,
  line,
  textWidthPt,
  wrapText,
  type Piece,
  type Primitive,
  type Sheet,
  type Tag,
} from '../../drawings/index.js'
import { blankPieces, boxPieces, signaturePieces } from './form-pieces.js'
import type { PageBlock, PageFigure, Paper } from './page-block.js'
import { bodyOf, PAGE_MARGIN_PT, PAGE_SIZES, PAGE_TYPE_PT, type PageSize } from './page-style.js'
import { tableRows } from './table-rows.js'
import { factsPieces, headingPieces, linePieces, listPieces, textPieces, titlePieces } from './text-pieces.js'

const AFTER_TABLE_PT = 6

/**
 * Lets a paper flow over as many pages as it needs.
 *
 * @returns A sheet for each page; its id is its number, its title what begins on it.
 * @throws RangeError for a character that the font lacks; `checkPaper` tells before.
 */
export function layOutPaper(paper: Paper, size: PageSize): Sheet[] {
  const body = bodyOf(size)
  const { textPt = PAGE_TYPE_PT.text } = paper
  const pages = flowPieces(
    paper.blocks.flatMap((block, index) => {
      const pieces = piecesOf(block, body.width, body.height, textPt)
      return paper.blocks[index - 1]?.kind === 'table' ? lower(pieces) : pieces
    }),
    body,
  )
  return pages.map((content, index) => ({
    id: String(index + 1),
    title: titleOf(content) ?? paper.title,
    size: PAGE_SIZES[size],
    frame: body,
    scaleNote: 'None',
    viewports: [],
    paper: [...content, ...stamp(paper, size), ...foot(paper, size, index + 1, pages.length)],
  }))
}

/** What follows a table stands off its last line. */
function lower([first, ...rest]: readonly Piece[]): Piece[] {
  return first === undefined ? [] : [{ ...first, gapPt: Math.max(first.gapPt, AFTER_TABLE_PT) }, ...rest]
}

function piecesOf(block: PageBlock, widthPt: number, mostPt: number, textPt: number): Piece[] {
  switch (block.kind) {
    case 'title':
      return titlePieces(block, widthPt, textPt)
    case 'heading':
      return headingPieces(block, widthPt, textPt)
    case 'text':
      return textPieces(block, widthPt, textPt)
    case 'list':
      return listPieces(block, widthPt, textPt)
    case 'facts':
      return factsPieces(block, widthPt, textPt)
    case 'table':
      return tableRows(block, widthPt, mostPt, textPt)
    case 'figure':
      return figurePieces(block, widthPt, textPt)
    case 'box':
      return boxPieces(block, widthPt, textPt)
    case 'blanks':
      return blankPieces(block, widthPt, textPt)
    case 'signatures':
      return signaturePieces(block, widthPt, textPt)
    case 'page-break':
      return [BREAK]
  }
}

/** All of a figure is one part with words of its own; its caption follows on the same page. */
function figurePieces({ says, caption, heightPt, draw }: PageFigure, widthPt: number, sizePt: number): Piece[] {
  const tag: Tag = { kind: 'Figure', says }
  const figure: Piece = {
    heightPt,
    gapPt: 8,
    keep: caption !== undefined,
    draw: (x, y) => draw(x, y, widthPt).map((each): Primitive => ({ ...each, tag })),
  }
  if (caption === undefined) return [figure]
  const set = { sizePt, face: 'plain', tag: { kind: 'P' }, color: 'grey' } as const
  const lines = linePieces(caption, widthPt, 2, set)
  return [figure, ...lines.map((each, index) => ({ ...each, keep: index < lines.length - 1 }))]
}

/** Stands above the content; what it says is read aloud with the content. */
function stamp({ stamp: words }: Paper, size: PageSize): Primitive[] {
  if (words === undefined) return []
  const { widthPt } = PAGE_SIZES[size]
  return asArtifact([
    label(widthPt / 2, PAGE_MARGIN_PT.top - 32, words, { sizePt: 16, face: 'bold', color: 'red', align: 'center' }),
  ])
}

function foot(
  { foot: words, pageWords, textPt: sizePt = PAGE_TYPE_PT.text }: Paper,
  size: PageSize,
  page: number,
  pages: number,
): Primitive[] {
  const { widthPt, heightPt } = PAGE_SIZES[size]
  const { side, bottom } = PAGE_MARGIN_PT
  const y = heightPt - bottom + 22
  const count = pageWords(page, pages)
  const room = widthPt - 2 * side - textWidthPt(count, sizePt) - 16
  const [first = '', ...rest] = wrapText(words, sizePt, 'plain', room - 12)
  return asArtifact([
    line(side, y - 6, widthPt - side, y - 6, { pen: 'hair', color: 'grey' }),
    label(side, y, rest.length === 0 ? first : `${first} …`, { sizePt, color: 'grey' }),
    label(widthPt - side, y, count, { sizePt, color: 'grey', align: 'right' }),
  ])
}

/** The headings that begin on a page, for its bookmark. */
function titleOf(content: readonly Primitive[]): string | undefined {
  const heads = content.flatMap(({ tag }) => (tag?.kind === 'H1' || tag?.kind === 'H2' ? [tag] : []))
  const words = [...new Set(heads)].flatMap(({ says }) => says ?? [])
  return words.length === 0 ? undefined : words.join('; ')
}
