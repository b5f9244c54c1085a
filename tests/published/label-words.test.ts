import { describe, expect, it } from 'vitest'
import { editions, labelWordRows, labelWords, type LabelWords } from '../../src/tables/nec/index.js'
import { readFixture } from '../electrical/read-fixture.js'

/** `3 / 8` as the source writes it. */
const fraction = (lengthIn: number | undefined): string =>
  [
    [3 / 8, '3/8'],
    [3 / 16, '3/16'],
    [1 / 2, '1/2'],
  ].find(([value]) => value === lengthIn)?.[1] as string

const fixture = readFixture('label-words')
const whereOf = new Map<string, string>()

/** Cells that point at another row: `same`, `as 2017 unless ...`, `as (a); ...`. */
function expanded(row: Record<string, string>): string {
  const { label_id: id = '', where = '' } = row
  const yearRow = (year: string) => fixture.find((each) => each['label_id'] === id && each['edition'] === year)
  const full = (): string => {
    if (where === 'same' || where === 'same three places') return whereOf.get(id) ?? ''
    if (where.startsWith('same;')) return `${whereOf.get(id)}${where.slice(4)}`
    if (where.startsWith('as (a)')) return `${whereOf.get('RSD_PLACARD_A')}${where.slice(6)}`
    const year = /^as (\d{4})/u.exec(where)?.[1]
    if (year === undefined) return where
    const target = yearRow(year)
    const base = target?.['where']?.startsWith('as ') === true ? whereOf.get(id) : target?.['where']
    return `${base}${where.slice(7)}`
  }
  const text = full()
  whereOf.set(id, text)
  return text
}

function wordsCell(row: LabelWords): string {
  if (row.wordsNote !== undefined) return row.wordsNote
  if (row.phrases !== undefined) return row.phrases.join('  or  ')
  const [content, ...rest] = (row.content ?? '').split(' - ')
  return [`(${content})`, ...rest].join(' - ')
}

function statusCell(row: LabelWords): string {
  if (row.status === 'no label') return '-'
  const either = (row.phrases?.length ?? 0) > 1 ? '(either)' : ''
  return [row.status, either, row.statusNote ?? ''].filter((each) => each !== '').join(' ')
}

function lettersCell({ letters }: LabelWords): string {
  if (letters === undefined) return ''
  if ('wholeIn' in letters) return fraction(letters.wholeIn)
  const rest = letters.restIn === undefined ? '' : `; ${fraction(letters.restIn)} rest`
  const standing = letters.standing === undefined ? '' : ` (${letters.standing})`
  return `${fraction(letters.titleIn)} title${rest}${standing}`
}

function coloursCell({ colours }: LabelWords): string {
  if (colours?.whole !== undefined) return colours.whole.join(' on ')
  if (colours?.title !== undefined)
    return `title ${colours.title.join(' on ')}; rest ${colours.rest?.join(' on ')}; ${colours.note}`
  return colours?.note ?? ''
}

describe('label words equal the published rows, cell by cell', () => {
  it('has every row of the source, in its order', () => {
    expect(labelWordRows.map((row) => `${row.id} ${row.edition.replace('NEC ', '')}`)).toEqual(
      fixture.map((row) => `${row['label_id']} ${row['edition']}`),
    )
  })

  it.each(fixture.map((row, index) => [row['label_id'], row['edition'], index] as const))(
    '%s %s: words, status, title, letters, colours, reflective, place, spacing, standing',
    (_, __, index) => {
      const [row, source] = [labelWordRows[index], fixture[index] ?? {}]
      if (row === undefined) throw new Error('no row')
      expect(row.section).toBe(source['section'])
      expect(wordsCell(row)).toBe(source['words'])
      expect(statusCell(row)).toBe(source['words_status'])
      expect(row.title === 'whole' ? 'same' : (row.title ?? '')).toBe(source['title_line'])
      expect(lettersCell(row)).toBe(source['letter_in'])
      expect(coloursCell(row)).toBe(source['colours'])
      expect(row.reflective ?? '').toBe(source['reflective'])
      expect(row.where).toBe(expanded(source))
      expect(row.spacingFt ?? '').toBe(source['spacing_ft'] === '' ? '' : Number(source['spacing_ft']))
      expect([row.standing, row.standingNote].filter((each) => each !== undefined).join(' ')).toBe(source['standing'])
      expect(row.source).toBe(source['source'])
    },
  )

  it('words that point at another edition are that edition’s, and a title is how its phrase begins', () => {
    expect(labelWordRows.filter((row) => row.wordsNote !== undefined)).toHaveLength(2)
    for (const row of labelWordRows) {
      const year = /^as (\d{4})/u.exec(row.wordsNote ?? '')?.[1]
      if (year !== undefined)
        expect(row.phrases).toEqual(
          labelWordRows.find((each) => each.id === row.id && each.edition === `NEC ${year}`)?.phrases,
        )
      if (row.title !== undefined && row.title !== 'whole') expect(row.phrases?.[0]?.startsWith(row.title)).toBe(true)
    }
  })
})

describe('an edition without words of its own', () => {
  // The source lists these as asked for by the edition without words at hand; the nearest later edition read has them.
  it.each([
    ['LINE_LOAD', 'NEC 2014', 'NEC 2017'],
    ['SUM_RULE', 'NEC 2014', 'NEC 2017'],
    ['SOURCES_PRESENT', 'NEC 2014', 'NEC 2017'],
    ['DC_SOURCE', 'NEC 2014', 'NEC 2017'],
    ['AC_POI', 'NEC 2014', 'NEC 2017'],
    ['DIRECTORY', 'NEC 2014', 'NEC 2017'],
    ['PV_DISC', 'NEC 2011', 'NEC 2017'],
    ['DIRECTORY', 'NEC 2011', 'NEC 2017'],
    // No later edition has it: the last before.
    ['GFP_WARNING', 'NEC 2014', 'NEC 2011'],
    ['SOURCES_PRESENT', 'NEC 2023', 'NEC 2017'],
  ] as const)('%s in %s takes the words of %s', (id, edition, from) => {
    expect(labelWords(id, edition)?.edition).toBe(from)
  })

  it('an edition with words of its own takes those', () => {
    for (const edition of editions)
      for (const row of labelWordRows.filter((each) => each.edition === edition))
        expect(labelWords(row.id, edition)).toBe(row)
    expect(labelWords('AC_POI', 'NEC 2023')?.status).toBe('no label')
    expect(labelWords('DISC_PURPOSE', 'NEC 2020')).toBeUndefined()
  })
})
