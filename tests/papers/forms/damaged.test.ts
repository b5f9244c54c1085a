import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { FileError } from '../../../src/files/index.js'
import { fillForm, listFields, openForm, readMapping, starterMapping } from '../../../src/papers/forms/index.js'
import { ProjectError } from '../../../src/project/index.js'
import { RandomSource } from '../../../src/values/index.js'
import { sourcesOf } from './filled.js'
import { OFF, ON, rawForm } from './raw-pdf.js'

const example = new Uint8Array(
  readFileSync(new URL('../../../examples/forms/sampletown-application.pdf', import.meta.url)),
)
const widget = (more: string, x = 10) => `<< /Type /Annot /Subtype /Widget /F 4 /Rect [${x} 10 ${x + 90} 30] ${more} >>`
const raw = rawForm(
  [
    widget('/FT /Tx /T (name) /MaxLen 20 /MK << /BC [0 0 1] /BG [1] /R 90 >> /BS << /W 1 /S /D >>'),
    widget(`/FT /Btn /T (box) /AS /Off /AP << /N << /Off ${OFF} /Yes ${ON} >> >>`),
    widget('/FT /Ch /Ff 131072 /T (choice) /Opt [[(a) (Alpha)] (Beta)] /DA (/Helv 0 Tf 0 g)'),
    '<< /T (group) /FT /Tx /Ff 4096 /Kids [14 0 R] >>',
    widget('/T (lines) /Parent 13 0 R /Q 1 /V (old)'),
    widget('/FT /Sig /T (s)'),
  ],
  { roots: [10, 11, 12, 13, 15], form: '/NeedAppearances true' },
)
const MAPPING = `format: gablewatt-form-mapping/1
fields:
  - { field: name, text: A. Lindqvist ≤ }
  - { field: box, on: 'Yes' }
  - { field: choice, text: Alpha }
  - { field: group.lines, text: "one\\ntwo" }
`
/** Words of PDF that are put in the place of others. */
const WORDS = ['null', '[]', '<< >>', '(x)', '/X', '10 0 R', '99 0 R', '3 0 R', '-1', '1e99', 'true', '<FEFFD800>']

type Random = () => number

/** One damage of a text of PDF; the number of bytes may change. */
function damage(bytes: Uint8Array, random: Random): Uint8Array {
  const pick = (count: number): number => Math.floor(random() * count)
  const text = Buffer.from(bytes).toString('latin1')
  const at = pick(text.length)
  switch (pick(5)) {
    case 0:
      return Buffer.from(text.slice(0, at), 'latin1')
    case 1:
      return Buffer.from(text.slice(0, at) + String.fromCharCode(pick(256)) + text.slice(at + 1), 'latin1')
    case 2:
      return Buffer.from(text.slice(0, at) + text.slice(at + 1 + pick(30)), 'latin1')
    default: {
      // A value of a key becomes one of another kind.
      const values = [...text.matchAll(/(?<=\/[A-Za-z]+ )(?:\d+ 0 R|\([^)]*\)|\[[^\]]*\]|\/\w+|-?\d+)/gu)]
      const value = values[pick(values.length)]
      const word = WORDS[pick(WORDS.length)] ?? ''
      if (value === undefined) return bytes
      return Buffer.from(text.slice(0, value.index) + word + text.slice(value.index + value[0].length), 'latin1')
    }
  }
}

/** What became of a form: `filled`, or the one message. Anything else than a message is thrown. */
async function outcome(bytes: Uint8Array, flat: boolean): Promise<string> {
  try {
    const form = await openForm('form.pdf', bytes)
    listFields(form)
    readMappingOf(starterMapping(form))
    const filled = await fillForm(form, readMapping('m.yaml', MAPPING), sourcesOf({}))
    const pdf = await filled.save(flat)
    return pdf.length > 100 ? 'filled' : 'empty'
  } catch (error) {
    if (error instanceof FileError || error instanceof ProjectError) return error.message
    throw error
  }
}

/** A starter has no entry in use, which is all that is wrong with it. */
function readMappingOf(text: string): void {
  expect(() => readMapping('starter.yaml', text)).toThrow(/fields/u)
}

describe('damaged forms', () => {
  test('the whole ones are filled, or refused for the mapping', async () => {
    expect(await outcome(raw, false)).toBe('filled')
    expect(await outcome(raw, true)).toBe('filled')
    expect(await outcome(example, false)).toContain('the form has no field')
  })

  test('200 of them give a filled form or one message, never anything else', { timeout: 120_000 }, async () => {
    const seen = new Map<string, number>()
    for (let seed = 1; seed <= 200; seed++) {
      const source = new RandomSource(seed)
      const random = (): number => source.uniform()
      let bytes = seed % 4 === 0 ? example : raw
      for (let times = 1 + Math.floor(random() * 3); times > 0; times--) bytes = damage(bytes, random)
      const said = await outcome(bytes, seed % 2 === 0)
      expect(said, `seed ${seed}`).not.toMatch(/NaN|undefined|\[object|^empty$/u)
      const kind =
        said === 'filled' ? 'filled' : /form/u.test(said) && !said.startsWith('m.yaml') ? 'refused' : 'mapping'
      seen.set(kind, (seen.get(kind) ?? 0) + 1)
    }
    // Each way is really gone.
    for (const kind of ['filled', 'refused', 'mapping']) expect(seen.get(kind) ?? 0, kind).toBeGreaterThan(15)
  })
})
