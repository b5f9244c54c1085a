import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  PDFRawStream,
  PDFRef,
  PDFString,
  type PDFObject,
} from '@cantoo/pdf-lib'

/** An element of the structure tree as it stands in the file. */
export interface Element {
  readonly kind: string
  readonly title: string | undefined
  readonly alt: string | undefined
  readonly actual: string | undefined
  readonly scope: string | undefined
  readonly box: readonly number[] | undefined
  readonly children: readonly Element[]
  /** Pages (from 0) and numbers of the content that it holds itself. */
  readonly contents: readonly { readonly page: number; readonly id: number }[]
}

/** What a page draws, by the part of the structure that it belongs to. */
export interface PageMarks {
  readonly structParents: number | undefined
  /** Numbers of marked content, in the order of drawing. */
  readonly ids: readonly number[]
  readonly artifacts: number
  /** Operators that paint or write outside of all marked content. */
  readonly loose: readonly string[]
  /** Most marks that were open at once, and whether all were closed. */
  readonly deepest: number
  readonly balanced: boolean
}

export interface ReadStructure {
  readonly root: Element
  readonly pages: readonly PageMarks[]
  readonly catalog: PDFDict
  /** Of each page with a number: the element of each of its contents, told apart by its handle. */
  readonly parentTree: ReadonlyMap<number, readonly string[]>
  /** Handle of the element that holds a content: `page/id` -> handle. */
  readonly holders: ReadonlyMap<string, string>
  /** Elements whose parent in the file is another than the one that holds them. */
  readonly strays: readonly string[]
}

const name = (text: string): PDFName => PDFName.of(text)

export async function readStructure(bytes: Uint8Array): Promise<ReadStructure> {
  const pdf = await PDFDocument.load(bytes, { updateMetadata: false })
  const { context } = pdf
  const dict = (value: PDFObject | undefined): PDFDict => {
    const found = context.lookup(value)
    if (!(found instanceof PDFDict)) throw new Error('no dictionary')
    return found
  }
  const words = (value: PDFObject | undefined): string | undefined => {
    const found = context.lookup(value)
    return found instanceof PDFString || found instanceof PDFHexString ? found.decodeText() : undefined
  }
  const pageRefs = pdf.getPages().map((page) => page.ref.toString())
  const holders = new Map<string, string>()
  const strays: string[] = []

  const read = (ref: PDFObject, parent: PDFObject): Element => {
    const element = dict(ref)
    if (element.get(name('P'))?.toString() !== parent.toString()) strays.push(ref.toString())
    const attributes = element.get(name('A'))
    const own = attributes === undefined ? undefined : dict(attributes)
    const children: Element[] = []
    const contents: { page: number; id: number }[] = []
    const hold = (page: PDFObject | undefined, id: number): void => {
      const at = pageRefs.indexOf(page?.toString() ?? '')
      contents.push({ page: at, id })
      if (holders.has(`${at}/${id}`)) throw new Error(`content ${at}/${id} is held twice`)
      holders.set(`${at}/${id}`, ref.toString())
    }
    const kids = context.lookup(element.get(name('K')))
    for (const kid of kids instanceof PDFArray ? kids.asArray() : kids === undefined ? [] : [kids]) {
      if (kid instanceof PDFNumber) hold(element.get(name('Pg')), kid.asNumber())
      else if (kid instanceof PDFRef) children.push(read(kid, ref))
      else {
        const reference = dict(kid)
        hold(reference.get(name('Pg')), (reference.get(name('MCID')) as PDFNumber).asNumber())
      }
    }
    const box = own?.get(name('BBox'))
    return {
      kind: (element.get(name('S')) as PDFName).decodeText(),
      title: words(element.get(name('T'))),
      alt: words(element.get(name('Alt'))),
      actual: words(element.get(name('ActualText'))),
      scope: (own?.get(name('Scope')) as PDFName | undefined)?.decodeText(),
      box: box instanceof PDFArray ? box.asArray().map((each) => (each as PDFNumber).asNumber()) : undefined,
      children,
      contents,
    }
  }

  const rootRef = pdf.catalog.get(name('StructTreeRoot'))
  if (rootRef === undefined) throw new Error('no structure tree')
  const tree = dict(rootRef)
  const kids = context.lookup(tree.get(name('K')))
  const [first] = kids instanceof PDFArray ? kids.asArray() : []
  if (first === undefined) throw new Error('an empty structure tree')
  const root = read(first, rootRef)
  const parentTree = new Map<number, string[]>()
  const nums = context.lookup(dict(tree.get(name('ParentTree'))).get(name('Nums')))
  const pairs = nums instanceof PDFArray ? nums.asArray() : []
  for (let at = 0; at < pairs.length; at += 2) {
    const list = context.lookup(pairs[at + 1])
    parentTree.set(
      (pairs[at] as PDFNumber).asNumber(),
      list instanceof PDFArray ? list.asArray().map((each) => each.toString()) : [],
    )
  }
  const pages = pdf.getPages().map((page) => {
    const contents = page.node.Contents()
    const streams = contents instanceof PDFArray ? contents.asArray().map((each) => context.lookup(each)) : [contents]
    const text = streams
      .map((each) =>
        each instanceof PDFRawStream ? Buffer.from(decodePDFRawStream(each).decode()).toString('latin1') : '',
      )
      .join('\n')
    const key = page.node.get(name('StructParents'))
    return readMarks(text, key instanceof PDFNumber ? key.asNumber() : undefined)
  })
  return { root, pages, catalog: pdf.catalog, parentTree, holders, strays }
}

/** Operators that put something on the page. Source: ISO 32000-1 table 51, painting, text-showing, image and form operators. */
const SHOWS = new Set(['S', 's', 'f', 'F', 'f*', 'B', 'B*', 'b', 'b*', 'Tj', 'TJ', "'", '"', 'Do', 'sh', 'BI'])

function readMarks(text: string, structParents: number | undefined): PageMarks {
  const pattern = /<<|>>|<[0-9a-fA-F\s]*>|\((?:\\[\s\S]|[^\\)])*\)|[[\]]|\/[^\s/<>[\]()]+|[^\s/<>[\]()]+/gu
  const tokens = [...text.matchAll(pattern)].map(([token]) => token)
  const ids: number[] = []
  const loose: string[] = []
  let [open, deepest, artifacts, balanced] = [0, 0, 0, true]
  for (const [index, token] of tokens.entries()) {
    if (token === 'BDC' || token === 'BMC') {
      open += 1
      deepest = Math.max(deepest, open)
      const begin = tokens.lastIndexOf('<<', index)
      const properties = token === 'BDC' ? tokens.slice(begin, index) : []
      const id = properties.indexOf('/MCID')
      if (id >= 0) ids.push(Number(properties[id + 1]))
      else artifacts += 1
    } else if (token === 'EMC') {
      open -= 1
      if (open < 0) balanced = false
    } else if (SHOWS.has(token) && open === 0) loose.push(token)
  }
  return { structParents, ids, artifacts, loose, deepest, balanced: balanced && open === 0 }
}

/** An element with all below it, in the order of reading. */
export const allOf = (element: Element): Element[] => [element, ...element.children.flatMap(allOf)]
