import type { PDFDocument, PDFName, PDFPage } from '@cantoo/pdf-lib'

/** Adds bookmarks behind those that a PDF has already. */
export async function addBookmarks(
  target: PDFDocument,
  items: readonly { readonly title: string; readonly page: PDFPage }[],
): Promise<void> {
  const { PDFDict, PDFHexString, PDFName: Name, PDFNumber, PDFRef } = await import('@cantoo/pdf-lib')
  const name = (text: string): PDFName => Name.of(text)
  const { context, catalog } = target
  const root = catalog.get(name('Outlines'))
  const outline = catalog.lookupMaybe(name('Outlines'), PDFDict)
  if (!(root instanceof PDFRef) || outline === undefined) return
  let before = outline.get(name('Last'))
  for (const { title, page } of items) {
    const dict = context.obj({ Title: PDFHexString.fromText(title), Parent: root, Dest: [page.ref, 'Fit'] })
    const ref = context.register(dict)
    if (before instanceof PDFRef) {
      dict.set(name('Prev'), before)
      context.lookup(before, PDFDict).set(name('Next'), ref)
    } else outline.set(name('First'), ref)
    outline.set(name('Last'), ref)
    before = ref
  }
  const count = outline.lookupMaybe(name('Count'), PDFNumber)?.asNumber() ?? 0
  outline.set(name('Count'), PDFNumber.of(count + items.length))
}
