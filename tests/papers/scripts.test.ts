// Names in the letters of the world on every paper: drawn as they are written, or refused with what to do.
import { PDFDocument } from '@cantoo/pdf-lib'
import { describe, expect, test } from 'vitest'
import { drawPacket, renderDxf, renderSvg, type Sheet } from '../../src/drawings/index.js'
import { checkPaper, paperHtml, paperMarkdown, type Paper } from '../../src/papers/pages/index.js'
import { noGlyph } from '../../src/papers/forms/look-troubles.js'
import { embeddedFont } from '../../src/papers/forms/look/embedded-font.js'
import type { Project } from '../../src/project/index.js'
import { microHouse, packetInput } from '../drawings/demo-packet.ts'

interface Written {
  /** As it stands on paper; undefined where paper refuses it. */
  readonly sheet: string | undefined
  /** As it stands in a field of a form; undefined where that refuses it. */
  readonly form: string | undefined
}

const same = (text: string): Written => ({ sheet: text, form: text })
const REFUSED: Written = { sheet: undefined, form: undefined }

const NAMES: readonly (readonly [script: string, text: string, written: Written])[] = [
  ['Latin', 'Østergård-Nuñez', same('Østergård-Nuñez')],
  ['Latin, accents apart', 'A\u030Angstro\u0308m Nun\u0303ez', same('Ångström Nuñez')],
  ['Latin of Viet Nam', 'Nguyễn Thị Phượng', same('Nguyễn Thị Phượng')],
  ['Latin of Viet Nam, accents apart', 'Nguyễn Phượng'.normalize('NFD'), same('Nguyễn Phượng')],
  ['Latin of Azerbaijan', 'Əliyev Məmməd', same('Əliyev Məmməd')],
  ['Greek', 'Παπαδόπουλος', same('Παπαδόπουλος')],
  ['Cyrillic', 'Достоевский', same('Достоевский')],
  ['Cyrillic of Ukraine and Kazakhstan', 'Ґалаґан Қасымова Өмір', same('Ґалаґан Қасымова Өмір')],
  ['a soft hyphen', 'Sonnen\u00ADdach', same('Sonnendach')],
  ['a hard space and a tab', 'Sun\u00A0and\tmoon', same('Sun and moon')],
  ['Armenian', 'Հայկ Սարգսյան', same('Հայկ Սարգսյան')],
  ['Armenian, a letter whose capitals are two', 'Արև', same('Արև')],
  ['Georgian, whose capitals no font at hand has', 'გიორგი', same('გიორგი')],
  ['Georgian of old', 'Ⴂიორგი', same('Ⴂიორგი')],
  ['Georgian in those capitals', 'ᲒᲘᲝᲠᲒᲘ', REFUSED],
  ['Hebrew', 'שלום', REFUSED],
  ['Hebrew with points', 'שָׁלוֹם', REFUSED],
  ['Arabic', 'محمد', REFUSED],
  ['Arabic in its joined shapes', '\uFEE3\uFEA4\uFEE4\uFEAA', REFUSED],
  ['a comma of Arabic', 'a\u060Cb', REFUSED],
  ['Thai', 'สมชาย', REFUSED],
  ['Lao', 'ສົມ', REFUSED],
  ['Devanagari', 'हिन्दी', REFUSED],
  ['Tamil', 'தமிழ்', REFUSED],
  ['Chinese', '太陽', REFUSED],
  ['Japanese', 'ソーラー', REFUSED],
  ['Korean', '태양', REFUSED],
  ['Korean, syllables apart', '태'.normalize('NFD'), REFUSED],
  ['emoji', '🏠', REFUSED],
  ['emoji of several', '👩\u200D🔧', REFUSED],
  ['a mark that no letter has with it', 'x\u0302y', REFUSED],
  ['a mark alone', '\u0301', REFUSED],
  ['a sign that is not seen', 'a\u200Bb', { sheet: undefined, form: 'ab' }],
  ['a sign that turns the direction', 'a\u202Eb', { sheet: undefined, form: 'ab' }],
  ['an isolate', 'a\u2067b\u2069', { sheet: undefined, form: 'ab' }],
  ['half of a pair', 'a\uD83Cb', REFUSED],
]

const FREE = new Set(['title', 'name', 'address', 'license', 'sheet', 'listing'])

/** The house with a text behind each of its names. */
function named<T>(node: T, text: string): T {
  if (Array.isArray(node)) return node.map((each: unknown) => named(each, text)) as T
  if (typeof node !== 'object' || node === null) return node
  return Object.fromEntries(
    Object.entries(node).map(([key, value]: [string, unknown]) => [
      key,
      FREE.has(key) && typeof value === 'string' ? `${value} ${text}` : named(value, text),
    ]),
  ) as T
}

const packetOf = (text: string): Sheet[] => drawPacket(packetInput(named<Project>(microHouse(), text)))
const paperOf = (text: string): Paper => ({
  title: text,
  language: 'en',
  author: text,
  subject: text,
  date: '2026-03-02',
  pageWords: (page, pages) => `${page}/${pages}`,
  foot: text,
  blocks: [
    { kind: 'title', text },
    { kind: 'facts', facts: [[text, text]] },
  ],
})
const dxfCoded = (text: string): string =>
  Array.from({ length: text.length }, (_, at) =>
    text.charCodeAt(at) < 0x7f
      ? text.charAt(at)
      : `\\U+${text.charCodeAt(at).toString(16).toUpperCase().padStart(4, '0')}`,
  ).join('')

/** A word of a text that no line is broken in. */
const wordOf = (text: string): string => text.split(' ').toSorted((a, b) => b.length - a.length)[0] ?? ''
// oxlint-disable-next-line no-control-regex
const STEERS = /[\u0000-\u0009\u000B-\u001F\u007F-\u009F\u061C\u200B\u200E\u200F\u2028-\u202E\u2060-\u206F\uFEFF]/u

describe.each(NAMES)('a name in %s', (_, text, { sheet, form }) => {
  test(`is ${sheet === undefined ? 'refused by' : 'drawn on'} the sheets`, () => {
    if (sheet === undefined) {
      let refused: unknown
      try {
        packetOf(text)
      } catch (error) {
        refused = error
      }
      expect(refused).toMatchObject({
        where: 'title',
        message: expect.stringMatching(/^the font of the drawings cannot print .*U\+[0-9A-F]{4}/u) as string,
        fix: 'Write it in Latin, Greek, Cyrillic, Armenian or Georgian letters.',
      })
      expect((refused as Error).message).not.toMatch(STEERS)
      // No mark alone, which would sit on the quote before it.
      expect((refused as Error).message).not.toMatch(/'\p{M}/u)
      return
    }
    const sheets = packetOf(text)
    const svg = sheets.map((each) => renderSvg(each)).join('')
    expect(svg).not.toMatch(STEERS)
    expect(svg.normalize('NFC')).toBe(svg)
    for (const word of sheet.split(' ')) expect(svg).toContain(word)
    const dxf = sheets.map((each) => renderDxf(each)).join('')
    expect(dxf).toContain(dxfCoded(wordOf(sheet)))
  })

  test(`is ${sheet === undefined ? 'refused by' : 'taken for'} a paper as PDF`, () => {
    const check = (): void => {
      checkPaper(paperOf(text), 'proposal')
    }
    if (sheet === undefined) expect(check).toThrow(/^the font of the drawings cannot print/u)
    else expect(check).not.toThrow()
  })

  test(`is ${form === undefined ? 'refused by' : 'shown in'} a field of a form`, async () => {
    const font = embeddedFont((await PDFDocument.create()).context)
    const missing = font.missing(form ?? text.normalize('NFC'))
    if (form !== undefined) {
      expect(missing).toEqual([])
      return
    }
    expect(missing).not.toEqual([])
    const { message, fix } = noGlyph('Owner', missing)
    expect(message).toMatch(/^'Owner' cannot show .*U\+[0-9A-F]{4}.*: no font at hand shows/u)
    expect(message).not.toMatch(STEERS)
    expect(fix).toBe('Write it in Latin, Greek, Cyrillic, Armenian or Georgian letters')
  })

  test('stands in a web page and in Markdown, which the reader shapes', () => {
    const kept = text.replaceAll(/[\u200B\u202A-\u202E\u2066-\u2069]/gu, '').replaceAll('\t', ' ')
    const html = paperHtml(paperOf(text))
    expect(html).toContain(`<h1 dir="auto">${kept}</h1>`)
    expect(html).not.toMatch(STEERS)
    const markdown = paperMarkdown(paperOf(text))
    expect(markdown).toContain(kept)
    expect(markdown).not.toMatch(STEERS)
  })
})
