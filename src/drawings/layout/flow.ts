import { asArtifact, type Box, type Primitive } from '../model/index.js'
import { piecesOf, type Spacing } from './block-pieces.js'
import type { Block } from './block.js'
import type { Piece } from './piece.js'

/** A last page that is filled less than this is saved where tighter rows and gaps do so. */
const SPARE_SHARE = 0.25

const USUAL: Spacing = { padPt: 3, gapShare: 1 }
const TIGHT: Spacing = { padPt: 2, gapShare: 0.7 }

/**
 * Lets text and tables flow through the columns of as many pages as they need.
 *
 * @param later Area of the pages after the first when it differs, or of each of them, the last for all that follow; columns
 *   keep their width.
 * @returns Primitives by page, at least one page.
 */
export function flowBlocks(
  blocks: readonly Block[],
  first: Box,
  firstColumns = 1,
  later: Box | readonly Box[] = first,
  columnGapPt = 18,
): Primitive[][] {
  const widthPt = columnWidthPt(first, firstColumns, columnGapPt)
  // Of several rooms the highest takes what is cut or kept whole.
  const mostPt = 'height' in later ? first.height : Math.max(first.height, ...later.map(({ height }) => height))
  const flow = (spacing: Spacing): Flow => {
    const pieces = blocks.flatMap((block) =>
      block.kind === 'break'
        ? firstColumns >= block.columns
          ? [BREAK]
          : []
        : piecesOf(block, widthPt, mostPt, spacing),
    )
    return flowThrough(pieces, first, firstColumns, later, columnGapPt)
  }
  const usual = flow(USUAL)
  // Only sheets that are alike are made tighter: what stands beside a drawing goes on below it or later.
  if (later !== first || usual.pages.length === 1 || usual.lastShare >= SPARE_SHARE) return usual.pages
  const tight = flow(TIGHT)
  return tight.pages.length < usual.pages.length ? tight.pages : usual.pages
}

/** The same for pieces that are as wide as a column. */
export function flowPieces(
  pieces: readonly Piece[],
  first: Box,
  firstColumns = 1,
  later: Box | readonly Box[] = first,
  columnGapPt = 18,
): Primitive[][] {
  return flowThrough(pieces, first, firstColumns, later, columnGapPt).pages
}

interface Flow {
  readonly pages: Primitive[][]
  /** Share of the last page that is taken. */
  readonly lastShare: number
}

const areasOf = (later: Box | readonly Box[]): readonly Box[] => ('height' in later ? [later] : later)

function flowThrough(
  pieces: readonly Piece[],
  first: Box,
  firstColumns: number,
  later: Box | readonly Box[],
  columnGapPt: number,
): Flow {
  let [area, columns] = [first, firstColumns]
  const follow = areasOf(later)
  const widthPt = columnWidthPt(area, columns, columnGapPt)
  const pages: Primitive[][] = [[]]
  let [column, y] = [0, area.y]
  const bottomOf = (): number => area.y + area.height
  const nextArea = (): Box => follow[Math.min(pages.length, follow.length) - 1] ?? first
  const hasHigher = (): boolean =>
    follow.slice(Math.min(pages.length, follow.length) - 1).some(({ height }) => height > area.height)
  /** Starts the next column, or page. */
  const goOn = (): void => {
    column += 1
    if (column === columns) {
      column = 0
      const next = nextArea()
      pages.push([])
      if (next !== area) {
        area = next
        columns = Math.max(1, Math.floor((area.width + columnGapPt) / (widthPt + columnGapPt)))
      }
    }
    y = area.y
  }
  for (const [index, piece] of pieces.entries()) {
    let needed = piece.heightPt
    for (let next = index; pieces[next]?.keep === true; next++) {
      const follower = pieces[next + 1]
      if (follower !== undefined) needed += follower.gapPt + follower.heightPt
    }
    const begun = y > area.y
    let start = begun ? y + piece.gapPt : y
    if (begun && (piece.breaks === true || y + Math.min(piece.gapPt + needed, area.height) > bottomOf() + 1e-6)) goOn()
    // A piece that is higher than what is left of a page begins where there is more room.
    while (y === area.y && needed > area.height + 1e-6 && hasHigher()) goOn()
    if (y === area.y) {
      start = y
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
  const lastShare = (column + (y - area.y) / area.height) / columns
  return { pages, lastShare }
}

const columnWidthPt = ({ width }: Box, columns: number, gapPt: number): number =>
  (width - gapPt * (columns - 1)) / columns

/** A piece of no height that starts a column. */
export const BREAK: Piece = { heightPt: 0, gapPt: 0, breaks: true, draw: () => [] }
