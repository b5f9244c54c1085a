import {
  concatTransformationMatrix,
  degrees,
  drawObject,
  PDFDict,
  PDFDocument,
  PDFName,
  PDFPage,
  PDFPageLeaf,
  popGraphicsState,
  pushGraphicsState,
  type PDFEmbeddedPage,
} from '@cantoo/pdf-lib'
import { documentPageId } from '../drawings/index.js'
import { addBookmarks } from './bookmarks.js'
import type { DocumentBytes } from './document-shapes.js'
import { brokenDocument, openDocument, type OpenDocument } from './open-document.js'
import { annotationLook, BrokenPage, LookCopier, type SourcePage } from './pages/index.js'
import { closeMarked, openArtifact, tagPages, type PageTags } from './tag-pages.js'

const MARGIN_PT = 12

/**
 * Draws the pages of the person's documents behind the drawings and stamps each. Only their look is taken over: no
 * actions, scripts, links, form fields or files, whatever the documents hold. Each page is a part of the structure of
 * the packet; its own structure is not taken over. What is not drawing is packed, which halves the file.
 *
 * @param packet The drawings as a PDF.
 * @param stamps A PDF with one small page for each page of the documents.
 * @param date The only date that the file shall hold, year-month-day.
 * @throws FileError naming a document whose pages cannot be copied.
 */
export async function appendDocuments(
  packet: Uint8Array,
  stamps: Uint8Array,
  documents: readonly DocumentBytes[],
  date: string,
): Promise<Uint8Array> {
  const target = await PDFDocument.load(packet, { updateMetadata: false })
  const open: OpenDocument[] = []
  for (const { path, bytes } of documents) open.push(await openDocument(path, bytes))
  const count = open.reduce((sum, { sources }) => sum + sources.length, 0)
  const marks = await target.embedPdf(
    stamps,
    Array.from({ length: count }, (_, index) => index),
  )
  const tags = tagPages(target)
  const bookmarks: { title: string; page: PDFPage }[] = []
  let next = 0
  for (const [at, document] of open.entries()) {
    const copier = new LookCopier(document.pdf.context, target.context)
    const name = documents[at]?.title ?? document.path.split('/').at(-1) ?? document.path
    tags?.begin(name)
    for (const [index, source] of document.sources.entries()) {
      const spoken = `${documentPageId(next + 1)}: page ${index + 1} of ${document.sources.length} of ${name}`
      const page = attempt(document, index + 1, () => addPage(target, source, document, copier, tags, spoken))
      const mark = marks[next++]
      if (mark !== undefined) {
        page.pushOperators(openArtifact())
        page.drawPage(mark, { ...placeOf(page, mark), rotate: degrees(page.getRotation().angle) })
        page.pushOperators(closeMarked())
      }
      if (index === 0) bookmarks.push({ title: name, page })
    }
  }
  await addBookmarks(target, bookmarks)
  target.setModificationDate(new Date(`${date}T00:00:00Z`))
  return await target.save({ useObjectStreams: true, addDefaultPage: false, updateFieldAppearances: false })
}

/** @throws FileError with the name of the document and the number of the page. */
function attempt(document: OpenDocument, page: number, work: () => PDFPage): PDFPage {
  try {
    return work()
  } catch (error) {
    if (error instanceof BrokenPage) throw brokenDocument(document.path, page, error.message, error)
    throw error
  }
}

/** A page with the size and the look of another, and its annotations drawn into it. */
function addPage(
  target: PDFDocument,
  source: SourcePage,
  { pdf }: OpenDocument,
  copier: LookCopier,
  tags: PageTags | undefined,
  spoken: string,
): PDFPage {
  const { context } = target
  const entries = PDFDict.withContext(context)
  const set = (name: string, value: Parameters<PDFDict['set']>[1]): void => entries.set(PDFName.of(name), value)
  set('Type', PDFName.of('Page'))
  set('MediaBox', context.obj([...source.media]))
  if (source.crop !== undefined) set('CropBox', context.obj([...source.crop]))
  if (source.turn !== 0) set('Rotate', context.obj(source.turn))
  if (source.unit !== undefined) set('UserUnit', context.obj(source.unit))
  if (source.group !== undefined) set('Group', copier.copy(source.group, 'data'))
  const looks = source.annotations
    .map((annotation) => annotationLook(annotation, pdf.context))
    .filter((look) => typeof look !== 'string')
  const resources = copier.copyResources(source.resources)
  const contents = source.contents.map((part) => copier.copy(part, 'content'))
  const marked = tags?.wrap({ contents, resources, more: looks.length > 0 })
  set('Resources', resources)
  set('Contents', context.obj([...(marked?.contents ?? contents)]))
  const node = PDFPageLeaf.fromMapWithContext(new Map(entries.entries()), context)
  const page = PDFPage.of(node, context.register(node), target)
  target.addPage(page)
  if (marked !== undefined && looks.length > 0) page.pushOperators(marked.openMore)
  for (const look of looks) {
    const name = node.newXObject(
      'Annotation',
      copier.copy(look.drawing, 'drawing') as Parameters<typeof node.setXObject>[1],
    )
    page.pushOperators(
      pushGraphicsState(),
      concatTransformationMatrix(...look.matrix),
      drawObject(name),
      popGraphicsState(),
    )
  }
  if (marked !== undefined && looks.length > 0) page.pushOperators(closeMarked())
  marked?.close(page, spoken)
  return page
}

/** Origin of a stamp so that it stands upright in the lower right corner as the page is seen, whatever its rotation. */
function placeOf(page: PDFPage, mark: PDFEmbeddedPage): { readonly x: number; readonly y: number } {
  const { x, y, width, height } = page.getCropBox()
  const turn = ((page.getRotation().angle % 360) + 360) % 360
  const along = MARGIN_PT + mark.width
  if (turn === 90) return { x: x + width - MARGIN_PT, y: y + height - along }
  if (turn === 180) return { x: x + along, y: y + height - MARGIN_PT }
  if (turn === 270) return { x: x + MARGIN_PT, y: y + along }
  return { x: x + width - along, y: y + MARGIN_PT }
}
