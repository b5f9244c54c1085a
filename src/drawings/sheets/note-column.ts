import { label, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, onLayer, wrapText, type Primitive, type XY } from '../model/index.js'

/** A note of a detail and the point that it is about, on paper. */
export interface Note {
  readonly tip: XY
  readonly text: string
}

/**
 * Notes in a column beside a detail, each with a line to its point; in the order of their points, so that no two lines cross.
 *
 * @param column Left edge (right edge when the detail lies to the right), top and bottom on paper, points.
 */
export function noteColumn(
  notes: readonly Note[],
  column: {
    readonly x: number
    readonly top: number
    readonly bottom: number
    readonly widthPt: number
    readonly side: 'left' | 'right'
  },
): Primitive[] {
  const size = TYPE_PT.small
  const sorted = notes.toSorted((a, b) => a.tip.y - b.tip.y)
  const heights = sorted.map((note) => blockHeightPt(wrapText(note.text, size, 'plain', column.widthPt).length, size))
  const free = column.bottom - column.top - heights.reduce((sum, height) => sum + height, 0)
  const gap = Math.max(4, Math.min(16, free / Math.max(1, sorted.length)))
  const used = heights.reduce((sum, height) => sum + height, 0) + gap * (sorted.length - 1)
  let y = column.top + Math.max(0, (column.bottom - column.top - used) / 2)
  const direction = column.side === 'right' ? 1 : -1
  return sorted.flatMap((note, index): Primitive[] => {
    const height = heights[index] ?? 0
    const middle = y + height / 2
    y += height + gap
    const end = column.x - 3 * direction
    return onLayer<Primitive>('note', [
      { kind: 'path', points: [note.tip, { x: end - 10 * direction, y: middle }, { x: end, y: middle }], pen: 'hair' },
      { kind: 'circle', center: note.tip, radiusPt: 1.3, fill: 'black' },
      label(column.x, middle, note.text, {
        sizePt: size,
        valign: 'middle',
        align: direction === 1 ? 'left' : 'right',
        maxWidthPt: column.widthPt,
        halo: true,
      }),
    ])
  })
}
