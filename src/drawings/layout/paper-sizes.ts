import { MM_PER_INCH } from '../../values/index.js'
import { POINTS_PER_INCH, type PaperSize } from '../model/index.js'

/** Sheets that a packet may be drawn on, all with the long side level. A3 is 420 mm by 297 mm. */
export const PAPER_SIZES = {
  '11x17': { name: '11x17', widthPt: 1224, heightPt: 792 },
  letter: { name: 'letter', widthPt: 792, heightPt: 612 },
  A3: { name: 'A3', widthPt: (420 / MM_PER_INCH) * POINTS_PER_INCH, heightPt: (297 / MM_PER_INCH) * POINTS_PER_INCH },
} as const satisfies Readonly<Record<string, PaperSize>>

/** Paper that a permit packet can be drawn on. */
export type PaperName = keyof typeof PAPER_SIZES
