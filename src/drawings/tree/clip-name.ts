import { textWidthPt, wrapText, type Face } from '../model/index.js'

/** Lines that a name may take in the tree; the schedules have it whole. */
const LINES = 2

/** A name on at most two lines of a width, or as many as asked; where it is longer, it ends in dots. */
export function clipName(name: string, sizePt: number, face: Face, widthPt: number, most = LINES): string {
  const lines = wrapText(name, sizePt, face, widthPt)
  if (lines.length <= most) return lines.join('\n')
  let last = lines[most - 1] ?? ''
  while (last !== '' && textWidthPt(`${last}…`, sizePt, face) > widthPt) last = last.slice(0, -1)
  return [...lines.slice(0, most - 1), `${last}…`].join('\n')
}
