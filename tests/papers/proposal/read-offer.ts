import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

export interface ReadText {
  readonly page: number
  readonly text: string
  /** Height of type, points. */
  readonly sizePt: number
  readonly left: number
  readonly right: number
  readonly base: number
}

export interface ReadOffer {
  readonly pages: number
  readonly texts: readonly ReadText[]
  /** All words of a page, joined by spaces. */
  readonly wordsOf: (page: number) => string
  readonly words: string
  readonly size: readonly [number, number]
}

/** Reads a PDF with a reader of its own. */
export async function readOffer(bytes: Uint8Array): Promise<ReadOffer> {
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise
  const texts: ReadText[] = []
  let size: [number, number] = [0, 0]
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number)
    size = [page.view[2] ?? 0, page.view[3] ?? 0]
    for (const item of (await page.getTextContent()).items) {
      if (!('str' in item) || item.str.trim() === '') continue
      const [a = 0, b = 0, , , left = 0, base = 0] = item.transform as number[]
      texts.push({ page: number, text: item.str, sizePt: Math.hypot(a, b), left, right: left + item.width, base })
    }
  }
  const wordsOf = (page: number): string =>
    texts
      .filter((each) => each.page === page)
      .map(({ text }) => text.trim())
      .join(' ')
  const words = Array.from({ length: pdf.numPages }, (_, index) => wordsOf(index + 1)).join(' ')
  return { pages: pdf.numPages, texts, wordsOf, words, size }
}
