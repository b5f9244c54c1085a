import { readFileSync } from 'node:fs'
import { parse } from 'yaml'
import { describe, expect, test } from 'vitest'
import { aboutKey, findKeys, keyHint, listKeys, pathTrouble, writtenKey } from '../../../src/project/index.js'
import { bestFit, fitOf } from '../../../src/project/keys/match-pattern.js'
import { MOVED_RESULTS } from '../../../src/project/keys/moved-results.js'
import { WHERE_FOUND } from '../../../src/project/keys/where-found/index.js'

const keys = listKeys()
const leaves = keys.filter(({ isLeaf, pattern }) => isLeaf && pattern.at(-1) !== '#')

/** Every path of a sample file. */
function pathsIn(data: unknown, path = ''): string[] {
  if (typeof data !== 'object' || data === null) return [path]
  return Object.entries(data).flatMap(([key, inner]) => pathsIn(inner, path === '' ? key : `${path}.${key}`))
}

describe('keys of the project file', () => {
  test('the list follows the schema', () => {
    // A part that holds lists of maps and maps of ids, checked by hand in schemas/parts/equipment.yaml.
    const inverter = keys.filter(({ pattern }) =>
      pattern.join('.').startsWith('equipment.inverters.*.efficiency_curve'),
    )
    expect(inverter.map(writtenKey)).toEqual([
      'equipment.inverters.ID.efficiency_curve',
      'equipment.inverters.ID.efficiency_curve.N',
      'equipment.inverters.ID.efficiency_curve.N.load_pct',
      'equipment.inverters.ID.efficiency_curve.N.efficiency_pct',
    ])
    expect(leaves.length).toBeGreaterThan(1000)
  })

  test.each(['lark-hollow', 'harbor-point', 'fleet/springfield-whole-job'])(
    'each value of %s is of a key that is known',
    (name) => {
      const text = readFileSync(new URL(`../../../examples/${name}.yaml`, import.meta.url), 'utf8')
      const paths = pathsIn(parse(text))
      expect(paths.length).toBeGreaterThan(80)
      for (const path of paths) expect([path, findKeys(path).length]).toEqual([path, 1])
    },
  )

  test('every value says what it means, what is allowed, where to find it and what it can move', () => {
    const facts = leaves.map((key) => aboutKey(key))
    const gaps = facts.filter(({ means, allowed, where }) => [means, allowed, where ?? ''].includes(''))
    expect(gaps.map(({ path }) => path)).toEqual([])
    const immobile = facts.filter(({ moves }) => moves.length === 0)
    expect(immobile.map(({ path }) => path)).toEqual(['format'])
    const paths = leaves.map((key) => writtenKey(key).replaceAll('.N', '.0').replaceAll('ID', 'id'))
    expect(paths.filter((path) => pathTrouble(path) !== undefined)).toEqual([])
  })

  test('no line of the tables is about nothing', () => {
    const parts = keys.map(({ pattern }) => (pattern.at(-1) === '#' ? pattern.slice(0, -1) : pattern))
    for (const table of [WHERE_FOUND, MOVED_RESULTS]) {
      const used = new Set(parts.map((pattern) => bestFit<readonly [string, unknown]>(table, pattern)?.[0]))
      expect(table.map(([pattern]) => pattern).filter((pattern) => !used.has(pattern))).toEqual([])
    }
  })

  test('whatever is a number of a quantity has its unit', () => {
    const quantities = leaves.filter(({ pattern }) =>
      /_(?:in|ft|deg|a|v|w|kwh|psf|lb|lb_in|mph|usd|pct|c|in3|ft2)$/u.test(pattern.at(-1) ?? ''),
    )
    expect(quantities.map((key) => aboutKey(key)).filter(({ unit }) => unit === '')).toEqual([])
    const unitOf = (path: string) => findKeys(path).map((key) => aboutKey(key).unit)[0]
    expect(unitOf('equipment.inverters.s.terminal_torque_lb_in')).toBe('lb-in')
    expect(unitOf('roof_access.total_roof_area_ft2')).toBe('sq ft')
    expect(unitOf('electrical.terminal_temperature_c')).toBe('deg C')
    expect(unitOf('site.monthly_snowfall_in')).toBe('in')
  })
})

describe('finding a key', () => {
  test.each([
    ['arrays.south.standoff_in', 'arrays.ID.standoff_in'],
    ['arrays.*.standoff_in', 'arrays.ID.standoff_in'],
    ['standoff_in', 'arrays.ID.standoff_in'],
    ['panel.bus_a', 'electrical.panel.bus_a'],
    ['arrays.a.strings[2].modules', 'arrays.ID.strings.N.modules'],
    ['structure.framing.south.supports.0.kind', 'structure.framing.ID.supports.N.kind'],
    ['electrical.panel', 'electrical.panel'],
    // An id may be called like a key.
    ['arrays.modules.modules', 'arrays.ID.modules'],
    ['arrays.constructor.standoff_in', 'arrays.ID.standoff_in'],
  ])('%s', (words, expected) => {
    expect(findKeys(words).map(writtenKey)).toEqual([expected])
  })

  test('an end that several keys have brings them all', () => {
    expect(findKeys('bus_a').map(writtenKey)).toEqual([
      'electrical.panel.bus_a',
      'electrical.distribution.panels.ID.bus_a',
      'electrical.combiner.bus_a',
    ])
  })

  test.each(['', '.', 'arrays..x', 'south', 'ID', 'constructor', '__proto__', 'arrays.south.nothing', 'format.x'])(
    '%j is none',
    (words) => expect(findKeys(words)).toEqual([]),
  )

  test('a near miss is told', () => {
    expect(keyHint('roof_planes.south.azimth_deg')).toContain('did you mean azimuth_deg?')
    expect(keyHint('standof_in')).toBe('did you mean the key standoff_in?')
    expect(keyHint('zzzzzz')).toBeUndefined()
  })
})

test('the pattern that names most of a key counts', () => {
  const fit = (pattern: string, key: string) => fitOf(pattern.split('.'), key.split('.'))
  expect(fit('a.*.c', 'a.x.c')).toBeGreaterThan(fit('a.**', 'a.x.c') ?? Infinity)
  expect(fit('a.max_*', 'a.max_b')).toBeGreaterThan(fit('a.*', 'a.max_b') ?? Infinity)
  expect(fit('a.*_b_*', 'a.x_b_y')).toBeDefined()
  expect(fit('a.*_b', 'a.x_b_y')).toBeUndefined()
  expect(fit('a.v*_v', 'a.v')).toBeUndefined()
  expect(fit('a.**', 'a')).toBeUndefined()
  expect(fit('a.b', 'a.b.c')).toBeUndefined()
})
