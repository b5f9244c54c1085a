import { PDFDict, PDFDocument, PDFName } from '@cantoo/pdf-lib'
import { describe, expect, test } from 'vitest'
import { pagesOf } from '../../drawings/pdf-text.js'
import { fill, filledPdf, valuesOf, widgetsOf } from './filled.js'
import { OFF, ON, rawForm } from './raw-pdf.js'

const widget = (more: string, rect = '10 10 110 30') =>
  `<< /Type /Annot /Subtype /Widget /F 4 /Rect [${rect}] ${more} >>`
const ids = (found: { readonly findings: readonly { readonly id: string }[] }) => found.findings.map(({ id }) => id)

describe('texts', () => {
  test('stand in the value and in the look of every place, as another reader sees them', async () => {
    const bytes = rawForm(
      [
        '<< /FT /Tx /T (name) /Kids [11 0 R 12 0 R] >>',
        widget('/Parent 10 0 R', '10 10 200 30'),
        widget('/Parent 10 0 R', '10 40 200 60'),
      ],
      { roots: [10] },
    )
    const pdf = await filledPdf(bytes, [{ field: 'name', text: 'A (b) \\ c é €' }])
    const seen = await widgetsOf(pdf)
    expect(seen.map(({ fieldValue }) => fieldValue)).toEqual(['A (b) \\ c é €', 'A (b) \\ c é €'])
    expect(seen.map(({ textContent }) => textContent)).toEqual([['A (b) \\ c é €'], ['A (b) \\ c é €']])
  })

  test('signs that Helvetica lacks are drawn in the embedded font, and can be read back', async () => {
    const pdf = await filledPdf(rawForm([widget('/FT /Tx /T (r)', '10 10 200 30')]), [{ field: 'r', text: '≤ 5 Ω −3' }])
    expect(await valuesOf(pdf)).toEqual({ r: '≤ 5 Ω −3' })
    expect((await widgetsOf(pdf))[0]?.textContent).toEqual(['≤ 5 Ω −3'])
    // A subset: the whole font has over 600,000 bytes.
    expect(pdf.length).toBeLessThan(60_000)
  })

  test('a sign that no font has is told, and a form with it is an error', async () => {
    const found = await fill(rawForm([widget('/FT /Tx /T (r)')]), [{ field: 'r', text: 'sun \u{1F31E}' }])
    expect(found.findings).toMatchObject([{ severity: 'error', id: 'form.no-glyph' }])
    expect(found.findings[0]?.message).toContain('U+1F31E')
    const other = await fill(rawForm([widget('/FT /Tx /T (r)')]), [{ field: 'r', text: 'a \u0378' }])
    expect(other.findings[0]?.message).toContain('U+0378')
  })

  test('lose what steers and what is not seen, and join accents, before they are stored', async () => {
    const text = 'Nun\u0303ez\u001B[31m \u202Ered\u202C\u200B Sonnen\u00ADdach\u001B]8;;http://x\u0007'
    const pdf = await filledPdf(rawForm([widget('/FT /Tx /T (r)', '10 10 300 30')]), [{ field: 'r', text }])
    expect(await valuesOf(pdf)).toEqual({ r: 'Nuñez red Sonnendach' })
  })

  test.each(['שלום', 'محمد', 'สมชาย', 'x\u0302'])(
    'that would have to be turned or joined are told: %s',
    async (text) => {
      const found = await fill(rawForm([widget('/FT /Tx /T (r)')]), [{ field: 'r', text }])
      expect(found.findings).toMatchObject([
        {
          severity: 'error',
          id: 'form.no-glyph',
          fix: 'Write it in Latin, Greek, Cyrillic, Armenian or Georgian letters',
        },
      ])
    },
  )

  test('of several lines become one where the field has one', async () => {
    const bytes = rawForm([widget('/FT /Tx /T (a)'), widget('/FT /Tx /Ff 4096 /T (b)', '10 40 110 90')])
    const text = 'one\r\ntwo'
    const pdf = await filledPdf(
      bytes,
      ['a', 'b'].map((field) => ({ field, text })),
    )
    expect(await valuesOf(pdf)).toEqual({ a: 'one two', b: 'one\ntwo' })
    expect((await widgetsOf(pdf)).map(({ textContent }) => textContent)).toEqual([['one two'], ['one', 'two']])
  })

  test('longer than MaxLen is an error with both numbers', async () => {
    const bytes = rawForm([widget('/FT /Tx /T (zip) /MaxLen 5')])
    expect((await fill(bytes, [{ field: 'zip', text: '12345' }])).findings).toEqual([])
    const [finding] = (await fill(bytes, [{ field: 'zip', text: '123456' }])).findings
    expect(finding).toMatchObject({ severity: 'error', id: 'form.too-long' })
    expect(finding?.message).toBe("'zip' takes 5 characters, and '123456' has 6")
  })

  test('too wide for its box is an error; size_pt may make it fit', async () => {
    const bytes = rawForm([widget('/FT /Tx /T (n)', '10 10 60 30')])
    const text = 'Wider than fifty'
    expect(ids(await fill(bytes, [{ field: 'n', text }]))).toEqual(['form.does-not-fit'])
    const long = await fill(bytes, [{ field: 'n', text: '5'.repeat(61) }])
    expect(long.findings[0]?.message).toBe(
      `'n' on page 1 cannot show '${'5'.repeat(57)}...': it is 339 pt wide at 10 pt letters, and the box holds 46 pt`,
    )
    const pdf = await filledPdf(bytes, [{ field: 'n', text, size_pt: 6 }])
    expect((await widgetsOf(pdf))[0]?.textContent).toEqual([text])
    expect(Buffer.from(pdf).toString('latin1')).toContain('/Helv 6 Tf')
  })

  test('a size of 0 follows the box, down to 4 points and no further', async () => {
    const bytes = rawForm([widget('/FT /Tx /T (n) /DA (/Helv 0 Tf 0 g)', '10 10 60 30')])
    const sized = async (text: string) => {
      const found = await fill(bytes, [{ field: 'n', text }])
      const raw = Buffer.from(await found.save(false)).toString('latin1')
      return [ids(found).length, Number(/\/F0 ([\d.]+) Tf/u.exec(raw)?.[1])]
    }
    // (20 - 4) / 0.925: the height of Helvetica from 207 below to 718 above.
    expect(await sized('I')).toEqual([0, 17.2])
    expect((await sized('Nine chars and more'))[1]).toBeLessThan(8)
    expect(await sized('Nine chars and more, and more than a box of this width can take')).toEqual([1, 4])
  })

  test('a size for a field of several places stands once, but where a place has its own', async () => {
    const bytes = rawForm(
      [
        '<< /FT /Tx /T (n) /Kids [11 0 R 12 0 R] >>',
        widget('/Parent 10 0 R'),
        widget('/Parent 10 0 R /DA (/Helv 12 Tf 1 g)', '10 40 110 60'),
      ],
      { roots: [10] },
    )
    const text = Buffer.from(await filledPdf(bytes, [{ field: 'n', text: 'x', size_pt: 7 }])).toString('latin1')
    expect(text.match(/\/DA \(\/Helv 7 Tf [01] g\)/gu)).toEqual(['/DA (/Helv 7 Tf 0 g)', '/DA (/Helv 7 Tf 1 g)'])
    expect(text.match(/\/F0 7 Tf/gu)?.length).toBe(2)
  })

  test('a form that leaves the looks to the viewer gets those of values that it had, too', async () => {
    const bytes = rawForm([widget('/FT /Tx /T (a)'), widget('/FT /Tx /T (b) /V (was there)', '10 50 110 70')], {
      form: '/NeedAppearances true',
    })
    const pdf = await filledPdf(bytes, [{ field: 'a', text: 'new' }])
    expect((await widgetsOf(pdf)).map(({ textContent }) => textContent)).toEqual([['new'], ['was there']])
    expect(Buffer.from(pdf).toString('latin1')).not.toContain('NeedAppearances')
  })

  test('a field whose font the form lacks gets one that it has', async () => {
    const bytes = rawForm([widget('/FT /Tx /T (a) /DA (/Gone 9 Tf 1 0 0 rg)')], { form: '/DR << >>' })
    const { context, catalog } = await PDFDocument.load(await filledPdf(bytes, [{ field: 'a', text: 'x' }]))
    const form = catalog.lookup(PDFName.of('AcroForm'), PDFDict)
    const fonts = form.lookup(PDFName.of('DR'), PDFDict).lookup(PDFName.of('Font'), PDFDict)
    expect(fonts.lookup(PDFName.of('Helv'), PDFDict).get(PDFName.of('BaseFont'))).toBe(PDFName.of('Helvetica'))
    const looks = context.enumerateIndirectObjects().map(([, object]) => object.toString())
    expect(looks.join()).toContain('(/Helv 9 Tf 1 0 0 rg)')
  })
})

describe('check boxes and radio buttons', () => {
  const box = (name: string, state: string, more = '') =>
    widget(`/FT /Btn /T (${name}) /AS /Off /AP << /N << /Off ${OFF} /${state} ${ON} >> >> ${more}`)
  const as = async (pdf: Uint8Array): Promise<string[]> => {
    const page = (await PDFDocument.load(pdf)).getPage(0)
    const annotations = page.node.Annots()
    return Array.from({ length: annotations?.size() ?? 0 }, (_, i) =>
      String(annotations?.lookup(i, PDFDict).get(PDFName.of('AS'))?.toString()),
    )
  }

  test('take the name that the form has for on, never one of their own', async () => {
    const bytes = rawForm([box('odd', 'Ja#20bitte'), box('one', '1'), box('rest', 'Yes')])
    const pdf = await filledPdf(
      bytes,
      [
        { field: 'odd', on: 'Ja bitte' },
        { field: 'one', from: 'project.parties.prepared_by_owner' },
      ],
      false,
      { project: { parties: { prepared_by_owner: true } } },
    )
    expect(await as(pdf)).toEqual(['/Ja#20bitte', '/1', '/Off'])
    const seen = await widgetsOf(pdf)
    expect(seen.map(({ fieldValue }) => fieldValue)).toEqual(['Ja bitte', '1', 'Off'])
  })

  test('a value of false, and one that equals is not, put a box off that was on', async () => {
    const bytes = rawForm([box('a', 'Yes', '/V /Yes').replace('/AS /Off', '/AS /Yes'), box('b', 'Yes')])
    const data = { project: { parties: { prepared_by_owner: false }, codes: { electrical: 'NEC 2020' } } }
    const fields = (edition: string) => [
      { field: 'a', from: 'project.parties.prepared_by_owner' },
      { field: 'b', from: 'project.codes.electrical', equals: edition },
    ]
    expect(await as(await filledPdf(bytes, fields('NEC 2020'), false, data))).toEqual(['/Off', '/Yes'])
    expect(await as(await filledPdf(bytes, fields('NEC 2017'), false, data))).toEqual(['/Off', '/Off'])
  })

  test('a text where true or false is wanted is told', async () => {
    const found = await fill(rawForm([box('a', 'Yes')]), [{ field: 'a', from: 'project.title' }], {
      data: { project: { title: 'House' } },
    })
    expect(ids(found)).toEqual(['form.wrong-kind'])
  })

  const kid = (state: string, x: number) =>
    widget(`/Parent 10 0 R /AS /Off /AP << /N << /Off ${OFF} /${state} ${ON} >> >>`, `${x} 0 ${x + 10} 10`)
  const group = (more: string, ...states: readonly string[]) =>
    rawForm(
      [
        `<< /FT /Btn /Ff 49152 /T (place) ${more} /Kids [${states.map((_, i) => `${11 + i} 0 R`).join(' ')}] >>`,
        ...states.map((state, i) => kid(state, 20 * i)),
      ],
      { roots: [10] },
    )

  test('one button of a group is on; a text of Opt means its number', async () => {
    const bytes = group('/Opt [(Roof) (Ground) (Carport)]', '0', '1', '2')
    for (const on of ['1', 'Ground']) {
      const pdf = await filledPdf(bytes, [{ field: 'place', on }])
      expect(await as(pdf)).toEqual(['/Off', '/1', '/Off'])
      const seen = await widgetsOf(pdf)
      expect(seen.map(({ fieldValue }) => fieldValue)).toEqual(['1', '1', '1'])
    }
  })

  test('buttons of one state go together', async () => {
    expect(await as(await filledPdf(group('', 'Roof', 'Ground', 'Roof'), [{ field: 'place', on: 'Roof' }]))).toEqual([
      '/Roof',
      '/Off',
      '/Roof',
    ])
  })

  test('a value that is no state is told with the states', async () => {
    const data = { project: { title: 'Boat' } }
    const found = await fill(group('', 'Roof', 'Ground'), [{ field: 'place', from: 'project.title' }], { data })
    expect(found.findings[0]?.message).toContain("no state 'Boat'; its states: Roof, Ground")
  })
})

describe('choices', () => {
  const choice = (flags: number, more = '', height = 20) =>
    rawForm([
      widget(
        `/FT /Ch /Ff ${flags} /T (c) /Opt [[(a1) (Alpha)] (Beta) [(g1) (Gamma)]] ${more}`,
        `10 10 110 ${10 + height}`,
      ),
    ])
  const value = async (pdf: Uint8Array) => (await widgetsOf(pdf))[0]
  const printed = async (bytes: Uint8Array, text: string | string[]) =>
    (await pagesOf(await filledPdf(bytes, [{ field: 'c', text }], true)))[0]?.text.split('\n').filter(Boolean).join(' ')

  test('are found by what is seen or exported, and export what the form wants', async () => {
    for (const text of ['Alpha', 'a1']) {
      const seen = await value(await filledPdf(choice(0x20000), [{ field: 'c', text }]))
      expect(seen?.fieldValue).toEqual(['a1'])
      expect(await printed(choice(0x20000), text)).toBe('Alpha')
    }
  })

  test('what is no choice is an error, but where the form takes other text', async () => {
    const found = await fill(choice(0x20000), [{ field: 'c', text: 'Delta' }])
    expect(ids(found)).toEqual(['form.not-a-choice'])
    expect(found.findings[0]?.message).toContain('Alpha, Beta, Gamma')
    expect((await value(await filledPdf(choice(0x60000), [{ field: 'c', text: 'Delta' }])))?.fieldValue).toEqual([
      'Delta',
    ])
    expect(await printed(choice(0x60000), 'Delta')).toBe('Delta')
  })

  test('of which there are many are not all told', async () => {
    const many = Array.from({ length: 13 }, (_, i) => `(c${i + 1})`)
    const bytes = (count: number) =>
      rawForm([widget(`/FT /Ch /Ff 131072 /T (c) /Opt [${many.slice(0, count).join(' ')}]`)])
    const said = async (count: number) => (await fill(bytes(count), [{ field: 'c', text: 'x' }])).findings[0]?.message
    expect(await said(12)).toMatch(/c1, c2, .*c11, c12$/u)
    expect(await said(13)).toMatch(/c11, c12, \.\.\. \(13\)$/u)
  })

  test('several of a list, in the order of the form, with their numbers', async () => {
    const pdf = await filledPdf(choice(0x200000, '', 60), [{ field: 'c', text: ['Gamma', 'Alpha'] }])
    expect((await value(pdf))?.fieldValue).toEqual(['a1', 'g1'])
    expect(await printed(choice(0x200000, '', 60), ['Gamma'])).toBe('Alpha Beta Gamma')
    expect(Buffer.from(pdf).toString('latin1')).toMatch(/\/I \[ 0 2 \]/u)
  })

  test('a chosen line that the list does not show is told', async () => {
    const found = await fill(choice(0x200000, '', 20), [{ field: 'c', text: ['Alpha', 'Gamma'] }])
    expect(found.findings).toMatchObject([{ severity: 'warning', id: 'form.does-not-fit' }])
  })
})

describe('one form and the same values', () => {
  const bytes = rawForm([widget('/FT /Tx /T (a)')], { trailer: '/ID [<00> <01>]' })

  test('give the same bytes; other values others', async () => {
    const [one, two, other] = await Promise.all(
      ['x ≤', 'x ≤', 'y'].map((text) => filledPdf(bytes, [{ field: 'a', text }])),
    )
    expect(Buffer.compare(one ?? bytes, two ?? bytes)).toBe(0)
    const id = (pdf: Uint8Array | undefined) => /\/ID \[[^\]]*\]/u.exec(Buffer.from(pdf ?? []).toString('latin1'))?.[0]
    expect(id(one)).toBeDefined()
    expect(id(one)).not.toBe(id(other))
  })

  test('hold no date of their making', async () => {
    const text = Buffer.from(await filledPdf(bytes, [{ field: 'a', text: 'x' }])).toString('latin1')
    expect(text).not.toMatch(/ModDate|CreationDate|\(D:/u)
  })
})
