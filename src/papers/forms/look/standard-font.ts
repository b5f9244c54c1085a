import { StandardFontEmbedder, type PDFContext } from '@cantoo/pdf-lib'
import { lackedBy, type LookFont } from './look-font.js'

/** Families of the fonts that every viewer has. */
const FAMILIES: readonly (readonly [pattern: RegExp, names: readonly [string, string, string, string]])[] = [
  [/courier|mono/iu, ['Courier', 'Courier-Bold', 'Courier-Oblique', 'Courier-BoldOblique']],
  [/times|serif(?!.*sans)|roman|georgia/iu, ['Times-Roman', 'Times-Bold', 'Times-Italic', 'Times-BoldItalic']],
  [/./u, ['Helvetica', 'Helvetica-Bold', 'Helvetica-Oblique', 'Helvetica-BoldOblique']],
]

type StandardName = Parameters<typeof StandardFontEmbedder.for>[0]

/** The standard font that comes nearest to a font of a form, by its name. */
export function standardNameFor(baseFont: string): string {
  const [, names] = FAMILIES.find(([pattern]) => pattern.test(baseFont)) ?? []
  const index = (/bold/iu.test(baseFont) ? 1 : 0) + (/italic|oblique/iu.test(baseFont) ? 2 : 0)
  return names?.[index] ?? 'Helvetica'
}

/** One of the fonts that every viewer has, with the characters of Windows code page 1252. */
export function standardFont(context: PDFContext, name: string): LookFont {
  const embedder = StandardFontEmbedder.for(name as StandardName)
  const widths = new Map<string, number>()
  for (const codePoint of embedder.encoding.supportedCodePoints) {
    const character = String.fromCodePoint(codePoint)
    // One by one: pairs are not set closer together when they are drawn.
    widths.set(character, embedder.widthOfTextAtSize(character, 1))
  }
  return {
    ref: embedder.embedIntoContext(context),
    ascent: embedder.heightOfFontAtSize(1, { descender: false }),
    descent: embedder.heightOfFontAtSize(1) - embedder.heightOfFontAtSize(1, { descender: false }),
    missing: (text) => lackedBy((character) => widths.has(character), text),
    widthPt: (text, sizePt) => [...text].reduce((sum, character) => sum + (widths.get(character) ?? 0), 0) * sizePt,
    encode: (text) => embedder.encodeText(text).toString(),
  }
}
