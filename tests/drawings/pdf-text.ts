import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'

export interface PdfPage {
  readonly text: string
  readonly widthPt: number
  readonly heightPt: number
}

/** Words of every page as a viewer finds them. */
export async function pagesOf(pdf: Uint8Array): Promise<PdfPage[]> {
  const document = await getDocument({ data: pdf.slice(), useSystemFonts: false, verbosity: 0 }).promise
  const pages: PdfPage[] = []
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number)
    const content = await page.getTextContent()
    const [, , widthPt = 0, heightPt = 0] = page.view
    pages.push({ text: content.items.map((item) => ('str' in item ? item.str : '')).join('\n'), widthPt, heightPt })
  }
  return pages
}

/** Straight pieces that a page draws, points from the lower left corner of the paper. */
export async function linesOf(
  pdf: Uint8Array,
  number: number,
): Promise<{ readonly from: readonly [number, number]; readonly to: readonly [number, number] }[]> {
  const document = await getDocument({ data: pdf.slice(), useSystemFonts: false, verbosity: 0 }).promise
  const page = await document.getPage(number)
  const { fnArray, argsArray } = await page.getOperatorList()
  const found: { from: [number, number]; to: [number, number] }[] = []
  let matrix = [1, 0, 0, 1, 0, 0]
  const stack: number[][] = []
  const place = (x: number, y: number): [number, number] => {
    const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = matrix
    return [a * x + c * y + e, b * x + d * y + f]
  }
  for (const [index, operator] of fnArray.entries()) {
    const args = argsArray[index] as number[]
    if (operator === OPS.save) stack.push(matrix)
    else if (operator === OPS.restore) matrix = stack.pop() ?? matrix
    else if (operator === OPS.transform) matrix = product(matrix, args)
    else if (operator === OPS.constructPath) {
      const [operators, numbers] = args as unknown as [number[], number[]]
      let [at, here] = [0, [0, 0] as [number, number]]
      for (const each of operators) {
        const [x = 0, y = 0] = [numbers[at], numbers[at + 1]]
        if (each === OPS.moveTo) here = place(x, y)
        else if (each === OPS.lineTo) {
          const to = place(x, y)
          found.push({ from: here, to })
          here = to
        }
        at += { [OPS.curveTo]: 6, [OPS.rectangle]: 4, [OPS.closePath]: 0 }[each] ?? 2
      }
    }
  }
  return found
}

function product(m: readonly number[], n: readonly number[]): number[] {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = m
  const [g = 1, h = 0, i = 0, j = 1, k = 0, l = 0] = n
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f]
}

/** Titles of the bookmarks. */
export async function bookmarksOf(pdf: Uint8Array): Promise<string[]> {
  const document = await getDocument({ data: pdf.slice(), useSystemFonts: false, verbosity: 0 }).promise
  return ((await document.getOutline()) ?? []).map((item) => item.title)
}

/** Text with every run of spaces and line breaks as one space, so that wrapped lines are found. */
export const flat = (text: string): string => text.replaceAll(/\s+/gu, ' ')

/** Where a text begins on a page as it is seen, as shares of its width and height from the upper left corner. */
export async function placeOf(
  pdf: Uint8Array,
  number: number,
  text: string,
): Promise<readonly [number, number] | undefined> {
  const document = await getDocument({ data: pdf.slice(), useSystemFonts: false, verbosity: 0 }).promise
  const page = await document.getPage(number)
  const viewport = page.getViewport({ scale: 1 })
  const content = await page.getTextContent()
  const found = content.items.find((item) => 'str' in item && item.str === text)
  if (found === undefined || !('transform' in found)) return undefined
  const [x = 0, y = 0] = viewport.convertToViewportPoint(found.transform[4] as number, found.transform[5] as number)
  return [x / viewport.width, y / viewport.height]
}
