import { printed, textWidthPt, unbroken, type Face } from '../model/index.js'
import type { TableColumn } from './block.js'

/**
 * Widths of the columns of a table, points: their shares, and where a word or a number with its unit is wider than its column,
 * as much more as it needs from columns that have room to spare. Names that may break after a mark count up to the mark.
 *
 * @param padPt Free room at either side of a cell.
 */
export function columnWidthsPt(
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
  { widthPt, sizePt, padPt }: { readonly widthPt: number; readonly sizePt: number; readonly padPt: number },
): number[] {
  const total = columns.reduce((sum, column) => sum + column.share, 0)
  const shares = columns.map((column) => (widthPt * column.share) / total)
  const needs = columns.map(
    ({ heading, bold }, index) =>
      2 * padPt +
      Math.max(
        widestPt(heading, sizePt, 'bold'),
        ...rows.map((cells) => widestPt(cells[index] ?? '', sizePt, bold === true ? 'bold' : 'plain')),
      ),
  )
  const lack = sum(needs.map((need, index) => Math.max(0, need - (shares[index] ?? 0))))
  const spare = sum(needs.map((need, index) => Math.max(0, (shares[index] ?? 0) - need)))
  if (lack === 0 || lack > spare) return shares
  return shares.map((share, index) => {
    const need = needs[index] ?? 0
    return share < need ? need : share - (lack * (share - need)) / spare
  })
}

/** Width of the widest words that stay on one line. */
function widestPt(text: string, sizePt: number, face: Face): number {
  const pieces = unbroken(printed(text).replaceAll('\n', ' ')).flatMap((words) =>
    words.includes(' ') ? [words] : words.split(/(?<=[-/_.,])/u),
  )
  // A hair more than it needs, as a sum of shares is not exact.
  return Math.max(0, ...pieces.map((piece) => textWidthPt(piece, sizePt, face))) + 0.01
}

const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0)
