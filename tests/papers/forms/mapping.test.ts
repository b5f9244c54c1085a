import { createHash } from 'node:crypto'
import { stringify } from 'yaml'
import { describe, expect, test } from 'vitest'
import { readMapping } from '../../../src/papers/forms/index.js'
import { formatValue } from '../../../src/papers/forms/mapping/index.js'
import { ProjectError } from '../../../src/project/index.js'
import { fill } from './filled.js'
import { OFF, ON, rawForm } from './raw-pdf.js'

const problems = (run: () => unknown): string[] => {
  try {
    run()
  } catch (error) {
    if (error instanceof ProjectError) return error.message.split('\n')
    throw error
  }
  return []
}
const ofText = (text: string) => problems(() => readMapping('m.yaml', text))
const ofFields = (...fields: readonly object[]) =>
  ofText(stringify({ format: 'gablewatt-form-mapping/1', fields })).map((line) =>
    line.replace(/^m\.yaml:\d+:\d+ {2}/u, ''),
  )

describe('a mapping by itself', () => {
  test('bad ones are told with line, column, what was found and what is allowed', () => {
    expect(ofText('format: gablewatt-form-mapping/1\nfields:\n  - field: a\n    form: project.title\n')[0]).toMatch(
      /^m\.yaml:4:5 {2}fields\.0\.form {2}unknown key; did you mean from\?/u,
    )
    expect(ofText('format: gablewatt-form-mapping/2\nfields: []\n').length).toBe(2)
    expect(ofText('[')[0]).toContain('m.yaml:1:')
    expect(ofText('')[0]).toContain('is empty')
    expect(ofText('fields: 3')[0]).toContain('m.yaml:1:')
  })

  test('entries that say too little, too much, or two things', () => {
    expect(ofFields({ field: 'a' })).toEqual(["fields.0  nothing says what goes into 'a'; state from, text or on"])
    expect(ofFields({ field: 'a', from: 'project.title', text: 'x' })[0]).toContain('state one of them')
    expect(ofFields({ field: 'a', text: 'x', on: 'Yes' })[0]).toContain('state one of them')
    for (const key of ['equals', 'translate', 'format', 'optional']) {
      const value = { equals: 'x', translate: { a: 'b' }, format: { decimals: 1 }, optional: true }[key]
      expect(ofFields({ field: 'a', text: 'x', [key]: value })).toEqual([
        `fields.0.${key}  ${key} has no meaning without from`,
      ])
    }
    const from = 'project.title'
    expect(ofFields({ field: 'a', from, equals: 'x', translate: { x: 'y' } })[0]).toContain('state it without')
    expect(ofFields({ field: 'a', from, translate: { x: 'y' }, format: { decimals: 1 } })[0]).toContain('one of them')
    expect(ofFields({ field: 'a', from, format: { decimals: 1, date: 'MM/DD/YY' } })[0]).toContain('state one kind')
    expect(ofFields({ field: 'a', text: 'x' }, { field: 'a', text: 'y' })[0]).toContain('filled by entry 0')
    const both = { format: 'gablewatt-form-mapping/1', fields: [{ field: 'a', text: 'x' }], must_stay_empty: ['a'] }
    expect(ofText(stringify(both))[0]).toContain("'a' must stay empty and is filled too")
  })

  test('sources that cannot be', () => {
    expect(ofFields({ field: 'a', from: 'project.parties.ower.name' })[0]).toContain('did you mean owner?')
    expect(ofFields({ field: 'a', from: 'totals.total_ac_kv' })[0]).toContain('did you mean total_ac_kw?')
    expect(ofFields({ field: 'a', from: 'nothing.at.all' })[0]).toContain('fields.0.from')
    expect(ofFields({ field: 'a', from: 'project.roof_planes.any_id.azimuth_deg' })).toEqual([])
  })
})

describe('a mapping and a form', () => {
  const widget = (more: string) => `<< /Type /Annot /Subtype /Widget /F 4 /Rect [10 10 110 30] ${more} >>`
  const looks = (...states: readonly string[]) =>
    `/AP << /N << /Off ${OFF} ${states.map((state) => `/${state} ${ON}`).join(' ')} >> >>`
  const bytes = rawForm(
    [
      widget('/FT /Tx /T (name)'),
      widget('/FT /Tx /Ff 1 /T (locked)'),
      widget('/FT /Tx /Ff 8192 /T (word)'),
      widget('/FT /Tx /Ff 1048576 /T (file)'),
      widget('/FT /Btn /Ff 65536 /T (push)'),
      widget(`/FT /Btn /T (box) ${looks('Yes')}`),
      widget('/FT /Btn /T (bare)'),
      '<< /T (group) /Kids [18 0 R] >>',
      widget('/FT /Tx /T (inner) /Parent 17 0 R'),
      '<< /FT /Btn /Ff 32768 /T (radio) /Kids [20 0 R] >>',
      widget(`/Parent 19 0 R ${looks('Roof')}`),
    ],
    { roots: [10, 11, 12, 13, 14, 15, 16, 17, 19] },
  )
  const told = async (entry: object): Promise<string> =>
    fill(bytes, [entry], { data: { project: { title: 'T' } } }).then(
      () => '',
      (error: unknown) => (error instanceof ProjectError ? error.message : String(error)),
    )

  test.each([
    [{ field: 'nam', text: 'x' }, "no field 'nam'; did you mean name?"],
    [{ field: 'group', text: 'x' }, 'is a group of fields; name one of them: group.inner'],
    [{ field: 'locked', text: 'x' }, 'is read-only in this form'],
    [{ field: 'word', text: 'x' }, 'is a password'],
    [{ field: 'file', text: 'x' }, 'names a file'],
    [{ field: 'push', text: 'x' }, 'is a push button'],
    [{ field: 'name', on: 'Yes' }, 'has no states'],
    [{ field: 'name', text: ['a', 'b'] }, 'takes one value; found a list of 2'],
    [{ field: 'name', from: 'project.title', equals: 'T' }, 'equals is for check boxes'],
    [{ field: 'box', text: 'x' }, "'box' is a check box; state on with one of: Yes"],
    [{ field: 'box', on: 'yes' }, "no state 'yes'; its states: Yes; did you mean Yes?"],
    [{ field: 'box', on: 'Yes', size_pt: 8 }, 'has no letters'],
    [{ field: 'bare', on: 'Yes' }, 'has no look for being on'],
    [{ field: 'radio', from: 'project.title', equals: 'T' }, 'state translate with one of: Roof'],
    [{ field: 'radio', from: 'project.title', on: 'Roof' }, 'state on without from'],
  ])('%o is refused', async (entry, words) => {
    const message = await told(entry)
    expect(message).toMatch(/^mapping\.yaml:\d+:\d+ {2}fields\.0\./u)
    expect(message).toContain(words)
  })

  test('what must stay empty has to be in the form, and empty', async () => {
    const entry = { field: 'name', text: 'x' }
    await expect(fill(bytes, [entry], { must_stay_empty: ['nobody'] })).rejects.toThrow("no field 'nobody'")
    const full = rawForm([widget('/FT /Tx /T (name)'), widget('/FT /Tx /T (fee) /V (5)')])
    const { findings } = await fill(full, [entry], { must_stay_empty: ['fee'] })
    expect(findings).toMatchObject([{ severity: 'error', id: 'form.not-empty' }])
  })

  test('a name that is gone says whether the form has changed', async () => {
    const gone = (form_sha256: string) => fill(bytes, [{ field: 'old_name', text: 'x' }], { form_sha256 })
    await expect(gone('0'.repeat(64))).rejects.toThrow('the form has changed since the mapping was written')
    const same = createHash('sha256').update(bytes).digest('hex')
    await expect(gone(same)).rejects.toThrow(
      expect.objectContaining({ message: expect.not.stringContaining('changed') }),
    )
    await expect(gone(same)).rejects.toThrow("no field 'old_name'")
  })

  test('another form, required fields without an entry, and values of scripts are told', async () => {
    const form = rawForm([widget('/FT /Tx /T (a)'), widget('/FT /Tx /Ff 2 /T (b)'), widget('/FT /Tx /T (sum)')], {
      form: '/CO [12 0 R]',
    })
    const { findings } = await fill(form, [{ field: 'a', text: 'x' }], { form_sha256: '0'.repeat(64) })
    expect(findings.map(({ severity, id }) => `${severity} ${id}`)).toEqual([
      'error form.required-empty',
      'warning form.other-form',
      'warning form.calculated',
    ])
    expect(findings[1]?.message).toContain('fields without an entry: b, sum')
  })

  test('a required field that stays blank is an error, unless a person or the office fills it', async () => {
    const required = ['a', 'b', 'c', 'owner_signature'].map((name) => widget(`/FT /Tx /Ff 2 /T (${name})`))
    const boxes = `/FT /Btn /Ff 2 /T (roof) /AP << /N << /Yes 15 0 R /Off 15 0 R >> >>`
    const form = rawForm(
      [...required, widget(boxes), '<< /Type /XObject /BBox [0 0 9 9] /Length 0 >> stream\n\nendstream'],
      {
        roots: [10, 11, 12, 13, 14],
      },
    )
    const said = async (fields: readonly object[], more: object = {}) =>
      (
        await fill(form, fields, { data: { project: { title: ' ', document: { invented: false } } }, ...more })
      ).findings.map(({ severity, id, message }) => `${severity} ${id} ${message}`)
    const all = await said([
      { field: 'a', from: 'project.title' },
      { field: 'b', from: 'project.site.address', optional: true },
    ])
    expect(all).toEqual([
      "error form.required-empty 'a' is required by the form, and its entry puts nothing into it",
      "error form.required-empty 'b' is required by the form, and its entry puts nothing into it",
      "error form.required-empty 'c' is required by the form, and the mapping has no entry for it",
      "error form.required-empty 'roof' is required by the form, and the mapping has no entry for it",
      expect.stringContaining('note form.left-empty'),
      'note form.left-to-sign left to the person who signs: owner_signature',
    ])
    // A box that stays off is an answer; a value that is not there is told once.
    const rest = await said(
      [
        { field: 'a', from: 'project.parties.owner.name' },
        { field: 'roof', from: 'project.document.invented' },
      ],
      { by_hand: ['b'], must_stay_empty: ['c'] },
    )
    expect(rest.map((each) => each.split(' ').slice(0, 2).join(' '))).toEqual([
      'error form.no-value',
      'note form.left-by-hand',
      'note form.left-to-sign',
    ])
    await expect(said([{ field: 'a', text: 'x' }], { by_hand: ['a'] })).rejects.toThrow(
      'left to be filled by hand and is filled too',
    )
    await expect(said([{ field: 'a', text: 'x' }], { by_hand: ['d'] })).rejects.toThrow("no field 'd'")
  })

  test('long lists of names are cut', async () => {
    const said = async (count: number) => {
      const fields = Array.from({ length: count }, (_, i) => widget(`/FT /Tx /T (f${i}_signature)`))
      const { findings } = await fill(rawForm([...fields, widget('/FT /Tx /T (a)')]), [{ field: 'a', text: 'x' }])
      return findings.find(({ id }) => id === 'form.left-to-sign')?.message
    }
    expect(await said(20)).toMatch(/f18_signature, f19_signature$/u)
    expect(await said(21)).toMatch(/f19_signature, \.\.\. \(21 in all\)$/u)
  })

  test('a value that is not there is an error, or a note where the entry is optional', async () => {
    const entry = { field: 'name', from: 'project.document.date' }
    expect((await fill(bytes, [entry])).findings).toMatchObject([{ severity: 'error', id: 'form.no-value' }])
    const { findings, fills } = await fill(bytes, [{ ...entry, optional: true }])
    expect(findings).toMatchObject([{ severity: 'note', id: 'form.left-empty' }])
    expect(fills).toEqual([])
  })

  test('a field that nobody can see is told', async () => {
    const hidden = rawForm([widget('/FT /Tx /T (a)').replace('/F 4', '/F 2'), '<< /FT /Tx /T (b) >>'])
    const { findings } = await fill(hidden, [
      { field: 'a', text: 'x' },
      { field: 'b', text: 'x' },
    ])
    expect(findings.map(({ id }) => id)).toEqual(['form.not-seen', 'form.not-seen'])
  })
})

describe('how values are written', () => {
  const written = (value: unknown, format: object | undefined, path: string) => {
    const found = formatValue(value, format, path)
    return 'text' in found ? found.text : `wrong: ${found.wrong}`
  }

  test('numbers, with decimals, thousands and units', () => {
    expect(written(8.2, undefined, 'a_kw')).toBe('8.2')
    expect(written(0.1 + 0.2, undefined, 'a')).toBe('0.3')
    expect(written(10_462.4, { decimals: 0 }, 'a_kwh')).toBe('10462')
    expect(written(10_462.4, { decimals: 1, thousands: true, with_unit: true }, 'a_kwh')).toBe('10,462.4 kWh')
    // 1 ft is 0.3048 m, 1 lb 0.45359237 kg, by definition (NIST SP 811).
    expect(written(10, { unit: 'm', decimals: 4 }, 'x_ft')).toBe('3.0480')
    expect(written(100, { unit: 'kg', decimals: 6 }, 'x_lb')).toBe('45.359237')
    expect(written(366, { unit: 'kW', with_unit: true }, 'ac_power_w')).toBe('0.366 kW')
    expect(written(-40, { unit: 'deg F' }, 'x_c')).toBe('-40')
    expect(written(1, { unit: 'm2', decimals: 6 }, 'x_sqft')).toBe('0.092903')
    expect(written(1, { unit: 'kW' }, 'x_ft')).toBe('wrong: it is in ft, which cannot be brought to kW')
    expect(written(1, { unit: 'kW' }, 'count')).toContain('wrong: the name of the value says no unit')
  })

  test('every unit of a kind into every other', () => {
    // By definition: NIST SP 811, appendix B; 1 sq ft = 0.09290304 m2.
    const kinds: readonly (readonly [ending: string, sizes: Readonly<Record<string, number>>])[] = [
      ['_w', { W: 1, kW: 0.001 }],
      ['_va', { VA: 1, kVA: 0.001 }],
      ['_kwh', { kWh: 1, MWh: 0.001 }],
      ['_ft', { ft: 1, in: 12, m: 0.3048, mm: 304.8 }],
      ['_in', { in: 1, ft: 1 / 12, m: 0.0254, mm: 25.4 }],
      ['_sqft', { 'sq ft': 1, m2: 0.092_903_04 }],
      ['_lb', { lb: 1, kg: 0.453_592_37 }],
      ['_c', { 'deg C': 1, 'deg F': 33.8 }],
    ]
    for (const [ending, sizes] of kinds) {
      for (const [unit, size] of Object.entries(sizes)) {
        expect([unit, Number(written(1, { unit }, `x${ending}`))]).toEqual([unit, expect.closeTo(size, 9)])
      }
    }
  })

  test('days', () => {
    const day = (date: string) => written('2026-03-02', { date }, 'date')
    expect(['YYYY-MM-DD', 'MM/DD/YYYY', 'MM/DD/YY', 'DD/MM/YYYY', 'Month D, YYYY'].map(day)).toEqual([
      '2026-03-02',
      '03/02/2026',
      '03/02/26',
      '02/03/2026',
      'March 2, 2026',
    ])
    for (let month = 1; month <= 12; month++) {
      const iso = `2026-${String(month).padStart(2, '0')}-28`
      const long = new Date(`${iso}T12:00:00Z`).toLocaleDateString('en-US', { dateStyle: 'long', timeZone: 'UTC' })
      expect(written(iso, { date: 'Month D, YYYY' }, 'date')).toBe(long)
    }
    expect(written('soon', { date: 'MM/DD/YY' }, 'date')).toContain("wrong: 'format.date' is for days")
  })

  test('what is no single value, and a format for what is no number', () => {
    expect(written({ a: 1 }, undefined, 'a')).toBe('wrong: it is a map, not a single value')
    expect(written('text', { decimals: 1 }, 'a')).toContain("'format' is for numbers")
    expect(written(true, undefined, 'a')).toBe('Yes')
  })
})
