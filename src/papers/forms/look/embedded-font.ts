import { deflateSync } from 'node:zlib'
import { PDFRawStream, PDFString, type PDFContext, type PDFDict } from '@cantoo/pdf-lib'
import { readFonts } from '../../../packet/index.js'
import { isDrawnAlone } from './drawn-alone.js'
import { lackedBy, type LookFont } from './look-font.js'
import { readTrueType, type TrueType } from './true-type.js'

/** Marks the name of a font of which only some glyphs are embedded. */
const NAME = 'GABLEW+DejaVuSansCondensed'

/** Height of letters over height of type; the font's own ascent has room for marks above capitals. */
const LETTER_ASCENT = 0.76

/** The font of the drawings, embedded into a form; `finish` puts those of its glyphs into the file that were used. */
export function embeddedFont(context: PDFContext): LookFont & { readonly finish: () => void } {
  const font = readTrueType(readFonts().plain)
  const used = new Map<number, string>()
  const ref = context.nextRef()
  const glyphOf = (character: string): number | undefined => font.glyphOf(character.codePointAt(0) ?? 0)
  const perEm = (units: number): number => units / font.unitsPerEm
  return {
    ref,
    ascent: LETTER_ASCENT,
    descent: -perEm(font.descent),
    missing: (text) => lackedBy((character) => isDrawnAlone(character) && glyphOf(character) !== undefined, text),
    widthPt: (text, sizePt) =>
      Array.from(text).reduce((sum, character) => sum + perEm(font.widthOf(glyphOf(character) ?? 0)), 0) * sizePt,
    encode: (text) => {
      const codes = Array.from(text).map((character) => {
        const glyph = glyphOf(character) ?? 0
        used.set(glyph, character)
        return hex(glyph)
      })
      return `<${codes.join('')}>`
    },
    finish: () => context.assign(ref, writeFont(context, font, used)),
  }
}

/** @source ISO 32000-1:2008, 9.7 (composite fonts), 9.10.3 (ToUnicode); from memory. */
function writeFont(context: PDFContext, font: TrueType, used: ReadonlyMap<number, string>): PDFDict {
  const perMille = (units: number): number => Math.round((units * 1000) / font.unitsPerEm)
  const glyphs = [...used.keys()].toSorted((a, b) => a - b)
  const file = compressed(context, font.subset(new Set(glyphs)), true)
  const descriptor = context.register(
    context.obj({
      Type: 'FontDescriptor',
      FontName: NAME,
      Flags: 4,
      FontBBox: font.box.map(perMille),
      ItalicAngle: 0,
      Ascent: perMille(font.ascent),
      Descent: perMille(font.descent),
      CapHeight: 729,
      StemV: 80,
      FontFile2: context.register(file),
    }),
  )
  const descendant = context.register(
    context.obj({
      Type: 'Font',
      Subtype: 'CIDFontType2',
      BaseFont: NAME,
      CIDSystemInfo: { Registry: PDFString.of('Adobe'), Ordering: PDFString.of('Identity'), Supplement: 0 },
      FontDescriptor: descriptor,
      CIDToGIDMap: 'Identity',
      W: glyphs.flatMap((glyph) => [glyph, [perMille(font.widthOf(glyph))]]),
    }),
  )
  const toUnicode = context.register(compressed(context, Buffer.from(unicodeMap(glyphs, used)), false))
  return context.obj({
    Type: 'Font',
    Subtype: 'Type0',
    BaseFont: NAME,
    Encoding: 'Identity-H',
    DescendantFonts: [descendant],
    ToUnicode: toUnicode,
  })
}

function compressed(context: PDFContext, bytes: Uint8Array, isFont: boolean): PDFRawStream {
  const dict = context.obj({ Filter: 'FlateDecode', ...(isFont ? { Length1: bytes.length } : {}) })
  return PDFRawStream.of(dict, new Uint8Array(deflateSync(bytes)))
}

/** Which character each glyph stands for, so that the text can be searched and copied. */
function unicodeMap(glyphs: readonly number[], used: ReadonlyMap<number, string>): string {
  const lines = glyphs.map((glyph) => `<${hex(glyph)}> <${utf16(used.get(glyph) ?? '')}>`)
  const blocks = Array.from({ length: Math.ceil(lines.length / 100) }, (_, i) => lines.slice(100 * i, 100 * i + 100))
  return [
    '/CIDInit /ProcSet findresource begin 12 dict begin begincmap',
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
    '/CMapName /Adobe-Identity-UCS def /CMapType 2 def',
    '1 begincodespacerange <0000> <FFFF> endcodespacerange',
    ...blocks.flatMap((block) => [`${block.length} beginbfchar`, ...block, 'endbfchar']),
    'endcmap CMapName currentdict /CMap defineresource pop end end',
  ].join('\n')
}

const hex = (number: number): string => number.toString(16).toUpperCase().padStart(4, '0')
const utf16 = (text: string): string => Array.from({ length: text.length }, (_, i) => hex(text.charCodeAt(i))).join('')
