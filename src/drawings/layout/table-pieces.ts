import { blockHeightPt, onLayer, rowCells, wrapText, type Face, type Primitive, type Tag } from '../model/index.js'
import type { TableColumn } from './block.js'
import { columnWidthsPt } from './column-widths.js'
import type { Piece } from './piece.js'
import { label, line, TYPE_PT } from './text.js'

/** Room beside and, unless asked otherwise, above and below the words of a cell, points. */
const PAD = 3
const SIZE = TYPE_PT.small

/** A column with its place in the table. */
interface PlacedColumn {
  readonly leftPt: number
  readonly widthPt: number
  readonly align: 'left' | 'center' | 'right'
  readonly face: Face
}

/** What the rows of a table have in common. */
interface RowLook {
  readonly widthPt: number
  readonly padPt: number
  readonly table: Tag
}

/** The lines of the cells of one row. */
type Lines = readonly (readonly string[])[]

/**
 * A table, row by row; its head is drawn again where it goes on in another column, and does not stand over a single row
 * of several.
 *
 * @param mostPt Height of a column: a row that is higher is cut into several.
 * @param padPt Room above and below the words of a cell.
 */
export function tablePieces(
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
  widthPt: number,
  mostPt: number,
  padPt = PAD,
): Piece[] {
  const placed = placeColumns(columns, rows, widthPt)
  const table: Tag = { kind: 'Table' }
  const header = headerOf(columns, placed, { widthPt, padPt, table })
  const mostLines = Math.max(1, Math.floor((mostPt - (header?.heightPt ?? 0) - 2 * padPt) / (SIZE * 1.22)) - 1)
  const body = rows.flatMap((cells) =>
    cutRow(wrapped(placed, cells), mostLines).map((lines) => rowPiece(placed, lines, { widthPt, padPt, table })),
  )
  const first = header ?? body[0]
  if (first === undefined) return []
  const rest = header === undefined ? body.slice(1) : body
  return [
    { ...first, gapPt: 5, ...(header !== undefined ? { keep: true } : {}) },
    ...rest.map((each, index) => ({
      ...each,
      header,
      ...(header !== undefined && index === 0 && rest.length > 1 ? { keep: true } : {}),
    })),
  ]
}

function placeColumns(
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
  widthPt: number,
): PlacedColumn[] {
  const widths = columnWidthsPt(columns, rows, { widthPt, sizePt: SIZE, padPt: PAD })
  return columns.map((column, index) => ({
    leftPt: widths.slice(0, index).reduce((sum, width) => sum + width, 0),
    widthPt: widths[index] ?? 0,
    align: column.align ?? 'left',
    face: column.bold === true ? 'bold' : 'plain',
  }))
}

function headerOf(columns: readonly TableColumn[], placed: readonly PlacedColumn[], look: RowLook): Piece | undefined {
  if (columns.every((column) => column.heading === '')) return undefined
  const bold = placed.map((column): PlacedColumn => ({ ...column, face: 'bold' }))
  const lines = wrapped(
    bold,
    columns.map((column) => column.heading),
  )
  return rowPiece(bold, lines, { ...look, fill: 'light' })
}

function wrapped(columns: readonly PlacedColumn[], cells: readonly string[]): string[][] {
  return columns.map((column, index) => wrapText(cells[index] ?? '', SIZE, column.face, column.widthPt - 2 * PAD))
}

/** A row of more lines than a column is high goes on as another row. */
function cutRow(lines: Lines, mostLines: number): Lines[] {
  const parts = Math.ceil(Math.max(1, ...lines.map((cell) => cell.length)) / mostLines)
  return Array.from({ length: parts }, (_, part) =>
    lines.map((cell) => cell.slice(part * mostLines, (part + 1) * mostLines)),
  )
}

function rowPiece(
  columns: readonly PlacedColumn[],
  cells: Lines,
  { widthPt, padPt, table, fill }: RowLook & { readonly fill?: 'light' },
): Piece {
  const tags = rowCells(
    table,
    columns.map(({ face }) =>
      fill !== undefined
        ? { kind: 'TH', scope: 'Column' }
        : face === 'bold'
          ? { kind: 'TH', scope: 'Row' }
          : { kind: 'TD' },
    ),
  )
  const heightPt = blockHeightPt(Math.max(1, ...cells.map((cell) => cell.length)), SIZE) + 2 * padPt
  return {
    heightPt,
    gapPt: 0,
    draw: (x, y) =>
      onLayer<Primitive>('schedule', [
        {
          kind: 'rectangle',
          x,
          y,
          width: widthPt,
          height: heightPt,
          pen: 'hair',
          ...(fill === undefined ? {} : { fill }),
        },
        ...columns.slice(1).map(({ leftPt }) => line(x + leftPt, y, x + leftPt, y + heightPt, { pen: 'hair' })),
        ...columns.flatMap(({ leftPt, widthPt: width, align, face }, index) => {
          const lines = cells[index] ?? []
          const left = x + leftPt
          const at = { left: left + PAD, center: left + width / 2, right: left + width - PAD }[align]
          return lines.length === 0
            ? []
            : [label(at, y + padPt, lines.join('\n'), { sizePt: SIZE, align, face, tag: tags[index] })]
        }),
      ]),
  }
}
