import { describe, expect, test } from 'vitest'
import { ProjectError } from '../../../src/project/index.js'
import { fill } from './filled.js'
import { OFF, ON, rawForm } from './raw-pdf.js'

const widget = (more: string, y = 10) =>
  `<< /Type /Annot /Subtype /Widget /F 4 /Rect [10 ${y} 110 ${y + 20}] ${more} >>`
const looks = (state: string) => `/AS /Off /AP << /N << /Off ${OFF} /${state} ${ON} >> >>`
const message = async (bytes: Uint8Array, entry: object): Promise<string> =>
  fill(bytes, [entry]).then(
    ({ findings }) => findings.map((one) => `${one.severity} ${one.id}`).join(),
    (error: unknown) => {
      if (!(error instanceof ProjectError)) throw error
      expect(error.exitCode).toBe(2)
      return error.message
    },
  )

describe('what only the person who signs may fill', () => {
  const named = (name: string, tooltip = '') => widget(`/FT /Tx /T (${name}) /TU (${tooltip})`)

  test.each([
    ['Signature', ''],
    ['ownerSignature1', ''],
    ['OWNER_SIGN', ''],
    ['field7', 'Sign here'],
    ['field7', 'Date signed'],
    ['x.date_of_signing', ''],
    ['Initials 2', ''],
    ['owner initial', ''],
    ['initial_here', ''],
    ['certify1', ''],
    ['Text3', 'I certify under penalty of perjury'],
    ['Text3', 'true under penalty'],
    ['attestation', ''],
    ['Declarant', ''],
    ['notary', ''],
  ])('%s (%s) is refused by name, at its line', async (name, tooltip) => {
    const field = name.split('.').at(-1) ?? ''
    const said = await message(rawForm([named(field, tooltip)]), { field, text: 'A. Lindqvist' })
    expect(said).toMatch(/^mapping\.yaml:3:12 {2}fields\.0\.field/u)
    expect(said).toContain(`'${field}' is never filled`)
  })

  test.each(['design', 'designer', 'signal', 'assigned_to', 'certification_number', 'initial_cost', 'date', 'Sigma'])(
    '%s is data and may be filled',
    async (field) => {
      expect(await message(rawForm([named(field)]), { field, text: 'x' })).toBe('')
    },
  )

  test('signature fields whatever they are called, and a date in the line of one', async () => {
    const bytes = rawForm([
      widget('/FT /Sig /T (f1)', 10),
      widget('/FT /Tx /T (f2) /TU (Date)', 15).replace('[10 15 110 35]', '[200 15 260 35]'),
      widget('/FT /Tx /T (date_of_drawings)', 100),
    ])
    expect(await message(bytes, { field: 'f1', text: 'x' })).toContain('it is a signature')
    expect(await message(bytes, { field: 'f2', text: '2026-03-02' })).toContain("the date beside 'f1'")
    expect(await message(bytes, { field: 'date_of_drawings', text: '2026-03-02' })).toBe('note form.left-to-sign')
  })

  test('each word that says so, and none that it begins', async () => {
    const words =
      'sign signs signed signing signer signers signatory signature signatures sig initials certify certifies certifying attest attests attested attestation attestations declare declares declarant declaration declarations affirm affirms affirmation affidavit swear sworn oath perjury notary notarized notarised witness hereby'
    for (const word of words.split(' ')) {
      expect(await message(rawForm([named(word)]), { field: word, text: 'x' }), word).toContain('is never filled')
      expect(await message(rawForm([named(`${word}ql`)]), { field: `${word}ql`, text: 'x' }), word).toBe('')
    }
    const agreeing =
      'agree agrees agreed agreement accept accepts acknowledge acknowledges acknowledgement acknowledgment authorize authorise certification confirm confirms consent consents understand warrant warrants'
    for (const word of agreeing.split(' ')) {
      const box = rawForm([widget(`/FT /Btn /T (${word}) ${looks('Yes')}`)])
      expect(await message(box, { field: word, on: 'Yes' }), word).toContain('is never filled')
      expect(await message(rawForm([named(word)]), { field: word, text: 'x' }), word).toBe('')
    }
  })

  test('a date in the line of any place of a signature, on the same page, within 14 points', async () => {
    const signature = '<< /FT /Sig /T (s) /Kids [11 0 R 12 0 R] >>'
    const place = (y: number) => `<< /Type /Annot /Subtype /Widget /Parent 10 0 R /Rect [10 ${y} 90 ${y + 20}] >>`
    const said = (y: number) =>
      message(rawForm([signature, place(10), place(200), widget('/FT /Tx /T (dated)', y)], { roots: [10, 13] }), {
        field: 'dated',
        text: '2026-03-02',
      })
    expect(await said(214)).toContain("the date beside 's'")
    expect(await said(186)).toContain("the date beside 's'")
    expect(await said(24)).toContain("the date beside 's'")
    expect(await said(215)).toBe('note form.left-to-sign')
    expect(await said(100)).toBe('note form.left-to-sign')
  })

  test('boxes, states and choices that say yes to something', async () => {
    const box = rawForm([widget(`/FT /Btn /T (agree_to_terms) ${looks('Yes')}`)])
    expect(await message(box, { field: 'agree_to_terms', on: 'Yes' })).toContain("says 'agree'")
    const state = rawForm([widget(`/FT /Btn /T (box4) ${looks('I#20certify')}`)])
    expect(await message(state, { field: 'box4', on: 'I certify' })).toContain("says 'certify'")
    const choice = rawForm([widget('/FT /Ch /Ff 131072 /T (c) /Opt [(No) (I accept)]')])
    expect(await message(choice, { field: 'c', text: 'I accept' })).toBe('error form.left-to-person')
    expect(await message(choice, { field: 'c', text: 'No' })).toBe('')
  })
})
