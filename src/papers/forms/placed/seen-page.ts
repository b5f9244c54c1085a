import { PDFNumber, type PDFPage } from '@cantoo/pdf-lib'
import { valueOf } from '../document/index.js'

/** A page as it is seen on a screen or on paper. */
export interface SeenPage {
  readonly widthPt: number
  readonly heightPt: number
  /** Brings points from the lower left corner of the page as it is seen into its own space, as the operator `cm` takes it. */
  readonly matrix: readonly number[]
}

/** @source ISO 32000-1:2008, 7.7.3.3 (CropBox, Rotate, UserUnit); from memory. */
export function seenPage(page: PDFPage): SeenPage {
  const { x, y, width, height } = page.getCropBox()
  const stated = valueOf(page.node, 'UserUnit')
  const unit = stated instanceof PDFNumber && stated.asNumber() > 0 ? stated.asNumber() : 1
  const turn = ((page.getRotation().angle % 360) + 360) % 360
  const [wide, high] = turn === 90 || turn === 270 ? [height, width] : [width, height]
  const s = 1 / unit
  const matrix =
    turn === 90
      ? [0, s, -s, 0, x + width, y]
      : turn === 180
        ? [-s, 0, 0, -s, x + width, y + height]
        : turn === 270
          ? [0, -s, s, 0, x, y + height]
          : [s, 0, 0, s, x, y]
  return { widthPt: wide * unit, heightPt: high * unit, matrix }
}
