import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'

const src = new URL('../../src/', import.meta.url).pathname
const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts') && !file.includes('.generated.'))
  .map((file) => ({
    file,
    // Without comments and texts: a formula may be quoted anywhere.
    code: readFileSync(join(src, file), 'utf8')
      .replaceAll(/\/\*[\s\S]*?\*\/|\/\/[^\n]*/gu, '')
      .replaceAll(/'[^'\n]*'/gu, "''"),
  }))

const found = (pattern: RegExp, home: readonly string[]): string[] =>
  files
    .filter(({ file, code }) => pattern.test(code) && !home.some((place) => file.startsWith(place)))
    .map(({ file }) => file)

/** What has one home: by what a second home would be known, and where the first is. */
const HOMES = [
  { what: 'degrees and radians', pattern: /Math\.PI\)? \/ 180|180\)? \/ Math\.PI/u, home: ['values/units/'] },
  { what: 'milliseconds of a day or an hour', pattern: /\b(?:86_?400_?000|3_?600_?000)\b/u, home: ['values/units/'] },
  {
    what: 'factors of currents',
    pattern: /\b1\.25 [*/]|[*/] 1\.25\b/u,
    home: ['tables/', 'fieldwork/work-plan/plan-sheets', 'structure/'],
  },
  { what: 'exact decimals', pattern: /\bBig\(/u, home: ['values/decimal/'] },
  { what: 'random numbers', pattern: /Math\.imul|Math\.random/u, home: ['values/statistics/'] },
  { what: 'digests', pattern: /createHash\(/u, home: ['seal/'] },
  {
    what: 'days of the change of clocks',
    pattern: /nthWeekday\([^)]*, (?:3, 0, 2|11, 0, 1)\)/u,
    home: ['values/time/'],
  },
  { what: 'the normal law', pattern: /0\.2316419|0\.3989422/u, home: ['values/statistics/'] },
  { what: 'distances of words', pattern: /function (?:editDistance|levenshtein)/iu, home: ['values/'] },
  { what: 'inside a polygon', pattern: /inside = !inside/u, home: ['values/polygon/'] },
  { what: 'distance to a segment', pattern: /Math\.min\(1, Math\.max\(0, along/u, home: ['values/polygon/'] },
] as const

describe('what every trade uses has one home', () => {
  test.each(HOMES)('$what', ({ pattern, home }) => {
    expect(found(pattern, home)).toEqual([])
  })

  test.each(HOMES.filter(({ what }) => what !== 'factors of currents'))(
    'the home of $what is known by the same mark',
    ({ pattern, home }) => {
      const inHome = files.filter(({ file }) => home.some((place) => file.startsWith(place)))
      expect(inHome.some(({ code }) => pattern.test(code))).toBe(true)
    },
  )
})
