import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, test } from 'vitest'
import { readFonts } from '../../../src/packet/index.js'
import {
  checkPaper,
  layOutPaper,
  PAGE_SIZES,
  paperMarkdown,
  paperPdf,
  type Paper,
} from '../../../src/papers/pages/index.js'
import { allOf, readStructure } from '../../drawings/read-structure.js'

const table = (rows: number) =>
  ({
    kind: 'table',
    columns: [
      { heading: 'Test', share: 2, bold: true },
      { heading: 'Reading', share: 1, align: 'right' },
    ],
    rows: [...Array.from({ length: rows }, (_, row) => [`String ${row + 1} (invented)`, `${row} V`]), ['Sum', '9 V']],
    total: true,
  }) as const

const paper: Paper = {
  title: 'Handover (invented)',
  language: 'en-US',
  author: 'Invented Solar (invented)',
  subject: 'What is handed over',
  date: '2026-03-02',
  foot: 'Handover (invented), 2026-03-02',
  pageWords: (page, pages) => `page ${page} of ${pages}`,
  blocks: [
    { kind: 'title', text: 'Handover', below: 'A small house (invented)' },
    { kind: 'heading', text: 'Readings' },
    { kind: 'text', text: 'Every line has its unit. '.repeat(30) },
    {
      kind: 'facts',
      facts: [
        ['Module', 'thirty of 400 W'],
        ['Long', 'x'.repeat(300)],
      ],
    },
    table(70),
    {
      kind: 'figure',
      says: 'A line up',
      caption: 'Figure: up',
      heightPt: 60,
      draw: (x, y, width) => [
        {
          kind: 'path',
          points: [
            { x, y: y + 60 },
            { x: x + width, y },
          ],
          pen: 'thin',
        },
      ],
      data: { heading: 'Numbers', columns: [{ heading: 'a', share: 1 }], rows: [['1']] },
    },
    { kind: 'box', title: 'Careful', lines: ['Right to cancel.', 'w '.repeat(900)], sizePt: 16, tone: 'warning' },
    { kind: 'heading', text: 'By hand', level: 3 },
    { kind: 'list', items: ['one', 'two'], mark: 'boxes' },
    { kind: 'blanks', rows: [['Irradiance, W/m2', 'Cell, deg C']] },
    { kind: 'page-break' },
    { kind: 'signatures', people: [{ label: 'Customer', name: 'Wren Hallow (invented)' }], dateLabel: 'Date' },
  ],
}

const fonts = readFonts()

describe.each(['letter', 'a4'] as const)('a paper on %s', (size) => {
  test('keeps to its margins, numbers its pages, and repeats the head of its table as no content', async () => {
    const sheets = layOutPaper(paper, size)
    const pdf = await getDocument({ data: await paperPdf(paper, size, fonts), verbosity: 0 }).promise
    expect(pdf.numPages).toBe(sheets.length)
    expect(pdf.numPages).toBeGreaterThan(3)
    let heads = 0
    for (let number = 1; number <= pdf.numPages; number++) {
      const page = await pdf.getPage(number)
      const { items } = await page.getTextContent()
      const texts = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item] : []))
      const { widthPt, heightPt } = PAGE_SIZES[size]
      expect(page.view[2]).toBeCloseTo(widthPt, 1)
      expect(page.view[3]).toBeCloseTo(heightPt, 1)
      for (const { transform, width } of texts) {
        const [left, base, type] = [transform[4] as number, transform[5] as number, transform[0] as number]
        expect(left).toBeGreaterThan(51)
        expect(left + width).toBeLessThan(widthPt - 51)
        expect(base).toBeGreaterThan(20)
        expect(base).toBeLessThan(heightPt - 48)
        expect(type).toBeGreaterThanOrEqual(10)
      }
      expect(texts.map(({ str }) => str)).toContain(`page ${number} of ${pdf.numPages}`)
      heads += texts.filter(({ str }) => str.trim() === 'Reading').length
    }
    // 71 rows of 18 pt need at least three pages.
    expect(heads).toBeGreaterThanOrEqual(2)
  })

  test('is tagged: one first heading, one table with one head, a figure in words, all drawn in the tree or aside', async () => {
    const { root, pages, strays } = await readStructure(await paperPdf(paper, size, fonts))
    expect(strays).toEqual([])
    expect(pages.flatMap(({ loose }) => loose)).toEqual([])
    expect(pages.every(({ balanced, deepest }) => balanced && deepest === 1)).toBe(true)
    const all = allOf(root)
    const of = (kind: string) => all.filter((each) => each.kind === kind)
    expect([of('H1').length, of('H2').length, of('H3').length, of('Figure')[0]?.alt]).toEqual([1, 1, 1, 'A line up'])
    const [facts, long] = of('Table')
    expect([of('Table').length, facts?.children.length, long?.children.length]).toEqual([2, 2, 72])
    expect(long?.children.filter((row) => row.children.every(({ scope }) => scope === 'Column')).length).toBe(1)
    expect(of('LI').length).toBe(2)
  })
})

test('the same paper gives the same bytes', async () => {
  expect(await paperPdf(paper, 'a4', fonts)).toEqual(await paperPdf(paper, 'a4', fonts))
})

test('a short callout stays whole, and its lines have the stated size', async () => {
  const lines = ['You may cancel.', 'Write to us.']
  const filled: Paper = { ...paper, blocks: [table(36), { kind: 'box', title: 'Cancel', lines, sizePt: 16 }] }
  const pdf = await getDocument({ data: await paperPdf(filled, 'letter', fonts), verbosity: 0 }).promise
  const found: [number, number][] = []
  for (let number = 1; number <= pdf.numPages; number++) {
    const { items } = await (await pdf.getPage(number)).getTextContent()
    for (const item of items) {
      if ('str' in item && ['Cancel', ...lines].includes(item.str.trim()))
        found.push([number, item.transform[0] as number])
    }
  }
  expect(found).toEqual([
    [2, 16],
    [2, 16],
    [2, 16],
  ])
})

test('a character that the font lacks is told with its key', () => {
  expect(() => {
    checkPaper({ ...paper, foot: 'سقف' }, 'title')
  }).toThrow(/the font of the drawings cannot print/u)
})

test('Markdown has every block, and a name makes no markup', () => {
  const text = paperMarkdown({ ...paper, blocks: [...paper.blocks, { kind: 'text', text: '<b>|*x*' }] })
  expect(text).toContain('# Handover\n\nA small house (invented)')
  expect(text).toContain('| Test | Reading |\n| --- | ---: |')
  expect(text).toContain('- [ ] one')
  expect(text).toContain('\\<b\\>\\|\\*x\\*')
})

/** Texts of each page that begin with a word, for papers that begin at every height. */
function pagesWith(word: string, block: Paper['blocks'][number]): string[][][] {
  return Array.from({ length: 40 }, (_, lines) => {
    const blocks: Paper['blocks'] = [
      { kind: 'text', text: Array.from({ length: 20 + lines }, () => 'Line').join('\n') },
      block,
    ]
    return layOutPaper({ ...paper, blocks }, 'letter').map((sheet) =>
      sheet.paper.flatMap((one) => (one.kind === 'text' && one.text.startsWith(word) ? [one.text] : [])),
    )
  })
}

describe('where a page ends', () => {
  test('no row of a table stands alone, and a small table is not cut', () => {
    const { columns } = table(1)
    const rows = (count: number) => Array.from({ length: count }, (_, at) => [`String ${at + 1}`, '1 V'])
    for (const pages of pagesWith('String', { kind: 'table', columns, rows: rows(12) }))
      for (const { length } of pages) expect(length).not.toBe(1)
    expect(
      pagesWith('String', { kind: 'table', columns, rows: rows(12) }).some(
        (pages) => pages.filter(({ length }) => length > 0).length > 1,
      ),
    ).toBe(true)
    for (const pages of pagesWith('String', { kind: 'table', columns, rows: rows(5) }))
      expect(pages.filter(({ length }) => length > 0).length).toBe(1)
  })

  test('no item of a list stands alone', () => {
    const items = Array.from({ length: 7 }, (_, at) => `Item ${at + 1}`)
    const all = pagesWith('Item', { kind: 'list', items })
    for (const pages of all) for (const { length } of pages) expect(length).not.toBe(1)
    expect(all.some((pages) => pages.filter(({ length }) => length > 0).length > 1)).toBe(true)
  })
})
