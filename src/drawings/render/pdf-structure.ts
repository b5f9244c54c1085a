import { ARTIFACT, boundsOf, cornersOf, textFigure, type Mark, type Sheet, type Tag, type XY } from '../model/index.js'

type PdfDocument = PDFKit.PDFDocument
type Element = PDFKit.PDFStructureElement
type Content = PDFKit.PDFStructureContent

/** What pdfkit takes; its types name half of it. */
interface ElementOptions {
  readonly title?: string
  readonly alt?: string
  readonly actual?: string
  readonly bbox?: readonly [left: number, top: number, right: number, bottom: number]
  readonly scope?: 'Column' | 'Row'
}

/** Builds the tree by which a program reads a PDF aloud, sheet by sheet. */
export interface Structure {
  /** Draws marks in their order, each run of one part as content of its own, and adds the parts to the tree. */
  readonly drawSheet: (sheet: Sheet, marks: readonly Mark[], draw: (mark: Mark) => void) => void
}

/** A part with what was drawn for it on a sheet. */
interface Drawn {
  readonly tag: Tag
  readonly order: number
  readonly contents: Content[]
  readonly reach: XY[]
}

/** @source ISO 32000-1 14.7 and 14.8: structure, tagged PDF (from memory) */
export function makeStructure(doc: PdfDocument): Structure {
  const whole = doc.struct('Document')
  doc.addStructure(whole)
  const elements = new Map<Tag, Element>()
  const rows = new Map<Tag, readonly Element[]>()

  /** The element of a part, in those of all that it lies in; a row comes with its cells. */
  const elementOf = (tag: Tag, section: Element, reach: readonly XY[]): Element => {
    const known = elements.get(tag)
    if (known !== undefined) return known
    const parent = tag.within === undefined ? section : elementOf(tag.within, section, [])
    const cell = tag.within === undefined ? undefined : rows.get(tag.within)?.[tag.column ?? 0]
    if (cell !== undefined) return cell
    const element = structOf(doc, tag.kind, optionsOf(tag, reach))
    elements.set(tag, element)
    parent.add(element)
    if (tag.cells !== undefined) {
      const made = tag.cells.map((each) => structOf(doc, each.kind, optionsOf(each, [])))
      for (const each of made) element.add(each)
      rows.set(tag, made)
    }
    return element
  }

  return {
    drawSheet: (sheet, marks, draw) => {
      const section = structOf(doc, 'Sect', { title: `${sheet.id} ${sheet.title}` })
      whole.add(section)
      const found = drawRuns(doc, marks, draw)
      for (const { tag, contents, reach } of inReadingOrder(found)) {
        const element = elementOf(tag, section, reach)
        for (const content of contents) element.add(content)
      }
    },
  }
}

const structOf = (doc: PdfDocument, kind: string, options: ElementOptions): Element => doc.struct(kind, options)

/** Headings of the sheet come first, then all else in the order in which it was laid out. */
function inReadingOrder(found: readonly Drawn[]): Drawn[] {
  return found.toSorted((a, b) => Number(b.tag.kind === 'H1') - Number(a.tag.kind === 'H1') || a.order - b.order)
}

/** Lines of one part end in a space where they go on, so that their words are read apart. */
function drawRuns(doc: PdfDocument, marks: readonly Mark[], draw: (mark: Mark) => void): Drawn[] {
  const paragraphs = new Map<number, Tag>()
  const found = new Map<Tag, Drawn>()
  let open: Tag | undefined
  const close = (): void => {
    if (open !== undefined) doc.endMarkedContent()
    open = undefined
  }
  const shown = marks.filter((mark) => mark.kind !== 'text' || mark.text.trim() !== '')
  for (const [index, mark] of shown.entries()) {
    const tag = tagOf(mark, paragraphs)
    if (tag !== open) {
      close()
      if (tag.kind === 'Artifact') doc.markContent('Artifact', { type: 'Layout' })
      else {
        const drawn = found.get(tag) ?? { tag, order: mark.order ?? 0, contents: [], reach: [] }
        found.set(tag, drawn)
        drawn.contents.push(doc.markStructureContent(tag.kind))
      }
      open = tag
    }
    found.get(tag)?.reach.push(...reachOf(mark))
    const next = shown[index + 1]
    const goesOn = mark.kind === 'text' && next !== undefined && tagOf(next, paragraphs) === tag
    draw(goesOn && !/[-/_]$/u.test(mark.text) ? { ...mark, text: `${mark.text} ` } : mark)
  }
  close()
  return [...found.values()]
}

/** A text without a part is a paragraph with the other lines of its block; a figure without one is not read aloud. */
function tagOf(mark: Mark, paragraphs: Map<number, Tag>): Tag {
  if (mark.tag !== undefined) return mark.tag
  if (mark.kind !== 'text') return ARTIFACT
  const paragraph = paragraphs.get(mark.block) ?? { kind: 'P' }
  paragraphs.set(mark.block, paragraph)
  return paragraph
}

function optionsOf({ kind, says, scope }: Tag, reach: readonly XY[]): ElementOptions {
  const box = reach.length === 0 ? undefined : boundsOf(reach)
  return {
    ...(kind === 'Figure' ? { alt: says ?? '' } : says === undefined ? {} : { actual: says }),
    ...(kind === 'Figure' && box !== undefined ? { bbox: [box.x, box.y, box.x + box.width, box.y + box.height] } : {}),
    ...(scope === undefined ? {} : { scope }),
  }
}

function reachOf(mark: Mark): readonly XY[] {
  switch (mark.kind) {
    case 'text':
      return textFigure(mark)
    case 'rectangle':
      return cornersOf(mark)
    case 'circle': {
      const { center, radius } = mark
      return cornersOf({ x: center.x - radius, y: center.y - radius, width: 2 * radius, height: 2 * radius })
    }
    case 'path':
    case 'hatch':
      return mark.points
  }
}
