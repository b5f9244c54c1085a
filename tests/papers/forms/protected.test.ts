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
