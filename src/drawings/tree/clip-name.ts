import { textWidthPt, wrapText, type Face } from '../model/index.js'

/** Lines that a name may take in the tree; the schedules have it whole. */
const LINES = 2

/** A name on at most two lines of a width; where it is longer, it ends in dots. */
export function clipName(name: string, sizePt: number, face: Face, widthPt: number): string {
  const lines = wrapText(name, sizePt, face, widthPt)
  if (lines.length <= LINES) return lines.join('\n')
  let last = lines[LINES - 1] ?? ''
  while (last !== '' && textWidthPt(`${last}…`, sizePt, face) > widthPt) last = last.slice(0, -1)
  return [...lines.slice(0, LINES - 1), `${last}…`].join('\n')
}
