import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  PDFHexString,
  PDFName,
  PDFNull,
  PDFNumber,
  PDFOperator,
  PDFOperatorNames,
  PDFRawStream,
  PDFRef,
  type PDFDocument,
  type PDFObject,
  type PDFPage,
} from '@cantoo/pdf-lib'
import { UnpacksTooFar, unpackWithin } from './pages/index.js'

/** Adds pages that follow the drawings to the structure by which a packet is read aloud. */
export interface PageTags {
  /** Begins a document: a part of its own, with its title. */
  readonly begin: (title: string) => void
  /** What stands before and behind the page's own content, and in front of what is drawn after it. */
  readonly wrap: (look: PageLook) => PageMarks
}

/** A page before it is made. */
export interface PageLook {
  readonly contents: readonly PDFObject[]
  readonly resources: PDFDict
  /** Whether something is drawn behind the content: the looks of annotations. */
  readonly more: boolean
}

export interface PageMarks {
  readonly contents: readonly PDFObject[]
  /** Opens what is drawn behind the content; the same element holds it. */
  readonly openMore: PDFOperator
  /** Adds the element of the page. @param name Its number and place, as they are read aloud. */
  readonly close: (page: PDFPage, name: string) => void
}

/** Opens what is not read aloud, as the stamp with the number of the sheet. */
export const openArtifact = (): PDFOperator =>
  PDFOperator.of(PDFOperatorNames.BeginMarkedContentSequence, ['/Artifact', '<< /Type /Pagination >>'])
export const closeMarked = (): PDFOperator => PDFOperator.of(PDFOperatorNames.EndMarkedContent)

/** A page that numbers its own content above this is not tagged: the list of its parts would be too long. */
const MOST_NUMBERS = 10_000
const key = (text: string): PDFName => PDFName.of(text)

/**
 * Pages with fonts are paragraphs, whose words a reader finds in them; all others, scans above all, are figures.
 *
 * @source ISO 32000-1 14.7.4 (content of elements, parent tree), 14.8.2.2 (artifacts), 14.8.4 (standard types); from memory
 */
export function tagPages(target: PDFDocument): PageTags | undefined {
  const { context, catalog } = target
  const root = catalog.lookupMaybe(key('StructTreeRoot'), PDFDict)
  const kids = root === undefined ? undefined : context.lookup(root.get(key('K')))
  const whole = kids instanceof PDFArray ? kids.get(0) : root?.get(key('K'))
  const numbers = root?.lookupMaybe(key('ParentTree'), PDFDict)?.lookupMaybe(key('Nums'), PDFArray)
  if (root === undefined || !(whole instanceof PDFRef) || numbers === undefined) return undefined

  const addTo = (parent: PDFRef, type: string, entries: Readonly<Record<string, PDFObject>>): PDFRef => {
    const element = context.obj({ Type: 'StructElem', P: parent })
    element.set(key('S'), key(type))
    for (const [name, value] of Object.entries(entries)) element.set(key(name), value)
    const ref = context.register(element)
    const above = context.lookup(parent, PDFDict)
    const children = context.lookup(above.get(key('K')))
    if (children instanceof PDFArray) children.push(ref)
    else above.set(key('K'), context.obj(children === undefined ? [ref] : [above.get(key('K')) ?? PDFNull, ref]))
    return ref
  }

  let part = whole
  return {
    begin: (title) => {
      part = addTo(whole, 'Part', { T: PDFHexString.fromText(title) })
    },
    wrap: ({ contents, resources, more }) => {
      const type = hasFonts(resources) ? 'P' : 'Figure'
      const first = firstFree(contents.map((each) => context.lookup(each)))
      const ids = first > MOST_NUMBERS ? [] : more ? [first, first + 1] : [first]
      const open = (id: number | undefined): PDFOperator =>
        id === undefined
          ? openArtifact()
          : PDFOperator.of(PDFOperatorNames.BeginMarkedContentSequence, [`/${type}`, `<< /MCID ${id} >>`])
      const stream = (operator: PDFOperator): PDFRef => context.register(context.contentStream([operator]))
      return {
        contents: [stream(open(ids[0])), ...contents, stream(closeMarked())],
        openMore: open(ids[1]),
        close: (page, name) => {
          const section = addTo(part, 'Sect', { T: PDFHexString.fromText(name) })
          if (ids.length === 0) return
          const { x, y, width, height } = page.getCropBox()
          const box = { O: 'Layout', BBox: [x, y, x + width, y + height], Placement: 'Block' }
          const element = addTo(section, type, {
            Pg: page.ref,
            K: context.obj([...ids]),
            ...(type === 'Figure' ? { Alt: PDFHexString.fromText(name), A: context.obj(box) } : {}),
          })
          const next = nextKey(root, numbers)
          page.node.set(key('StructParents'), PDFNumber.of(next))
          page.node.set(key('Tabs'), key('S'))
          const parents = Array.from({ length: first }, () => PDFNull as PDFObject)
          numbers.push(PDFNumber.of(next))
          numbers.push(context.register(context.obj([...parents, ...ids.map(() => element)])))
          root.set(key('ParentTreeNextKey'), PDFNumber.of(next + 1))
        },
      }
    },
  }
}

function nextKey(root: PDFDict, numbers: PDFArray): number {
  const stated = root.lookupMaybe(key('ParentTreeNextKey'), PDFNumber)?.asNumber() ?? 0
  const last = numbers.size() < 2 ? undefined : numbers.get(numbers.size() - 2)
  return Math.max(stated, last instanceof PDFNumber ? last.asNumber() + 1 : 0)
}

function hasFonts(resources: PDFDict): boolean {
  const fonts = resources.lookup(key('Font'))
  return fonts instanceof PDFDict && fonts.keys().length > 0
}

/**
 * A number that the page's own content does not use; that of a page with a structure of its own counts up from 0. What unpacks
 * too far is not looked through, and the page is not tagged.
 */
function firstFree(contents: readonly (PDFObject | undefined)[]): number {
  let free = 0
  for (const each of contents) {
    if (!(each instanceof PDFRawStream)) continue
    const text = textOf(each)
    if (text === undefined) return MOST_NUMBERS + 1
    for (const [, id] of text.matchAll(/\/MCID\s+(\d{1,9})/gu)) free = Math.max(free, Number(id) + 1)
  }
  return free
}

/** What a stream says, undefined when it is too much; a page whose streams cannot be read shows nothing either. */
function textOf(stream: PDFRawStream): string | undefined {
  try {
    return Buffer.from(unpackWithin(() => decodePDFRawStream(stream).decode())).toString('latin1')
  } catch (error) {
    return error instanceof UnpacksTooFar ? undefined : ''
  }
}
