import { wrapText, type Box, type Face, type Primitive } from '../model/index.js'
import { label, line, TYPE_PT } from './text.js'

/** One issue of the packet after the first. */
export interface RevisionRow {
  readonly number: string
  readonly date: string
  readonly text: string
}

/** Rows of revisions that the strip has room for; older ones stand on the cover. */
const MOST_REVISIONS = 5
const PAD = 4
const ROW = TYPE_PT.small * 1.02 + 3
/** Width from which the text of a revision stands beside its date, not below it. */
const WIDE = 96

const rowsEach = (box: Box): number => (box.width < WIDE ? 2 : 1)

/** Height of the table of revisions; its head is one line. */
export function revisionsHeight(revisions: readonly RevisionRow[], box: Box): number {
  return (1 + Math.max(1, Math.min(MOST_REVISIONS, revisions.length)) * rowsEach(box)) * ROW + 2
}

/** The newest revisions, newest last; an empty row when there is none yet. */
export function drawRevisions(
  revisions: readonly RevisionRow[],
  box: Box,
  rule: (y: number) => Primitive,
): Primitive[] {
  const shown = revisions.slice(-MOST_REVISIONS)
  const date = box.x + 20
  const isWide = rowsEach(box) === 1
  const text = isWide ? box.x + 62 : date
  const bottom = box.y + revisionsHeight(revisions, box)
  const step = rowsEach(box) * ROW
  const row = (y: number, cells: readonly [string, string, string], face: Face): Primitive[] => {
    const look = { sizePt: TYPE_PT.small, face, color: face === 'bold' ? ('grey' as const) : ('black' as const) }
    const room = box.x + box.width - text - 4
    return [
      label(box.x + PAD, y + 2, clipped(cells[0], 16, face), look),
      label(date + 2, y + 2, clipped(cells[1], isWide ? 40 : room, face), look),
      label(text + 2, y + 2 + (isWide ? 0 : ROW), clipped(cells[2], room, face), look),
    ]
  }
  return [
    rule(box.y),
    ...(isWide ? row(box.y, ['REV', 'ISSUED', 'FOR'], 'bold') : row(box.y, ['REV', 'ISSUED, FOR', ''], 'bold')),
    line(date, box.y, date, bottom),
    ...(isWide ? [line(text, box.y, text, bottom)] : []),
    rule(box.y + ROW),
    ...shown.flatMap((each, index) => {
      const top = box.y + ROW + index * step
      return [...row(top, [each.number, each.date, each.text], 'plain'), ...(index === 0 ? [] : [rule(top)])]
    }),
  ]
}

/** A text on one line: as much of it as fits. */
function clipped(text: string, width: number, face: Face): string {
  const [first = '', ...more] = wrapText(text, TYPE_PT.small, face, width)
  return more.length === 0 ? first : (wrapText(text, TYPE_PT.small, face, width - 7)[0] ?? '').concat('…')
}
