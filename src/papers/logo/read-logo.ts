import { FileError } from '../../files/index.js'
import type { PageLogo } from '../pages/index.js'
import { pngPicture } from './png-picture.js'
import type { PictureSize } from './png-size.js'
import { readSvgLogo } from './svg-logo.js'

/** Room for a sign at the head of a page, points. */
const MOST = { widthPt: 150, heightPt: 60 } as const

/**
 * A picture of the user's own: PNG, or SVG of shapes alone. What could run, fetch or hide anything is refused.
 *
 * @param path Its name for the messages.
 * @throws FileError with what is wrong.
 */
export function readLogo(path: string, bytes: Uint8Array): PageLogo {
  const refuse = (why: string): FileError => new FileError(`logo '${path}': ${why}`, { exitCode: 2 })
  const picture = pngPicture(bytes)
  if (typeof picture === 'string') throw refuse(picture)
  if (picture !== undefined) {
    const fitted = fit(picture)
    const data = Buffer.from(picture.bytes)
    const dataUri = `data:image/png;base64,${data.toString('base64')}`
    return {
      ...fitted,
      dataUri,
      drawPdf: (doc: PDFKit.PDFDocument, x, y) =>
        void doc.image(data, x, y, { width: fitted.widthPt, height: fitted.heightPt }),
    }
  }
  const read = readSvgLogo(bytes)
  if (typeof read === 'string') throw refuse(read)
  const fitted = fit(read)
  return {
    ...fitted,
    dataUri: `data:image/svg+xml;base64,${Buffer.from(read.svg).toString('base64')}`,
    drawPdf: (doc: PDFKit.PDFDocument, x, y) => {
      doc.save().translate(x, y)
      doc.scale(fitted.widthPt / read.width, fitted.heightPt / read.height)
      read.drawPdf(doc)
      doc.restore()
    },
  }
}

function fit({ width, height }: PictureSize): { readonly widthPt: number; readonly heightPt: number } {
  const scale = Math.min(MOST.widthPt / width, MOST.heightPt / height)
  return { widthPt: width * scale, heightPt: height * scale }
}
