import {
  PDFArray,
  PDFDict,
  PDFName,
  PDFNull,
  PDFNumber,
  PDFRawStream,
  type PDFContext,
  type PDFDocument,
  type PDFObject,
} from '@cantoo/pdf-lib'
import { BrokenPage } from './copy-look.js'

/** Left, bottom, right, top; points. */
export type Box = readonly [number, number, number, number]

/** What is taken over of a page, looked at but not copied yet. */
export interface SourcePage {
  readonly media: Box
  readonly crop: Box | undefined
  /** 0, 90, 180 or 270 degrees, clockwise. */
  readonly turn: number
  /** Size of a unit, 1/72 in. */
  readonly unit: number | undefined
  readonly resources: PDFObject | undefined
  readonly contents: readonly PDFObject[]
  /** Colour space and isolation of the page as a whole. */
  readonly group: PDFObject | undefined
  readonly annotations: readonly PDFDict[]
}

/** Keys that a page takes from the nodes above it. */
const INHERITED = ['Resources', 'MediaBox', 'CropBox', 'Rotate'] as const
const MOST_PAGES = 5000
const MOST_NODES = 20_000

type Inherited = Readonly<Partial<Record<(typeof INHERITED)[number], PDFObject>>>

/**
 * The pages of a document in order.
 *
 * @param broken Makes the error of a page, counted from 1; of the document as a whole when that is undefined.
 */
export function readPages(pdf: PDFDocument, broken: (page: number | undefined, why: string) => Error): SourcePage[] {
  const { context } = pdf
  const pages: SourcePage[] = []
  const seen = new Set<PDFObject>()
  const refuse = (why: string): never => {
    throw broken(undefined, why)
  }
  const visit = (item: PDFObject, above: Inherited): void => {
    const node = context.lookup(item)
    if (!(node instanceof PDFDict)) return refuse('its list of pages leads nowhere')
    if (seen.has(node) || seen.size > MOST_NODES) return refuse('its list of pages leads back to itself')
    seen.add(node)
    const own = Object.fromEntries(
      INHERITED.flatMap((name) => {
        const value = node.get(PDFName.of(name)) ?? above[name]
        return value === undefined || value === PDFNull ? [] : [[name, value]]
      }),
    ) as Inherited
    if (!node.has(PDFName.of('Kids'))) {
      if (pages.length >= MOST_PAGES) return refuse(`it has more than ${MOST_PAGES} pages`)
      try {
        pages.push(readPage(node, own, context))
      } catch (error) {
        throw error instanceof BrokenPage ? broken(pages.length + 1, error.message) : error
      }
      return
    }
    const kids = context.lookup(node.get(PDFName.of('Kids')))
    if (!(kids instanceof PDFArray)) return refuse('its list of pages is no list')
    for (const kid of kids.asArray()) visit(kid, own)
  }
  const catalog = context.lookup(context.trailerInfo.Root)
  const root = catalog instanceof PDFDict ? catalog.get(PDFName.of('Pages')) : undefined
  if (root === undefined) return refuse('it has no list of pages')
  visit(root, {})
  return pages
}

function readPage(node: PDFDict, inherited: Inherited, context: PDFContext): SourcePage {
  const get = (name: string): PDFObject | undefined => {
    const value = node.get(PDFName.of(name))
    return value === undefined || context.lookup(value) === PDFNull ? undefined : value
  }
  const media = readBox(inherited.MediaBox, 'MediaBox', context)
  if (media === undefined) throw new BrokenPage('its size (MediaBox) is missing')
  if (inherited.Resources !== undefined && !(context.lookup(inherited.Resources) instanceof PDFDict)) {
    throw new BrokenPage('its resources are no dictionary')
  }
  const unit = context.lookup(get('UserUnit'))
  return {
    media,
    crop: readBox(inherited.CropBox, 'CropBox', context),
    turn: readTurn(inherited.Rotate, context),
    unit: unit instanceof PDFNumber && unit.asNumber() > 0 ? unit.asNumber() : undefined,
    resources: inherited.Resources,
    contents: readContents(get('Contents'), context),
    group: get('Group'),
    annotations: readAnnotations(get('Annots'), context),
  }
}

function readBox(value: PDFObject | undefined, name: string, context: PDFContext): Box | undefined {
  if (value === undefined) return undefined
  const box = numbersOf(value, 4, context)
  if (box === undefined) throw new BrokenPage(`its size (${name}) is not four numbers`)
  const [a = 0, b = 0, c = 0, d = 0] = box
  const sorted: Box = [Math.min(a, c), Math.min(b, d), Math.max(a, c), Math.max(b, d)]
  if (sorted[2] - sorted[0] < 1 || sorted[3] - sorted[1] < 1) throw new BrokenPage(`its size (${name}) is nothing`)
  return sorted
}

/** Numbers of a list of that length; undefined for anything else. */
export function numbersOf(value: PDFObject | undefined, count: number, context: PDFContext): number[] | undefined {
  const list = context.lookup(value)
  if (!(list instanceof PDFArray) || list.size() !== count) return undefined
  const numbers = list.asArray().flatMap((item) => {
    const number = context.lookup(item)
    return number instanceof PDFNumber && Math.abs(number.asNumber()) < 1e7 ? [number.asNumber()] : []
  })
  return numbers.length === count ? numbers : undefined
}

function readTurn(value: PDFObject | undefined, context: PDFContext): number {
  if (value === undefined) return 0
  const number = context.lookup(value)
  if (!(number instanceof PDFNumber) || number.asNumber() % 90 !== 0) {
    throw new BrokenPage('its rotation is no multiple of 90 degrees')
  }
  return ((number.asNumber() % 360) + 360) % 360
}

function readContents(value: PDFObject | undefined, context: PDFContext): PDFObject[] {
  if (value === undefined) return []
  const found = context.lookup(value)
  const parts = found instanceof PDFArray ? found.asArray() : [value]
  for (const part of parts) {
    if (!(context.lookup(part) instanceof PDFRawStream)) throw new BrokenPage('what it draws (Contents) is no stream')
  }
  return parts
}

/** Notes, stamps, form fields; what is none is not looked at. */
function readAnnotations(value: PDFObject | undefined, context: PDFContext): PDFDict[] {
  const list = context.lookup(value)
  if (!(list instanceof PDFArray)) return []
  return list.asArray().flatMap((item) => {
    const annotation = context.lookup(item)
    return annotation instanceof PDFDict ? [annotation] : []
  })
}

/** Whether the document has layers that are not shown when it is opened. */
export function hidesLayers(pdf: PDFDocument): boolean {
  const { context } = pdf
  const inside = (value: PDFObject | undefined, name: string): PDFObject | undefined => {
    const dict = context.lookup(value)
    return dict instanceof PDFDict ? context.lookup(dict.get(PDFName.of(name))) : undefined
  }
  const shown = inside(inside(context.trailerInfo.Root, 'OCProperties'), 'D')
  const off = inside(shown, 'OFF')
  return (off instanceof PDFArray && off.size() > 0) || inside(shown, 'BaseState') === PDFName.of('OFF')
}
