import { PDFDocument } from '@cantoo/pdf-lib'
import { describe, expect, test } from 'vitest'
import { openForm } from '../../../src/papers/forms/index.js'
import { fill } from './filled.js'
import { rawForm, rawPdf } from './raw-pdf.js'

const text = '<< /Type /Annot /Subtype /Widget /FT /Tx /T (a) /Rect [10 10 110 30] >>'
const why = (bytes: Uint8Array): Promise<unknown> =>
  openForm('f.pdf', bytes).then(
    () => 'taken',
    (error: unknown) => (error instanceof Error ? `${error.name}: ${error.message}` : error),
  )

describe('forms that are refused, each with its reason', () => {
  test('what is no PDF, is cut off or broken', async () => {
    expect(await why(Buffer.from('no pdf'))).toContain("form 'f.pdf' is not a PDF")
    const whole = rawForm([text])
    expect(await why(whole.subarray(0, whole.length - 40))).toMatch(/is cut off|is broken/u)
  })

  test('locked ones', async () => {
    const pdf = await PDFDocument.create()
    pdf.addPage()
    pdf.getForm().createTextField('a').addToPage(pdf.getPage(0))
    pdf.encrypt({ ownerPassword: 'owner' })
    expect(await why(await pdf.save({ useObjectStreams: false }))).toContain('is locked (encrypted)')
  })

  test('certified and signed ones; usage rights alone are left out and told', async () => {
    const signature = '<< /Type /Sig /Filter /Adobe.PPKLite /Contents <00> >>'
    const certified = rawForm([text, signature], { roots: [10], catalog: '/Perms << /DocMDP 11 0 R >>' })
    expect(await why(certified)).toContain('is certified by its publisher')
    const signed = rawForm([text, '<< /FT /Sig /T (s) /V 12 0 R >>', signature], { roots: [10, 11] })
    expect(await why(signed)).toContain('is signed already')
    const twice = rawForm([text, '<< /FT /Sig /T (s) >>', '<< /FT /Sig /T (s) /V 13 0 R >>', signature], {
      roots: [10, 11, 12],
    })
    expect(await why(twice)).toContain('is signed already')
    const form = await openForm(
      'f.pdf',
      rawForm([text, signature], { roots: [10], catalog: '/Perms << /UR3 11 0 R >>' }),
    )
    expect(form.notes.join()).toContain('usage rights')
  })

  test('XFA alone; with plain fields beside it, it is left out and told', async () => {
    const alone = rawForm(['<< >>'], { roots: [], form: '/XFA [(template) 10 0 R]' })
    expect(await why(alone)).toContain('is an XFA form')
    const dynamic = rawForm([text], { form: '/XFA (x)', catalog: '/NeedsRendering true' })
    expect(await why(dynamic)).toContain('is an XFA form')
    const found = await fill(rawForm([text], { form: '/XFA (x)' }), [{ field: 'a', text: 'b' }])
    expect(Buffer.from(await found.save(false)).toString('latin1')).not.toContain('XFA')
    expect((await openForm('f.pdf', rawForm([text], { form: '/XFA (x)' }))).notes.join()).toContain('XFA part')
  })

  test('flat pages', async () => {
    expect(await why(rawForm([], { roots: [] }))).toContain('has no fields')
    const page = '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 9 9] >>'
    const flat = rawPdf({
      1: '<< /Type /Catalog /Pages 2 0 R >>',
      2: '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
      3: page,
    })
    expect(await why(flat)).toContain('has no fields')
  })

  test('a tree of fields that leads back to itself', async () => {
    const bytes = rawForm(['<< /T (a) /Kids [11 0 R] >>', '<< /T (b) /Kids [10 0 R] >>'], { roots: [10], widgets: [] })
    expect(await why(bytes)).toContain('is broken')
  })
})
