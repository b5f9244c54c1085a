import { createRequire } from 'node:module'
import { XMLParser, XMLValidator } from 'fast-xml-parser'
import { beforeAll, describe, expect, test } from 'vitest'
import {
  drawPacket,
  flattenSheet,
  packetGaps,
  renderPdf,
  renderSvg,
  requiredLabels,
  type PacketInput,
} from '../../src/drawings/index.js'
import { GLYPH_RUNS, UNITS_PER_EM } from '../../src/drawings/model/glyph-widths.js'
import { textWidthPt } from '../../src/drawings/model/index.js'
import { readFonts } from '../../src/packet/read-fonts.js'
import { amount } from '../../src/drawings/sheets/amount.js'
import { hipHouse, longNames, microHouse, packetInput, stringHouse } from './demo-packet.js'
import { bookmarksOf, flat, linesOf, pagesOf, type PdfPage } from './pdf-text.js'

const info = {
  title: 'Lark Hollow demo house (invented)',
  author: 'A. Lindqvist (invented)',
  subject: 'Permit drawings',
  date: '2026-03-02',
  language: 'en-US',
}
const fonts = readFonts()

const render = async (input: PacketInput) => {
  const sheets = drawPacket(input)
  return { sheets, pdf: await renderPdf(sheets, fonts, info) }
}

describe('the packet of the demo house', () => {
  const input = packetInput(microHouse())
  let sheets: ReturnType<typeof drawPacket>
  let pdf: Uint8Array
  let pages: PdfPage[]
  let text: string

  beforeAll(async () => {
    ;({ sheets, pdf } = await render(input))
    pages = await pagesOf(pdf)
    text = flat(pages.map((page) => page.text).join('\n'))
  })

  test('nothing stands in its way', () => {
    expect(input.findings.filter((finding) => finding.severity === 'error')).toEqual([])
  })

  test('has every sheet of a packet, in order, with a bookmark each', async () => {
    const ids = sheets.map((sheet) => sheet.id)
    for (const id of ['G-001', 'C-101', 'A-101', 'S-501', 'S-601', 'E-601', 'E-602', 'E-603', 'E-604'])
      expect(ids).toContain(id)
    expect(await bookmarksOf(pdf)).toEqual(sheets.map((sheet) => `${sheet.id} ${sheet.title}`))
    for (const [index, page] of pages.entries()) expect(flat(page.text)).toContain(ids[index])
  })

  test('rows of the electrical calculation name the circuit and segment that they are about', () => {
    const steps = input.wire?.worksheet.filter(({ id }) => id.endsWith('.terminal')) ?? []
    expect(steps.length).toBeGreaterThan(2)
    for (const { id, says } of steps) {
      const subject = id.slice('wire.'.length, -'.terminal'.length)
      // What is worked out alike stands in one row, which names all that it is about.
      const rows = text.split(flat(`: ${says}`).slice(0, 40)).slice(0, -1)
      const isNamed = rows.some((before) => before.endsWith(subject) || before.slice(-160).includes(`${subject},`))
      expect([subject, isNamed]).toEqual([subject, true])
    }
  })

  test('the eave of 40 ft is 40 ft long at the scale that the sheet states', async () => {
    const index = sheets.findIndex((sheet) => sheet.id === 'A-101')
    // 1/4" = 1'-0" is 18 points for a foot.
    expect(sheets[index]?.scaleNote).toBe('1/4" = 1\'-0"')
    expect(flat(pages[index]?.text ?? '')).toContain('SCALE 1/4" = 1\'-0"')
    const level = (await linesOf(pdf, index + 1)).filter(({ from, to }) => Math.abs(from[1] - to[1]) < 1e-6)
    const lengthsFt = level.map(({ from, to }) => Math.abs(to[0] - from[0]) / 18)
    // Eave and ridge of the outline; coordinates are rounded to a thousandth of a point.
    expect(lengthsFt.filter((length) => Math.abs(length - 40) < 0.0001).length).toBeGreaterThanOrEqual(2)
    expect(flat(pages[index]?.text ?? '')).toContain('40\'-0"')
  })

  test('is true to the size of its paper', () => {
    for (const page of pages) expect([page.widthPt, page.heightPt]).toEqual([17 * 72, 11 * 72])
  })

  test('says every required label, equipment rating and calculation result', () => {
    const wiring = input.wire
    if (wiring === undefined || input.mounts === undefined) throw new Error('stages did not run')
    for (const label of requiredLabels(input.project, wiring.values)) {
      for (const part of label.parts) expect(text).toContain(flat(part.text))
    }
    const { m410 } = input.project.equipment.modules ?? {}
    const { micro366 } = input.project.equipment.inverters ?? {}
    for (const rating of [
      `Voc ${m410?.voc_v} V`,
      `Isc ${m410?.isc_a} A`,
      `${m410?.pmax_w} W`,
      `${micro366?.ac_power_w} W AC`,
      '200 A bus',
      '60 A',
      '200 A main breaker',
    ]) {
      expect(text).toContain(rating)
    }
    for (const step of [...wiring.worksheet, ...input.mounts.worksheet]) {
      expect(text).toContain(flat(`${step.result.symbol} = ${amount(step.result.value, step.result.unit)}`))
    }
  })

  test('names the module of every place on the roof plan', () => {
    const index = sheets.findIndex((sheet) => sheet.id === 'A-101')
    for (const module of input.arrangement.values.modules)
      expect(pages[index]?.text).toContain(`r${module.row}c${module.column}`)
  })

  test('is the same to the byte when drawn again', async () => {
    const again = await render(packetInput(microHouse()))
    expect(Buffer.compare(Buffer.from(pdf), Buffer.from(again.pdf))).toBe(0)
  })

  test('holds title, language, embedded fonts and no scaling when printed', () => {
    const raw = Buffer.from(pdf).toString('latin1')
    expect(raw).toContain('/Lang (en-US)')
    expect(raw).toContain('/DisplayDocTitle true')
    expect(raw).toContain('/PrintScaling /None')
    expect(raw).toContain('(D:20260302000000Z)')
    expect(raw).toMatch(/\/FontFile2/u)
    expect(raw).not.toMatch(/\/BaseFont \/Helvetica/u)
  })
})

type SvgNode = Readonly<Record<string, unknown>>

/** Figures in the order of drawing, through groups; what is only defined is left out. */
function figuresOf(nodes: unknown): { tag: string; at: Record<string, string> }[] {
  return (Array.isArray(nodes) ? (nodes as SvgNode[]) : []).flatMap((node) => {
    const [tag = ''] = Object.keys(node).filter((key) => key !== ':@')
    if (tag === 'g') return figuresOf(node[tag])
    return tag === 'defs' ? [] : [{ tag, at: (node[':@'] ?? {}) as Record<string, string> }]
  })
}

describe('SVG', () => {
  const parser = new XMLParser({ ignoreAttributes: false, attributeNamePrefix: '', preserveOrder: true })
  const numbers = (text: string): number[] => [...text.matchAll(/-?\d+(?:\.\d+)?/gu)].map(Number)

  test.each([
    ['demo', microHouse],
    ['hips', hipHouse],
    ['strings', stringHouse],
    ['names', longNames],
  ] as const)('of %s is well-formed and has the geometry of the PDF', (_, make) => {
    for (const sheet of drawPacket(packetInput(make(), 'letter', true))) {
      const svg = renderSvg(sheet)
      expect(XMLValidator.validate(svg)).toBe(true)
      const drawn: number[][] = []
      const written: string[] = []
      const root = (parser.parse(svg) as SvgNode[]).find((each) => each['svg'] !== undefined)
      for (const { tag, at } of figuresOf(root?.['svg'])) {
        if (tag === 'path') drawn.push(numbers(at['d'] ?? ''))
        if (tag === 'circle') drawn.push([at['cx'], at['cy'], at['r']].map(Number))
        if (tag === 'rect') drawn.push([at['x'], at['y'], at['width'], at['height']].map(Number))
        if (tag === 'text') drawn.push([at['x'], at['y'], at['font-size']].map(Number))
        if (tag === 'text') written.push(at['textLength'] ?? '0')
        if (tag === 'polygon' && at['fill']?.startsWith('url(') === true) drawn.push(numbers(at['points'] ?? ''))
      }
      const { marks } = flattenSheet(sheet)
      const expected = marks.map((mark) =>
        mark.kind === 'path'
          ? mark.points.flatMap(({ x, y }) => [x, y])
          : mark.kind === 'circle'
            ? [mark.center.x, mark.center.y, mark.radius]
            : mark.kind === 'rectangle'
              ? [mark.x, mark.y, mark.width, mark.height]
              : mark.kind === 'hatch'
                ? mark.points.flatMap(({ x, y }) => [x, y])
                : [mark.at.x, mark.at.y, mark.sizePt],
      )
      // The first figure is the white paper.
      expect(drawn.slice(1)).toEqual(expected)
      expect(written.map(Number)).toEqual(marks.flatMap((mark) => (mark.kind === 'text' ? [mark.widthPt] : [])))
    }
  })
})

describe('the font', () => {
  test('has the widths that texts are laid out with', () => {
    const require = createRequire(import.meta.url)
    const fontkit = createRequire(require.resolve('pdfkit'))('fontkit') as {
      create: (file: Uint8Array) => {
        unitsPerEm: number
        hasGlyphForCodePoint: (code: number) => boolean
        glyphForCodePoint: (code: number) => { advanceWidth: number }
      }
    }
    for (const face of ['plain', 'bold'] as const) {
      const font = fontkit.create(Buffer.from(fonts[face]))
      expect(font.unitsPerEm).toBe(UNITS_PER_EM)
      for (const run of GLYPH_RUNS) {
        for (const [index, width] of run[face].entries()) {
          if (width === 0) continue
          expect([
            run.first + index,
            font.hasGlyphForCodePoint(run.first + index),
            font.glyphForCodePoint(run.first + index).advanceWidth,
          ]).toEqual([run.first + index, true, width])
        }
      }
    }
  })

  test('a line of text is as wide in the PDF as in the layout', async () => {
    const { default: Document } = await import('pdfkit')
    const doc = new Document()
    doc.registerFont('plain', fonts.plain)
    doc.font('plain').fontSize(10)
    const text = 'AVATAR ≥ 40.00 ft, φ = 0.85; file, offices'
    const features = {
      kern: false,
      liga: false,
      clig: false,
      dlig: false,
    } as unknown as PDFKit.Mixins.OpenTypeFeatures[]
    expect(textWidthPt(text, 10)).toBeCloseTo(doc.widthOfString(text, { features }), 6)
  })

  test('a character that it lacks is refused with its place', () => {
    expect(() => drawPacket(packetInput(microHouse({ title: 'House of 李' }), '11x17', true))).toThrow(
      /'李' \(U\+674E\)/u,
    )
  })
})

describe('what a packet lacks', () => {
  test('is an error for each missing part', () => {
    const { site_plan: _, structure: __, document: ___, ...bare } = microHouse()
    const input = packetInput(bare, '11x17', true)
    const ids = packetGaps(input).map((finding) => finding.id)
    expect(ids).toEqual(['permit.no-date', 'permit.no-site-plan', 'permit.no-attachment'])
    const first = drawPacket(input)[0]
    const words = flattenSheet(first ?? raise()).marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
    expect(flat(words.join(' '))).toContain('there is no site plan, so sheet C-101 cannot be drawn')
    expect(words).toContain('DRAFT - NOT FOR PERMIT')
  })
})

function raise(): never {
  throw new Error('no sheet')
}
