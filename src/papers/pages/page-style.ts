import type { Box } from '../../drawings/index.js'

/** Paper that a paper for people can be printed on, long side upright, points. A4 is 210 mm by 297 mm. */
export const PAGE_SIZES = {
  letter: { name: 'letter', widthPt: 612, heightPt: 792 },
  a4: { name: 'A4', widthPt: 595.28, heightPt: 841.89 },
} as const

/** Name of a paper: `letter` or `a4`. */
export type PageSize = keyof typeof PAGE_SIZES

/** Heights of type, points; none is below 10 pt, the least that rules for such papers ask for. @source state disclosure rules of residential solar, read */
export const PAGE_TYPE_PT = { text: 10, heading: 14, title: 22 } as const

export const PAGE_MARGIN_PT = { side: 52, top: 48, bottom: 56 } as const

/** From baseline to baseline over height of type in running text. */
export const PAGE_LEADING = 1.34

/** The part of a page that its content keeps to. */
export function bodyOf(size: PageSize): Box {
  const { widthPt, heightPt } = PAGE_SIZES[size]
  const { side, top, bottom } = PAGE_MARGIN_PT
  return { x: side, y: top, width: widthPt - 2 * side, height: heightPt - top - bottom }
}

/** Width of what stands on a page, points. */
export const bodyWidthPt = (size: PageSize): number => bodyOf(size).width
