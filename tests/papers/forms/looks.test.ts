import { PDFDocument, StandardFonts } from '@cantoo/pdf-lib'
import { describe, expect, test } from 'vitest'
import { openForm } from '../../../src/papers/forms/document/index.js'
import { readDefaultLook } from '../../../src/papers/forms/look/default-look.js'
import { listLines } from '../../../src/papers/forms/look/list-look.js'
import { standardFont } from '../../../src/papers/forms/look/standard-font.js'
import { readTrueType } from '../../../src/papers/forms/look/true-type.js'
import { frameOf } from '../../../src/papers/forms/look/widget-frame.js'
import { readFonts } from '../../../src/packet/index.js'
import { rawForm } from './raw-pdf.js'

describe('what a default appearance asks for', () => {
  test('font, size and colour, whatever stands between', () => {
    expect(readDefaultLook('/Helv 10 Tf 0 g')).toEqual({ fontName: 'Helv', sizePt: 10, colour: '0 g' })
    expect(readDefaultLook('0.1 0.2 .3 rg 50 Tz /F1 0 Tf')).toEqual({
      fontName: 'F1',
      sizePt: 0,
      colour: '0.1 0.2 0.3 rg',
    })
    expect(readDefaultLook('0 0 0 1 k /X -8.5 Tf')).toEqual({ fontName: 'X', sizePt: 8.5, colour: '0 0 0 1 k' })
  })

  test('nothing that could draw or be too large', () => {
    expect(readDefaultLook('')).toEqual({ fontName: '', sizePt: 0, colour: '0 g' })
    expect(readDefaultLook('(x) Tj Q 0 0 9 9 re f /F 9999 Tf 7 g 1 2 rg')).toEqual({
      fontName: 'F',
      sizePt: 300,
      colour: '1 g',
    })
  })
})

describe('the box of a field', () => {
  const frame = async (more: string, rect = '10 20 110 40') => {
    const bytes = rawForm([`<< /Type /Annot /Subtype /Widget /FT /Tx /T (a) /Rect [${rect}] ${more} >>`])
    const [field] = (await openForm('f.pdf', bytes)).fields
    const [widget] = field?.widgets ?? []
    return widget && frameOf(widget)
  }

  test('has the ground and the border that it asks for, and no others', async () => {
    expect(await frame('')).toEqual({
      widthPt: 100,
      heightPt: 20,
      borderPt: 0,
      matrix: [1, 0, 0, 1, 0, 0],
      operators: [],
    })
    const both = await frame('/MK << /BG [1 1 0.5] /BC [0] >> /BS << /W 2 >>')
    expect(both?.borderPt).toBe(2)
    expect(both?.operators).toEqual(['q 1 1 0.5 rg 0 0 100 20 re f Q', 'q 0 G 2 w 1 1 98 18 re S Q'])
    expect((await frame('/MK << /BC [0 0 0 1] >> /BS << /S /D >>'))?.operators).toEqual([
      'q 0 0 0 1 K 1 w [3] 0 d 0.5 0.5 99 19 re S Q',
    ])
    expect((await frame('/MK << /BC [1 0 0] >> /BS << /S /U >>'))?.operators).toEqual([
      'q 1 0 0 RG 1 w 0 0.5 m 100 0.5 l S Q',
    ])
    expect((await frame('/MK << /BC [0] >> /Border [0 0 3]'))?.borderPt).toBe(3)
    expect((await frame('/MK << /BC [0] >> /BS << /W 0 >>'))?.operators).toEqual([])
    expect((await frame('/MK << /BC [] /BG [] >>'))?.operators).toEqual([])
  })

  test('is turned into its place, and none where it has no size', async () => {
    expect(await frame('/MK << /R 90 >>')).toMatchObject({ widthPt: 20, heightPt: 100, matrix: [0, 1, -1, 0, 100, 0] })
    expect(await frame('/MK << /R 180 >>')).toMatchObject({ widthPt: 100, matrix: [-1, 0, 0, -1, 100, 20] })
    expect(await frame('/MK << /R -90 >>')).toMatchObject({ widthPt: 20, matrix: [0, -1, 1, 0, 0, 20] })
    expect(await frame('', '110 40 10 20')).toMatchObject({ widthPt: 100, heightPt: 20 })
    expect(await frame('', '10 20 10 40')).toBeUndefined()
  })
})

describe('a list', () => {
  const choices = ['a', 'b', 'c', 'd', 'e'].map((text) => ({ value: text, text }))
  const lines = async (chosen: readonly string[], heightPt: number, sizePt = 10) =>
    listLines(choices, chosen, standardFont(await PDFDocument.create(), StandardFonts.Helvetica), {
      widthPt: 50,
      heightPt,
      paddingPt: 2,
      alignment: 0,
      multiline: false,
      cells: undefined,
      sizePt,
    })

  test('shows from the top what fits, and marks what is chosen', async () => {
    // 38.5 pt less 4 pt hold three lines of 11.5 pt.
    const { pieces, chosen, trouble, top } = await lines(['a', 'c'], 38.5)
    expect(pieces.map(({ text }) => text)).toEqual(['a', 'b', 'c'])
    expect([top, trouble]).toEqual([0, undefined])
    expect(chosen).toEqual([
      { y: 25, heightPt: 11.5 },
      { y: 2, heightPt: 11.5 },
    ])
    expect(pieces.map(({ y }) => Number(y.toFixed(3)))).toEqual([28.195, 16.695, 5.195])
  })

  test('begins with the first chosen line where that would not be seen, and tells those that are not', async () => {
    const late = await lines(['d'], 38.5)
    expect([late.pieces.map(({ text }) => text).join(''), late.trouble]).toEqual(['de', undefined])
    expect((await lines(['c', 'd'], 38.5)).trouble).toBe("the list shows 3 lines, and 'd' would not be seen on paper")
    expect((await lines(['a'], 38.5, 0)).sizePt).toBe(12)
    expect((await lines(['a'], 38.5, 0.9)).sizePt).toBe(0.9)
  })
})

describe('the subset of the embedded font', () => {
  const whole = readFonts().plain
  const font = readTrueType(whole)
  /** Tables by tag, read by the layout of ISO/IEC 14496-22, 4.5 (from memory). */
  const tablesOf = (bytes: Uint8Array) => {
    const data = Buffer.from(bytes)
    return new Map(
      Array.from({ length: data.readUInt16BE(4) }, (_, i) => {
        const at = 12 + 16 * i
        const [sum, offset, length] = [4, 8, 12].map((more) => data.readUInt32BE(at + more)) as [number, number, number]
        return [
          data.toString('latin1', at, at + 4),
          { sum, offset, length, bytes: data.subarray(offset, offset + length) },
        ]
      }),
    )
  }
  const outline = (tables: ReturnType<typeof tablesOf>, glyph: number) => {
    const loca = tables.get('loca')?.bytes ?? Buffer.alloc(0)
    const [from, to] = [loca.readUInt32BE(4 * glyph), loca.readUInt32BE(4 * glyph + 4)]
    return tables.get('glyf')?.bytes.subarray(from, to) ?? Buffer.alloc(0)
  }
  const glyphs = ['Ω', '≤', 'é'].map((character) => font.glyphOf(character.codePointAt(0) ?? 0) ?? 0)
  const small = font.subset(new Set(glyphs))
  const [before, after] = [tablesOf(whole), tablesOf(small)]

  test('has the outlines that it was asked for and their parts, byte by byte, and no others', () => {
    expect(before.get('head')?.bytes.readInt16BE(50)).toBe(1)
    for (const glyph of glyphs) {
      const [one, other] = [outline(before, glyph), outline(after, glyph)]
      expect(one.length).toBeGreaterThan(10)
      expect(other.subarray(0, one.length).equals(one)).toBe(true)
    }
    // é is e and an acute accent.
    const e = font.glyphOf(0x65) ?? 0
    expect(outline(after, glyphs[2] ?? 0).readInt16BE(0)).toBe(-1)
    expect(outline(after, e).length).toBeGreaterThan(10)
    expect(outline(after, font.glyphOf(0x57) ?? 0).length).toBe(0)
    expect(small.length).toBeLessThan(whole.length / 5)
  })

  test('its tables stand behind each other, each with its sum, and the metrics are those of the font', () => {
    let end = 12 + 16 * after.size
    for (const [tag, { offset, length, sum, bytes }] of after) {
      expect([tag, offset % 4, offset]).toEqual([tag, 0, end])
      end = offset + Math.ceil(length / 4) * 4
      const padded = Buffer.concat([bytes, Buffer.alloc(3)])
      let total = 0
      for (let at = 0; at < length; at += 4) total = (total + padded.readUInt32BE(at)) % 2 ** 32
      expect([tag, total]).toEqual([tag, sum])
    }
    expect(end).toBe(small.length)
    for (const tag of ['hmtx', 'hhea', 'maxp'])
      expect(after.get(tag)?.bytes.equals(before.get(tag)?.bytes ?? small)).toBe(true)
    // 9 tables: the largest power of two is 8.
    const data = Buffer.from(small)
    expect([4, 6, 8, 10].map((at) => data.readUInt16BE(at))).toEqual([9, 128, 3, 16])
  })

  test('units, height and box are those of its tables', () => {
    const head = before.get('head')?.bytes ?? Buffer.alloc(0)
    expect(font.unitsPerEm).toBe(2048)
    // DejaVu Sans 2.37: hhea ascent 1901, descent -483.
    expect([font.ascent, font.descent]).toEqual([1901, -483])
    expect(font.box).toEqual([36, 38, 40, 42].map((at) => head.readInt16BE(at)))
    expect([font.glyphOf(0x2264), font.glyphOf(0x378), font.glyphOf(0x10ffff)].map((one) => one !== undefined)).toEqual(
      [true, false, false],
    )
  })
})
