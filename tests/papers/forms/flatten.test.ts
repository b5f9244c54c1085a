import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, test } from 'vitest'
import { pagesOf } from '../../drawings/pdf-text.js'
import { filledPdf, widgetsOf } from './filled.js'
import { OFF, ON, rawForm, stream } from './raw-pdf.js'

const widget = (more: string, rect: string, flags = 4) =>
  `<< /Type /Annot /Subtype /Widget /F ${flags} /Rect [${rect}] ${more} >>`

describe('a flat form', () => {
  test('shows what the fields showed, in their order, and has no fields', async () => {
    const bytes = rawForm(
      [
        widget('/FT /Tx /T (a)', '10 10 110 30'),
        widget('/FT /Tx /T (b) /MK << /R 90 >>', '200 10 220 110'),
        '<< /Type /Annot /Subtype /Text /Rect [0 0 5 5] /Contents (a note) >>',
      ],
      { roots: [10, 11], widgets: [10, 11, 12] },
    )
    const pdf = await filledPdf(
      bytes,
      [
        { field: 'b', text: 'upright' },
        { field: 'a', text: 'flat' },
      ],
      true,
    )
    expect((await pagesOf(pdf))[0]?.text.split('\n').filter(Boolean)).toEqual(['flat', 'upright'])
    expect((await widgetsOf(pdf)).map((one) => (one as unknown as { subtype: string }).subtype)).toEqual(['Text'])
    expect(Buffer.from(pdf).toString('latin1')).not.toContain('/AcroForm')
  })

  test('leaves out what is hidden, not to be viewed, or a button to push', async () => {
    const look = '/AP << /N 13 0 R >>'
    const bytes = rawForm(
      [
        widget('/FT /Tx /T (seen)', '10 10 110 30'),
        widget(`/FT /Tx /T (hidden) ${look}`, '10 40 110 60', 2),
        widget(`/FT /Tx /T (noview) ${look}`, '10 70 110 90', 32),
        stream(
          'BT /F0 10 Tf (SECRET) Tj ET',
          '/Type /XObject /Subtype /Form /BBox [0 0 100 20] /Resources << /Font << /F0 5 0 R >> >>',
        ),
        widget(`/FT /Btn /Ff 65536 /T (print) ${look}`, '10 100 110 120'),
      ],
      { roots: [10, 11, 12, 14], widgets: [10, 11, 12, 14] },
    )
    const pdf = await filledPdf(bytes, [{ field: 'seen', text: 'word' }], true)
    expect((await pagesOf(pdf))[0]?.text).toBe('word')
  })

  test('keeps no value that is not seen; a tagged form keeps the objects that its tags point at', async () => {
    const bodies = [
      widget('/FT /Tx /T (seen)', '10 10 110 30'),
      widget('/FT /Tx /T (hidden) /V (PRIVATE)', '10 40 110 60', 2),
      '<< /FT /Tx /T (parent) /V (ALSO PRIVATE) /Kids [13 0 R] >>',
      widget('/Parent 12 0 R', '10 70 110 90', 2),
    ]
    const options = { roots: [10, 11, 12] }
    const flat = async (catalog: string) => {
      const bytes = rawForm(bodies, { ...options, catalog })
      return Buffer.from(await filledPdf(bytes, [{ field: 'seen', text: 'x' }], true)).toString('latin1')
    }
    expect(await flat('')).not.toMatch(/PRIVATE|\/FT/u)
    expect(await flat('/MarkInfo << /Marked true >>')).toContain('PRIVATE')
  })

  test('turns the text of a turned widget, and keeps it in its place', async () => {
    const turned = (turn: number, rect: string) => widget(`/FT /Tx /T (t${turn}) /MK << /R ${turn} >>`, rect)
    const bytes = rawForm([
      turned(0, '100 100 200 120'),
      turned(90, '80 100 100 200'),
      turned(180, '0 80 100 100'),
      turned(270, '100 0 120 100'),
    ])
    const fields = [0, 90, 180, 270].map((turn) => ({ field: `t${turn}`, text: `T${turn}` }))
    const pdf = await filledPdf(bytes, fields, true)
    const document = await getDocument({ data: pdf, useSystemFonts: false, verbosity: 0 }).promise
    const { items } = await (await document.getPage(1)).getTextContent()
    const seen = items.flatMap((item) => {
      if (!('str' in item) || item.str === '') return []
      const [a = 0, b = 0, , , x = 0, y = 0] = item.transform as number[]
      return [[item.str, Math.round((Math.atan2(b, a) * 180) / Math.PI), Math.round(x), Math.round(y)]]
    })
    // Two points from the end where the text begins; the baseline 3.07 pt (0.307 of 10 pt) below the middle of 20 pt.
    expect(seen).toEqual([
      ['T0', 0, 102, 107],
      ['T90', 90, 93, 102],
      ['T180', 180, 98, 93],
      ['T270', -90, 107, 98],
    ])
  })

  test('is not made of a broken page, whose number is told', async () => {
    const bytes = rawForm([widget('/FT /Tx /T (a)', '10 10 110 30')])
    // Its list of fonts is a number.
    const text = Buffer.from(bytes).toString('latin1').replace('/Resources << >>', '/Resources <</Font 1>>')
    const broken = new Uint8Array(Buffer.from(text, 'latin1'))
    await expect(filledPdf(broken, [{ field: 'a', text: 'x' }], true)).rejects.toThrow('page 1 of the form is broken')
  })

  test('draws boxes as they stand, each look scaled into its place', async () => {
    const box = (name: string, rect: string) =>
      widget(`/FT /Btn /T (${name}) /AS /Off /AP << /N << /Off ${OFF} /On ${ON} >> >>`, rect)
    const bytes = rawForm([box('a', '10 10 30 20'), box('b', '50 10 60 20')])
    const text = Buffer.from(await filledPdf(bytes, [{ field: 'a', on: 'On' }], true)).toString('latin1')
    // The look is 10 by 10; the place of a is 20 by 10.
    expect(text).toContain('q 2 0 0 1 10 10 cm')
    expect(text).toContain('q 1 0 0 1 50 10 cm')
  })
})
