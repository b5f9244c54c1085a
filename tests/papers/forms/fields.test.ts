import { describe, expect, test } from 'vitest'
import { listFields, openForm } from '../../../src/papers/forms/index.js'
import { OFF, ON, rawForm } from './raw-pdf.js'
import { widgetsOf } from './filled.js'

const listed = async (bytes: Uint8Array) => listFields(await openForm('form.pdf', bytes))
const tx = (name: string, more = '') =>
  `<< /Type /Annot /Subtype /Widget /FT /Tx /T (${name}) /Rect [10 10 110 30] ${more} >>`

describe('the fields of a form', () => {
  test('type, flags, length and value are inherited, and names joined', async () => {
    // ISO 32000-1:2008, 12.7.3.1 and 12.7.3.2: FT, Ff, V and MaxLen may stand on a node above.
    const bytes = rawForm(
      [
        '<< /T (owner) /FT /Tx /Ff 4098 /MaxLen 7 /V (above) /TU (Of the owner) /Kids [11 0 R 12 0 R] >>',
        '<< /T (name) /Parent 10 0 R /Type /Annot /Subtype /Widget /Rect [10 10 110 30] >>',
        '<< /T (place) /Parent 10 0 R /Ff 1 /V (own) /Type /Annot /Subtype /Widget /Rect [10 40 110 60] >>',
      ],
      { roots: [10] },
    )
    const [name, place, ...more] = await listed(bytes)
    expect(more).toEqual([])
    expect(name).toMatchObject({
      name: 'owner.name',
      kind: 'text',
      required: true,
      read_only: false,
      traits: ['several lines'],
      max_length: 7,
      value: ['above'],
      tooltip: 'Of the owner',
      pages: [1],
    })
    expect(place).toMatchObject({ name: 'owner.place', required: false, read_only: true, value: ['own'] })
    // The same names as a reader that shares nothing with the program.
    expect((await widgetsOf(bytes)).map((one) => one.fieldName)).toEqual(['owner.name', 'owner.place'])
  })

  test('a merged field, one of several widgets, and two of one name', async () => {
    const bytes = rawForm(
      [
        tx('merged'),
        '<< /FT /Tx /T (twice) /Kids [12 0 R 13 0 R] >>',
        '<< /Type /Annot /Subtype /Widget /Parent 11 0 R /Rect [10 40 50 60] >>',
        '<< /Type /Annot /Subtype /Widget /Parent 11 0 R /Rect [60 40 90 60] >>',
        tx('same'),
        tx('same'),
      ],
      { roots: [10, 11, 14, 15] },
    )
    const form = await openForm('form.pdf', bytes)
    expect(form.fields.map(({ name, widgets, dicts }) => [name, widgets.length, dicts.length])).toEqual([
      ['merged', 1, 1],
      ['twice', 2, 1],
      ['same', 2, 2],
    ])
  })

  test('every kind by type and flags', async () => {
    const of = (type: string, flags: number, name: string) =>
      `<< /Type /Annot /Subtype /Widget /FT /${type} /Ff ${flags} /T (${name}) /Rect [0 0 20 20] >>`
    // The numbers of the flags by ISO 32000-1, tables 226, 228 and 230, written out here anew.
    const bytes = rawForm([
      of('Tx', 0, 'a'),
      of('Btn', 0, 'b'),
      of('Btn', 0x8000, 'c'),
      of('Btn', 0x10000, 'd'),
      of('Ch', 0x20000, 'e'),
      of('Ch', 0x60000, 'f'),
      of('Ch', 0x200000, 'g'),
      of('Sig', 0, 'h'),
      of('Odd', 0, 'i'),
      of('Tx', 0x2000, 'j'),
      of('Tx', 0x100000, 'k'),
      `${of('Tx', 0x1000000, 'l').slice(0, -2)} /MaxLen 5 >>`,
      of('Tx', 0x1000000, 'm'),
    ])
    expect((await listed(bytes)).map(({ kind, traits }) => [kind, ...traits])).toEqual([
      ['text'],
      ['check box'],
      ['radio'],
      ['push button'],
      ['drop-down'],
      ['drop-down', 'takes other text'],
      ['list', 'several choices'],
      ['signature'],
      ['of no known type'],
      ['text', 'password'],
      ['text', 'names a file'],
      ['text', 'cells'],
      // Cells want a length.
      ['text'],
    ])
  })

  test('states are those of the looks, whatever they are called; texts of numbered ones come from Opt', async () => {
    const radio = (parent: number, state: string, x: number) =>
      `<< /Type /Annot /Subtype /Widget /Parent ${parent} 0 R /Rect [${x} 0 ${x + 10} 10] /AS /Off /AP << /N << /Off ${OFF} /${state} ${ON} >> >> >>`
    const bytes = rawForm(
      [
        `<< /Type /Annot /Subtype /Widget /FT /Btn /T (box) /Rect [0 20 10 30] /AP << /N << /gew#e4hlt#20x ${ON} >> >> >>`,
        '<< /FT /Btn /Ff 32768 /T (place) /Opt [(Roof) (Ground)] /Kids [12 0 R 13 0 R] >>',
        radio(11, '0', 0),
        radio(11, '1', 20),
        '<< /Type /Annot /Subtype /Widget /FT /Btn /T (bare) /Rect [0 50 10 60] >>',
      ],
      { roots: [10, 11, 14] },
    )
    expect((await listed(bytes)).map(({ states }) => states)).toEqual([
      [{ name: 'gewählt x', text: null }],
      [
        { name: '0', text: 'Roof' },
        { name: '1', text: 'Ground' },
      ],
      [],
    ])
  })

  test('choices with what is seen and what is exported', async () => {
    const bytes = rawForm([
      '<< /Type /Annot /Subtype /Widget /FT /Ch /Ff 131072 /T (c) /Rect [0 0 50 20] /Opt [[(a1) (Alpha)] (Beta)] /V (a1) >>',
    ])
    expect((await listed(bytes))[0]).toMatchObject({
      choices: [
        { value: 'a1', text: 'Alpha' },
        { value: 'Beta', text: 'Beta' },
      ],
      value: ['a1'],
    })
  })

  test('names in UTF-16 and in the encoding of documents', async () => {
    const bytes = rawForm([tx('x').replace('(x)', '<FEFF00D6006C>'), tx(String.raw`\341`)])
    expect((await listed(bytes)).map(({ name }) => name)).toEqual(['Öl', 'á'])
  })
})
