import {
  COLORS,
  DASH_PT,
  flattenSheet,
  hatchLines,
  PEN_PT,
  textFigure,
  type HatchMark,
  type Mark,
  type Sheet,
  type TextMark,
} from '../model/index.js'
import { cleanLine } from '../../report/index.js'
import { makeStructure } from './pdf-structure.js'

/** Files of the embedded fonts, whole. */
export interface FontFiles {
  readonly plain: Uint8Array
  readonly bold: Uint8Array
}

export interface PdfInfo {
  readonly title: string
  readonly author: string
  readonly subject: string
  /** Date of issue, year-month-day; the only date that the file holds. */
  readonly date: string
  readonly language: string
  /** Small in the lower margin of each sheet, outside of its frame. */
  readonly imprint?: string
}

type PdfDocument = PDFKit.PDFDocument

/** Kerning and ligatures off: then a line is exactly as wide as the sum of its characters, as it was laid out. */
const NO_FEATURES = {
  kern: false,
  liga: false,
  clig: false,
  dlig: false,
} as unknown as PDFKit.Mixins.OpenTypeFeatures[]

export interface PdfWishes {
  /** Whether the file has a structure to read it aloud by; what is drawn into pages of another file has none. */
  readonly tagged?: boolean
  /**
   * Draws over a sheet, counted from 0, what is no mark: a picture of the user's own. It is not read aloud.
   * The document is one of pdfkit, whose types a user of the library need not have.
   */
  readonly over?: (doc: never, sheet: number) => void
}

/**
 * Draws sheets as one PDF: embedded fonts, a bookmark for each sheet, a structure to read it aloud by, no scaling when
 * printed, bytes that depend on the input alone.
 */
export async function renderPdf(
  sheets: readonly Sheet[],
  fonts: FontFiles,
  info: PdfInfo,
  { tagged = true, over }: PdfWishes = {},
): Promise<Uint8Array> {
  const { default: Document } = await import('pdfkit')
  const doc = new Document({
    autoFirstPage: false,
    pdfVersion: '1.7',
    lang: info.language,
    displayTitle: true,
    tagged,
    info: {
      Title: cleanLine(info.title),
      Author: cleanLine(info.author),
      Subject: cleanLine(info.subject),
      Creator: 'gablewatt',
      Producer: 'gablewatt',
      CreationDate: new Date(`${info.date}T00:00:00Z`),
    },
  })
  const done = collect(doc)
  keepTrueSize(doc)
  doc.registerFont('plain', fonts.plain)
  doc.registerFont('bold', fonts.bold)
  const structure = tagged ? makeStructure(doc) : undefined
  const draw = (mark: Mark): void => drawMark(doc, mark)
  for (const [index, sheet] of sheets.entries()) {
    doc.addPage({ size: [sheet.size.widthPt, sheet.size.heightPt], margin: 0 })
    doc.outline.addItem(cleanLine(`${sheet.id} ${sheet.title}`))
    const { marks } = flattenSheet(sheet)
    if (structure === undefined) marks.forEach(draw)
    else structure.drawSheet(sheet, marks, draw)
    if (over !== undefined) drawOver(doc, index, over)
    if (info.imprint !== undefined) printImprint(doc, info.imprint, tagged)
  }
  doc.end()
  return await done
}

function drawOver(doc: PdfDocument, sheet: number, over: NonNullable<PdfWishes['over']>): void {
  doc.markContent('Artifact', { type: 'Layout' })
  over(doc as never, sheet)
  doc.endMarkedContent()
}

const IMPRINT = { sizePt: 5, leftPt: 36, abovePt: 10, color: '#666666' } as const

/** No part of the sheet, so that it is not read aloud. */
function printImprint(doc: PdfDocument, text: string, tagged: boolean): void {
  const { sizePt, leftPt, abovePt, color } = IMPRINT
  if (tagged) doc.markContent('Artifact', { type: 'Pagination' })
  doc.font('plain').fontSize(sizePt).fillColor(color)
  doc.text(text, leftPt, doc.page.height - abovePt, { lineBreak: false, baseline: 'alphabetic', features: NO_FEATURES })
  if (tagged) doc.endMarkedContent()
}

async function collect(doc: PdfDocument): Promise<Uint8Array> {
  return await new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = []
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk))
    doc.on('error', reject)
    doc.on('end', () => {
      const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0))
      let at = 0
      for (const chunk of chunks) {
        bytes.set(chunk, at)
        at += chunk.length
      }
      resolve(bytes)
    })
  })
}

/** A drawing to scale must not be fitted to the page by the print dialogue. */
function keepTrueSize(doc: PdfDocument): void {
  const root = Reflect.get(doc, '_root') as { data: { ViewerPreferences?: { data: Record<string, unknown> } } }
  const preferences = root.data.ViewerPreferences
  if (preferences !== undefined) preferences.data['PrintScaling'] = 'None'
}

function drawMark(doc: PdfDocument, mark: Mark): void {
  switch (mark.kind) {
    case 'path': {
      for (const [index, { x, y }] of mark.points.entries()) {
        if (index === 0) doc.moveTo(x, y)
        else doc.lineTo(x, y)
      }
      if (mark.closed) doc.closePath()
      return paint(doc, mark)
    }
    case 'rectangle':
      doc.rect(mark.x, mark.y, mark.width, mark.height)
      return paint(doc, mark)
    case 'circle':
      doc.circle(mark.center.x, mark.center.y, mark.radius)
      return paint(doc, mark)
    case 'hatch':
      for (const [from, to] of hatchLines(mark.points, mark)) doc.moveTo(from.x, from.y).lineTo(to.x, to.y)
      doc.lineWidth(PEN_PT[mark.pen]).undash().stroke(COLORS[mark.color])
      return
    case 'text':
      return drawText(doc, mark)
  }
}

function paint(doc: PdfDocument, mark: Exclude<Mark, TextMark | HatchMark>): void {
  const fill = mark.fill === undefined ? undefined : COLORS[mark.fill]
  if (mark.pen === undefined) {
    if (fill !== undefined) doc.fill(fill)
    return
  }
  doc.lineWidth(PEN_PT[mark.pen]).lineJoin('miter').lineCap('butt')
  const dash = DASH_PT[mark.dash]
  if (dash.length === 0) doc.undash()
  else doc.dash([...dash] as unknown as number, {})
  if (fill === undefined) doc.stroke(COLORS[mark.color])
  else doc.fillAndStroke(fill, COLORS[mark.color])
}

function drawText(doc: PdfDocument, mark: TextMark): void {
  if (mark.text.trim() === '') return
  if (mark.halo) doc.polygon(...textFigure(mark).map(({ x, y }) => [x, y])).fill('#ffffff')
  doc.font(mark.face).fontSize(mark.sizePt).fillColor(COLORS[mark.color])
  const write = (): void => {
    doc.text(mark.text, mark.at.x, mark.at.y, { lineBreak: false, baseline: 'alphabetic', features: NO_FEATURES })
  }
  if (mark.rotationDeg === 0) return write()
  doc.save().rotate(-mark.rotationDeg, { origin: [mark.at.x, mark.at.y] })
  write()
  doc.restore()
}
