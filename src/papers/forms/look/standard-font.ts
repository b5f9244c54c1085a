import { StandardFonts, type PDFDocument } from '@cantoo/pdf-lib'
import { lackedBy, type LookFont } from './look-font.js'

/** Families of the fonts that every viewer has: upright, bold, slanted, both. */
const FAMILIES: readonly (readonly [pattern: RegExp, names: readonly StandardFonts[]])[] = [
  [
    /courier|mono/iu,
    [StandardFonts.Courier, StandardFonts.CourierBold, StandardFonts.CourierOblique, StandardFonts.CourierBoldOblique],
  ],
  [
    /times|roman|georgia/iu,
    [
      StandardFonts.TimesRoman,
      StandardFonts.TimesRomanBold,
      StandardFonts.TimesRomanItalic,
      StandardFonts.TimesRomanBoldItalic,
    ],
  ],
  [
    /./u,
    [
      StandardFonts.Helvetica,
      StandardFonts.HelveticaBold,
      StandardFonts.HelveticaOblique,
      StandardFonts.HelveticaBoldOblique,
    ],
  ],
]

/** The standard font that comes nearest to a font of a form, by its name. */
export function standardNameFor(baseFont: string): StandardFonts {
  const [, names] = FAMILIES.find(([pattern]) => pattern.test(baseFont)) ?? []
  const index = (/bold/iu.test(baseFont) ? 1 : 0) + (/italic|oblique/iu.test(baseFont) ? 2 : 0)
  return names?.[index] ?? StandardFonts.Helvetica
}

/** One of the fonts that every viewer has, with the characters of Windows code page 1252. */
export function standardFont(pdf: PDFDocument, name: StandardFonts): LookFont {
  const font = pdf.embedStandardFont(name)
  const widths = new Map<string, number>()
  for (const codePoint of font.getCharacterSet()) {
    const character = String.fromCodePoint(codePoint)
    // One by one: pairs are not set closer together when they are drawn.
    widths.set(character, font.widthOfTextAtSize(character, 1))
  }
  const ascent = font.heightAtSize(1, { descender: false })
  return {
    ref: font.ref,
    ascent,
    descent: font.heightAtSize(1) - ascent,
    missing: (text) => lackedBy((character) => widths.has(character), text),
    widthPt: (text, sizePt) =>
      Array.from(text).reduce((sum, character) => sum + (widths.get(character) ?? 0), 0) * sizePt,
    encode: (text) => font.encodeText(text).toString(),
  }
}
