import type { PaperSize } from '../model/index.js'

/** Sheets that a packet may be drawn on, all with the long side level. A3 is 420 mm by 297 mm. */
export const PAPER_SIZES = {
  '11x17': { name: '11x17', widthPt: 1224, heightPt: 792 },
  letter: { name: 'letter', widthPt: 792, heightPt: 612 },
  A3: { name: 'A3', widthPt: (420 / 25.4) * 72, heightPt: (297 / 25.4) * 72 },
} as const satisfies Readonly<Record<string, PaperSize>>

/** Paper that a permit packet can be drawn on. */
export type PaperName = keyof typeof PAPER_SIZES
