import { PDFDocument, StandardFonts } from '@cantoo/pdf-lib'
import { describe, expect, test } from 'vitest'
import { embeddedFont } from '../../../src/papers/forms/look/embedded-font.js'
import { standardFont, standardNameFor } from '../../../src/papers/forms/look/standard-font.js'
import { layText, type TextBox } from '../../../src/papers/forms/look/text-layout.js'
import { textWidthPt } from '../../../src/drawings/model/index.js'

const helvetica = standardFont(await PDFDocument.create(), StandardFonts.Helvetica)
const box = (more: Partial<TextBox>): TextBox => ({
  widthPt: 100,
  heightPt: 20,
  paddingPt: 2,
  alignment: 0,
  multiline: false,
  cells: undefined,
  sizePt: 10,
  ...more,
})

describe('widths', () => {
  test('are those of the published metrics of Helvetica, letter by letter', () => {
    // Adobe Core 14 AFM, Helvetica.afm: WX of A 667, W 944, i 222, space 278, 5 556.
    const published = { A: 667, W: 944, i: 222, ' ': 278, '5': 556 }
    for (const [letter, width] of Object.entries(published))
      expect(helvetica.widthPt(letter, 1000)).toBeCloseTo(width, 6)
    // AV is set closer where pairs are; a field draws letters one by one.
    expect(helvetica.widthPt('AV', 1000)).toBeCloseTo(667 + 667, 6)
    expect([helvetica.ascent, helvetica.descent].map((one) => Math.round(one * 1000))).toEqual([718, 207])
  })

  test('of the embedded font are those of the sheets', async () => {
    const font = embeddedFont((await PDFDocument.create()).context)
    for (const text of ['Ω ≤ 5', 'Modules and wiring', 'Ünïcode é']) {
      expect(font.widthPt(text, 10)).toBeCloseTo(textWidthPt(text, 10), 2)
    }
    expect(font.missing('a\u{1F31E}b')).toEqual(['\u{1F31E}'])
  })

  test('a font of the form stands for the standard one that comes nearest', () => {
    expect(standardNameFor('ABCDEF+ArialMT-Bold')).toBe('Helvetica-Bold')
    expect(standardNameFor('TimesNewRomanPS-ItalicMT')).toBe('Times-Italic')
    expect(standardNameFor('CourierNew,BoldItalic')).toBe('Courier-BoldOblique')
    expect(standardNameFor('')).toBe('Helvetica')
  })
})

describe('one line', () => {
  test('left, in the middle, right', () => {
    const x = (alignment: 0 | 1 | 2) => layText('AA', helvetica, box({ alignment })).pieces[0]?.x
    expect(x(0)).toBe(2)
    expect(x(1)).toBeCloseTo(50 - 6.67, 6)
    expect(x(2)).toBeCloseTo(98 - 13.34, 6)
  })

  test('fits to the last letter that the box holds', () => {
    // 96 pt hold 17 digits of 5.56 pt, not 18.
    expect(layText('5'.repeat(17), helvetica, box({})).trouble).toBeUndefined()
    expect(layText('5'.repeat(18), helvetica, box({})).trouble).toContain('100 pt wide')
    expect(layText('5', helvetica, box({ heightPt: 9 })).trouble).toContain('high')
  })

  test('whose size follows the box: the height, or the width where that is less', () => {
    expect(layText('5', helvetica, box({ sizePt: 0 })).sizePt).toBe(17.2)
    expect(layText('5'.repeat(20), helvetica, box({ sizePt: 0 })).sizePt).toBe(8.6)
    expect(layText('5'.repeat(43), helvetica, box({ sizePt: 0 })).trouble).toBeUndefined()
    expect(layText('5'.repeat(44), helvetica, box({ sizePt: 0 })).trouble).toContain('at 4 pt')
  })
})

describe('several lines', () => {
  const lines = (text: string, more: Partial<TextBox> = {}) =>
    layText(text, helvetica, box({ multiline: true, heightPt: 60, ...more }))

  test('break at spaces and line ends, and in a word that is wider than the box', () => {
    expect(lines('one two three four five\nsix').pieces.map(({ text }) => text)).toEqual([
      'one two three four',
      'five',
      'six',
    ])
    // Two digits and a space are 13.9 pt, and three digits with it 19.46 pt: at 10 pt the room of the box.
    expect(lines('5 55', { widthPt: 4 + 10 * (3 * 0.556 + 0.278) }).pieces.map(({ text }) => text)).toEqual(['5 55'])
    expect(lines('5 55', { widthPt: 23.4 }).pieces.map(({ text }) => text)).toEqual(['5', '55'])
    expect(lines('5'.repeat(20)).pieces.map(({ text }) => text)).toEqual(['5'.repeat(17), '555'])
  })

  test('stand below each other, and are too many when they pass the box', () => {
    const { pieces, trouble } = lines('a\nb\nc\nd')
    expect(trouble).toBeUndefined()
    expect(pieces.map(({ y }) => Number(y.toFixed(2)))).toEqual([50.82, 39.32, 27.82, 16.32])
    expect(lines('a\nb\nc\nd\ne').trouble).toBeUndefined()
    expect(lines('a\nb\nc\nd\ne\nf').trouble).toContain('6 lines')
  })

  test('whose size follows the box get smaller until they fit', () => {
    expect(lines('a', { sizePt: 0 }).sizePt).toBe(12)
    expect(lines('a\nb\nc\nd\ne\nf', { sizePt: 0 }).sizePt).toBe(8.5)
    expect(lines('a\n'.repeat(20), { sizePt: 0 })).toMatchObject({ sizePt: 4 })
  })
})

describe('cells', () => {
  test('hold one character each, in their middle', () => {
    const { pieces } = layText('123', helvetica, box({ cells: 5 }))
    expect(pieces.map(({ text, x }) => [text, Number(x.toFixed(2))])).toEqual([
      ['1', 7.22],
      ['2', 27.22],
      ['3', 47.22],
    ])
    expect(layText('123', helvetica, box({ cells: 5, alignment: 2 })).pieces[0]?.x).toBeCloseTo(47.22, 6)
  })

  test('whose letters follow the box are as high as it, or as wide as a cell', () => {
    expect(layText('1', helvetica, box({ cells: 5, sizePt: 0 })).sizePt).toBe(17.2)
    // A cell of 5 pt, a digit of 0.556.
    expect(layText('1', helvetica, box({ cells: 20, sizePt: 0 })).sizePt).toBe(8.9)
    expect(layText('W', helvetica, box({ cells: 50, sizePt: 0 }))).toMatchObject({
      sizePt: 4,
      trouble: expect.any(String),
    })
  })

  test('are told when there are too few or when they are too narrow', () => {
    expect(layText('123456', helvetica, box({ cells: 5 })).trouble).toContain('more than 5')
    expect(layText('W', helvetica, box({ cells: 20 })).trouble).toContain('wider than a cell of 5.0 pt')
  })
})
