import { degrees, PDFDocument, PDFName, PDFNumber, StandardFonts } from '@cantoo/pdf-lib'
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, test } from 'vitest'
import { listFormFields } from '../../../src/papers/index.js'
import { openForm, readMapping, starterMapping } from '../../../src/papers/forms/index.js'
import { fill } from './filled.js'
import { rawForm } from './raw-pdf.js'

const [WIDE, HIGH] = [612, 792]

/** Pages without fields; `turn` as a scanner writes it, `shift` for a box that does not begin at 0, `unit` of 1/72 in. */
async function flatPages({ turn = 0, shift = 0, unit = 1, pages = 1 } = {}): Promise<Uint8Array> {
  const pdf = await PDFDocument.create({ updateMetadata: false })
  for (let index = 0; index < pages; index += 1) {
    const page = pdf.addPage([WIDE / unit, HIGH / unit])
    page.setMediaBox(shift, shift, WIDE / unit, HIGH / unit)
    page.setRotation(degrees(turn))
    if (unit !== 1) page.node.set(PDFName.of('UserUnit'), PDFNumber.of(unit))
    page.drawText('Owner:', { x: 20, y: 20, size: 9 })
  }
  return await pdf.save({ useObjectStreams: false })
}

const OWNER = { name: 'Owner', page: 1, x_in: 1.5, y_in: 2.25, width_in: 3 }
const placed = async (bytes: Uint8Array, place: readonly object[], data: unknown = {}) =>
  await fill(bytes, [], { place, data })

/** Words of a page with the place of their left end in inches from the left and from the top, as another reader shows the page. */
async function seen(pdf: Uint8Array, at = 1) {
  const document = await getDocument({ data: pdf.slice(), useSystemFonts: false, verbosity: 0 }).promise
  const page = await document.getPage(at)
  const view = page.getViewport({ scale: 1 })
  const { items } = await page.getTextContent()
  return items.flatMap((item) => {
    if (!('str' in item) || item.str.trim() === '' || item.str === 'Owner:') return []
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = view.transform
    const [ta = 0, tb = 0, , , x = 0, y = 0] = item.transform
    const inches = (value: number) => Number((value / 72).toFixed(3))
    return [
      {
        text: item.str,
        x: inches(a * x + c * y + e),
        y: inches(b * x + d * y + f),
        // Upright as seen: the direction of writing points to the right.
        level: Math.abs(b * ta + d * tb) < 1e-6 && a * ta + c * tb > 0,
        sizePt: Number(item.height.toFixed(2)) * view.scale,
      },
    ]
  })
}

describe('texts on pages without fields', () => {
  test.each([
    ['upright', {}],
    ['turned by a quarter', { turn: 90 }],
    ['upside down', { turn: 180 }],
    ['turned the other way', { turn: 270 }],
    ['with a box that begins elsewhere', { turn: 90, shift: 37 }],
  ])('stand where the mapping says on a page that is %s', async (_, options) => {
    const pdf = await (await placed(await flatPages(options), [{ ...OWNER, text: 'A. Lindqvist' }])).save(false)
    expect(await seen(pdf)).toEqual([{ text: 'A. Lindqvist', x: 1.5, y: 2.25, level: true, sizePt: 10 }])
  })

  test('a page in units of its own', async () => {
    const pdf = await (await placed(await flatPages({ unit: 2 }), [{ ...OWNER, text: 'A' }])).save(false)
    const [word] = await seen(pdf)
    // Sizes of letters are in units of the page, of 1/36 in here.
    expect([word?.x, word?.y, word?.sizePt]).toEqual([1.5, 2.25, 5])
  })

  test('values, their format and their words, on several lines and pages', async () => {
    const found = await placed(
      await flatPages({ pages: 2 }),
      [
        { ...OWNER, name: 'kW', from: 'totals.total_dc_kw', format: { decimals: 1 } },
        {
          ...OWNER,
          name: 'Code',
          y_in: 3,
          from: 'project.codes.electrical',
          translate: { 'NEC 2020': '2020 edition' },
        },
        {
          ...OWNER,
          name: 'Remarks',
          page: 2,
          width_in: 1.2,
          lines: 3,
          size_pt: 8,
          text: 'one two three four five six',
        },
        { ...OWNER, name: 'Phone', y_in: 4, from: 'project.parties.owner.phone', optional: true },
      ],
      { totals: { total_dc_kw: 8.25 }, project: { codes: { electrical: 'NEC 2020' } } },
    )
    expect(found.findings.map(({ id }) => id)).toEqual(['form.left-empty'])
    const pdf = await found.save(false)
    expect((await seen(pdf)).map(({ text, y }) => [text, y])).toEqual([
      ['8.3', 2.25],
      ['2020 edition', 3],
    ])
    const lines = await seen(pdf, 2)
    expect(lines.map(({ text }) => text).join(' ')).toBe('one two three four five six')
    expect(lines.length).toBeGreaterThan(1)
    const [first, second] = lines.map(({ y }) => y)
    expect((second ?? 0) - (first ?? 0)).toBeCloseTo((1.15 * 8) / 72, 2)
  })

  test('what is too wide, has too many lines or no letter is an error, and is not drawn', async () => {
    const helvetica = await (await PDFDocument.create()).embedFont(StandardFonts.Helvetica)
    const text = 'A name of more letters than there is room for'
    const { findings, save } = await placed(await flatPages(), [
      { ...OWNER, text },
      { ...OWNER, name: 'Remarks', width_in: 1, lines: 2, text },
      { ...OWNER, name: 'Sun', text: 'sun \u{1F31E}' },
    ])
    const wide = helvetica.widthOfTextAtSize(text, 10).toFixed(0)
    expect(Number(wide)).toBeLessThan(3 * 72 + 10)
    expect(findings.map(({ severity, id, message }) => `${severity} ${id} ${message}`)).toEqual([
      expect.stringMatching(
        /^error form\.does-not-fit 'Remarks' on page 1 .* lines at 10 pt letters are more than the 2 /u,
      ),
      expect.stringContaining("error form.no-glyph 'Sun' cannot show"),
    ])
    expect((await seen(await save(false))).map(({ text: each }) => each)).toEqual([text])
    const narrow = await placed(await flatPages(), [{ ...OWNER, width_in: 2.5, text }])
    expect(narrow.findings.map(({ message }) => message)).toEqual([
      `'Owner' on page 1 cannot show '${text}': it is ${wide} pt wide at 10 pt letters, and the place holds 180 pt`,
    ])
  })

  test('signs that Helvetica lacks come from the embedded font', async () => {
    const pdf = await (await placed(await flatPages(), [{ ...OWNER, text: '≤ 5 Ω' }])).save(false)
    expect((await seen(pdf)).map(({ text }) => text)).toEqual(['≤ 5 Ω'])
  })

  test('a cross has its middle in the printed box', async () => {
    const mark = (more: object) => ({ name: 'Roof', page: 1, x_in: 4, y_in: 5, mark: true, size_pt: 12, ...more })
    const strokes = async (more: object) => {
      const pdf = await (
        await placed(await flatPages(), [mark(more)], {
          project: { codes: { electrical: 'NEC 2020' }, document: { invented: true } },
        })
      ).save(false)
      const document = await getDocument({ data: pdf, useSystemFonts: false, verbosity: 0 }).promise
      const { fnArray, argsArray } = await (await document.getPage(1)).getOperatorList()
      return fnArray.flatMap((each, index) => {
        if (each !== OPS.constructPath) return []
        const [, numbers] = argsArray[index] as [unknown, number[]]
        return [numbers]
      })
    }
    const drawn = await strokes({})
    expect(drawn.length).toBe(2)
    for (const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] of drawn) {
      expect([(x0 + x1) / 2 / 72, (HIGH - (y0 + y1) / 2) / 72]).toEqual([expect.closeTo(4, 3), expect.closeTo(5, 3)])
    }
    expect((await strokes({ from: 'project.document.invented' })).length).toBe(2)
    expect((await strokes({ from: 'project.codes.electrical', equals: 'NEC 2020' })).length).toBe(2)
    expect(await strokes({ from: 'project.codes.electrical', equals: 'NEC 2017' })).toEqual([])
  })

  test('the same page and values give the same bytes; another place another mark of the file', async () => {
    const bytes = await flatPages()
    const once = await (await placed(bytes, [{ ...OWNER, text: 'A' }])).save(false)
    const again = await (await placed(bytes, [{ ...OWNER, text: 'A' }])).save(false)
    expect(Buffer.compare(Buffer.from(once), Buffer.from(again))).toBe(0)
    const id = (pdf: Uint8Array) => /\/ID \[[^\]]*\]/u.exec(Buffer.from(pdf).toString('latin1'))?.[0]
    const moved = await (await placed(bytes, [{ ...OWNER, x_in: 1.6, text: 'A' }])).save(false)
    expect(id(moved)).not.toBe(id(once))
  })

  test('go beside the fields of a form that has some', async () => {
    const form = rawForm(['<< /Type /Annot /Subtype /Widget /FT /Tx /T (a) /Rect [10 10 110 30] >>'])
    const found = await fill(form, [{ field: 'a', text: 'field' }], {
      place: [{ name: 'Note', page: 1, x_in: 0.5, y_in: 0.5, width_in: 1, text: 'placed' }],
    })
    expect(found.findings).toEqual([])
    expect((await seen(await found.save(true))).map(({ text }) => text).toSorted()).toEqual(['field', 'placed'])
  })
})

describe('what a mapping with places may not ask for', () => {
  const refused = async (more: object) => {
    const { width_in: _, ...rest } = OWNER
    return await placed(await flatPages(), [{ ...rest, ...more }]).then(
      () => 'taken',
      (error: unknown) => (error instanceof Error ? error.message : ''),
    )
  }
  const text = { width_in: 3, text: 'x' }

  test.each<[object, string]>([
    [{ ...text, name: 'Owner signature' }, "'Owner signature' is never filled"],
    [{ ...text, name: 'Initial here' }, "'Initial here' is never filled"],
    [{ ...text, name: 'Date' }, 'it may be the date of signing'],
    [{ ...text, name: 'Date signed' }, "'Date signed' is never filled"],
    [{ mark: true, name: 'I agree to the terms' }, "'I agree to the terms' is never filled"],
    [{ ...text, page: 2 }, 'the form has no page 2; it has one'],
    [{ ...text, x_in: 6 }, "'Owner' reaches to 9 in, and page 1 is 8.5 in wide"],
    [{ ...text, y_in: 10.9, lines: 3 }, "'Owner' reaches down to 11.25 in, and page 1 is 11 in high"],
    [{ mark: true, x_in: 0.01 }, "'Owner' reaches to"],
    [{ text: 'x' }, "'Owner' has no width_in"],
    [{ width_in: 3 }, "nothing says what goes into 'Owner'"],
    [{ ...text, mark: true }, 'width_in is for a text'],
    [{ ...text, equals: 1, from: 'project.title' }, 'from and text are both stated'],
    [{ width_in: 3, equals: 1, from: 'project.title' }, 'equals is for a mark'],
    [{ width_in: 3, from: 'totals.kilowatts' }, "there is no total 'kilowatts'"],
  ])('%j', async (more, message) => {
    const said = await refused(more)
    expect(said).toContain(message)
    expect(said).toMatch(/mapping\.yaml:\d+:\d+/u)
  })

  test('a drawing date may be written', async () => {
    expect(await refused({ ...text, name: 'Date of the drawings' })).toBe('taken')
  })

  test('a mapping without fields and places says nothing', () => {
    expect(() => readMapping('m.yaml', 'format: gablewatt-form-mapping/1\n')).toThrow('state fields, or place')
  })
})

test('a flat page is refused without places, with what to do; the starter begins such a mapping', async () => {
  const file = { path: 'scan.pdf', bytes: await flatPages() }
  await expect(listFormFields(file)).rejects.toThrow(
    /'scan\.pdf' has no fields to fill: it is a flat page\. Say in the mapping .*: place, with page, x_in, y_in and width_in/u,
  )
  await expect(fill(file.bytes, [{ field: 'a', text: 'x' }])).rejects.toThrow('it is a flat page')
  const starter = starterMapping(await openForm(file.path, file.bytes, true))
  const used = starter.replaceAll('#  - ', '  - ')
  expect(readMapping('starter.yaml', used).data.place?.length).toBe(3)
  expect((await listFormFields(file, true)).starter).toBe(starter)
})
