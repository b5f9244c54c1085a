import {
  label,
  line,
  rowCells,
  wrapText,
  type Face,
  type Piece,
  type Primitive,
  type Tag,
} from '../../drawings/index.js'
import type { PageBlock, PageColumn } from './page-block.js'
import { PAGE_LEADING } from './page-style.js'

const PAD = { side: 4, above: 2.5 } as const

interface Placed extends PageColumn {
  readonly leftPt: number
  readonly widthPt: number
}

interface RowLook {
  readonly kind: 'head' | 'row' | 'total'
  readonly leastPt: number
  readonly ruled: boolean
  readonly table: Tag
  readonly widthPt: number
  readonly textPt: number
}

/**
 * A table, row by row; its head is drawn again on the next page, and a row that is higher than a page goes on there.
 *
 * @param mostPt Height of a page.
 */
export function tableRows(
  block: Extract<PageBlock, { kind: 'table' }>,
  widthPt: number,
  mostPt: number,
  textPt: number,
): Piece[] {
  const { columns, rows, total = false, leastRowPt = 0, ruled = false } = block
  const placed = placeColumns(columns, widthPt)
  const look = { leastPt: 0, ruled, table: { kind: 'Table' }, widthPt, textPt } satisfies Omit<RowLook, 'kind'>
  const hasHead = columns.some(({ heading }) => heading !== '')
  const heads = linesOf(
    placed,
    columns.map(({ heading }) => heading),
    'bold',
    textPt,
  )
  const header = hasHead ? rowPiece(placed, heads, { ...look, kind: 'head' }) : undefined
  const most = Math.max(1, Math.floor((mostPt - (header?.heightPt ?? 0) - 2 * PAD.above) / (textPt * PAGE_LEADING)))
  const body = rows.flatMap((cells, index) => {
    const kind = total && index === rows.length - 1 ? 'total' : 'row'
    const lines = linesOf(placed, cells, kind === 'total' ? 'bold' : 'plain', textPt)
    return cut(lines, most).map((part) => rowPiece(placed, part, { ...look, kind, leastPt: leastRowPt }))
  })
  const tied = tie(body, mostPt)
  return header === undefined
    ? tied
    : [{ ...header, gapPt: 6, keep: true }, ...tied.map((each) => ({ ...each, header }))]
}

/** Most rows of a table that stays on one page, and its share of the page. */
const WHOLE = { rows: 6, share: 0.25 } as const

/** No row stands alone before or after the end of a page, and a small table is not cut. */
function tie(body: readonly Piece[], mostPt: number): Piece[] {
  const allPt = body.reduce((sum, { heightPt }) => sum + heightPt, 0)
  const isWhole = body.length <= WHOLE.rows && allPt <= mostPt * WHOLE.share
  const last = body.length - 1
  return body.map((each, index) => {
    const isEdge = (index === 0 || index === last - 1) && each.heightPt <= mostPt * WHOLE.share
    return index < last && (isWhole || isEdge) ? { ...each, keep: true } : each
  })
}

function placeColumns(columns: readonly PageColumn[], widthPt: number): Placed[] {
  const all = columns.reduce((sum, { share }) => sum + share, 0)
  let leftPt = 0
  return columns.map((column) => {
    const placed = { ...column, leftPt, widthPt: (widthPt * column.share) / all }
    leftPt += placed.widthPt
    return placed
  })
}

function linesOf(columns: readonly Placed[], cells: readonly string[], face: Face, textPt: number): string[][] {
  return columns.map(({ widthPt, bold }, index) =>
    wrapText(cells[index] ?? '', textPt, bold === true ? 'bold' : face, widthPt - 2 * PAD.side),
  )
}

function cut(lines: readonly string[][], most: number): string[][][] {
  const parts = Math.ceil(Math.max(1, ...lines.map(({ length }) => length)) / most)
  return Array.from({ length: parts }, (_, part) => lines.map((cell) => cell.slice(part * most, (part + 1) * most)))
}

function rowPiece(columns: readonly Placed[], cells: readonly string[][], look: RowLook): Piece {
  const { kind, ruled, table, widthPt, textPt } = look
  const linePt = textPt * PAGE_LEADING
  const tags = rowCells(
    table,
    columns.map(({ bold }) =>
      kind === 'head' ? { kind: 'TH', scope: 'Column' } : bold === true ? { kind: 'TH', scope: 'Row' } : { kind: 'TD' },
    ),
  )
  const needPt = Math.max(1, ...cells.map(({ length }) => length)) * linePt + 2 * PAD.above
  const heightPt = Math.max(look.leastPt, needPt)
  const artifact: Tag = { kind: 'Artifact' }
  const pen = kind === 'head' ? 'medium' : 'hair'
  const faceOf = ({ bold }: Placed): Face => (kind !== 'row' || bold === true ? 'bold' : 'plain')
  return {
    heightPt,
    gapPt: 0,
    draw: (x, y) => [
      ...(kind === 'row' ? [] : [ground(x, y, widthPt, heightPt, artifact)]),
      line(x, y + heightPt, x + widthPt, y + heightPt, {
        pen,
        color: kind === 'head' ? 'pine' : 'grey',
        tag: artifact,
      }),
      ...(ruled
        ? [...columns.map(({ leftPt }) => leftPt), widthPt].map((left) =>
            line(x + left, y, x + left, y + heightPt, { pen: 'hair', color: 'grey', tag: artifact }),
          )
        : []),
      ...columns.flatMap((column, index): Primitive[] => {
        const { leftPt, widthPt: width, align = 'left' } = column
        const at = { left: leftPt + PAD.side, center: leftPt + width / 2, right: leftPt + width - PAD.side }[align]
        return (cells[index] ?? []).map((text, row) =>
          label(x + at, y + PAD.above + row * linePt + (linePt - textPt) / 2, text, {
            sizePt: textPt,
            align,
            face: faceOf(column),
            tag: tags[index],
          }),
        )
      }),
    ],
  }
}

function ground(x: number, y: number, width: number, height: number, tag: Tag): Primitive {
  return { kind: 'rectangle', x, y, width, height, fill: 'mist', tag }
}
