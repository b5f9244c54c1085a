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
