import { SIGN_IDS } from '../../src/fieldwork/review/tell-signs.js'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import {
  EXPLANATIONS,
  findExplanation,
  findTerm,
  findTopic,
  GLOSSARY,
  TOPICS,
} from '../../src/cli/explanations/index.js'
import { WARNING_IDS } from '../../src/money/rates/carried.js'
import { existingHouseChecks } from '../../src/electrical/index.js'
import type { Project } from '../../src/project/index.js'
import { findingSites, sitesOf, type FindingSite } from './finding-ids.js'

const SOURCES = new URL('../../src', import.meta.url).pathname
const sites = findingSites(SOURCES)

/** Names of checks: each first argument of `add('rail moment', ...)` and each `name: 'rafter bending strength'` of the structure. */
function checkNames(): string[] {
  const folder = join(SOURCES, 'structure')
  const text = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => readFileSync(join(folder, file), 'utf8'))
    .join('\n')
  return [...text.matchAll(/\badd\('([a-z ]+)'|^ {4}name: '([a-z ]+)',$/gmu)].map(([, a = '', b = '']) => a + b)
}

/** Ids of what is doubtful on data sheets: each is an argument of the collector. */
function doubtIds(): string[] {
  const folder = join(SOURCES, 'project/equipment/plausible')
  const text = readdirSync(folder)
    .map((file) => readFileSync(join(folder, file), 'utf8'))
    .join('\n')
  return [...text.matchAll(/'(equipment\.[a-z-]+)'/gu)].map(([, id = '']) => id)
}

/** Ids that the reader of sources cannot follow, by file and writing, with what they come to. */
const MADE: Readonly<Record<string, readonly string[]>> = {
  'fleet/collect.ts `fleet.${status}`': ['fleet.invalid', 'fleet.unreadable', 'fleet.defect'],
  'fieldwork/work-plan/plan-work.ts `work.${stage}-missing`': ['work.space-mounts-missing', 'work.size-wire-missing'],
  'structure/model/collect-checks.ts `structure.${slug}`': checkNames().map(
    (name) => `structure.${name.replaceAll(' ', '-')}`,
  ),
  'electrical/dwelling/existing-house.ts `house.${id}`': existingHouseChecks({} as Project).map(
    ({ id }) => `house.${id}`,
  ),
  'fieldwork/review/tell-signs.ts SIGN_IDS[sign.kind]': Object.values(SIGN_IDS),
  'project/equipment/plausible/doubts.ts id': doubtIds(),
  'money/rates/carried.ts id': WARNING_IDS,
  // These hand findings on and make none.
  'fleet/collect.ts id': [],
  'fleet/work-out.ts id': [],
  'house/parts/try-combination.ts id': [],
  'cli/output/findings.ts finding.id': [],
}

/** Whatever the stage, its id is of the family `*.cannot-run`. */
function idsOf({ file, written, ids }: FindingSite): readonly string[] | undefined {
  if (/^`\$\{[a-z.]+\}\.cannot-run`$/u.test(written)) return ['wire.cannot-run']
  return ids ?? MADE[`${file} ${written}`]
}

describe('explanations', () => {
  test('the reader of sources follows every form in which ids are written', () => {
    const text = `
      const TABLE = [['a', 1], ['b', 2]] as const
      const fixed = flag ? 'x.c' : 'x.d'
      for (const [key, n] of TABLE) sheet.find({ severity: 'note', id: \`x.\${key}\`, message })
      const list = rows.length ? [] : TABLE.filter(([one]) => one).map(([key]) => ({ id: \`y.\${key}\`, message, where: '' }))
      function say(id: string, message: string) { sheet.find({ severity: 'error' as const, id, message }) }
      say('x.e', 'no'); say(fixed, 'no')
      sheet.find({ severity, id: makeId(), message })`
    expect(sitesOf('a.ts', text).map(({ ids }) => ids)).toEqual([
      ['x.a', 'x.b'],
      ['y.a', 'y.b'],
      ['x.e', 'x.c', 'x.d'],
      undefined,
    ])
  })

  test('it finds the findings', () => {
    // Far fewer would mean that the reader has gone blind.
    expect(sites.length).toBeGreaterThan(130)
    expect(sites.flatMap(({ ids }) => ids ?? [])).toEqual(
      expect.arrayContaining([
        'climate.epw-clock',
        'permit.no-site-plan',
        'wire.string-backfeed',
        'structure.solar-gap',
      ]),
    )
    expect(checkNames()).toEqual(
      expect.arrayContaining(['lag withdrawal', 'rail deflection', 'rafter bending strength', 'module down']),
    )
  })

  test('every id that the code does not show is listed here', () => {
    const hidden = sites.filter((site) => idsOf(site) === undefined)
    expect(hidden.map(({ file, written }) => `${file} ${written}`)).toEqual([])
  })

  test('every finding has an explanation', () => {
    const ids = sites.flatMap((site) => idsOf(site) ?? [])
    expect([...new Set(ids)].filter((id) => findExplanation(id) === undefined)).toEqual([])
  })

  test('every explanation is of a finding that exists', () => {
    const ids = new Set(sites.flatMap((site) => idsOf(site) ?? []))
    const known = Object.keys(EXPLANATIONS).filter((id) => !id.startsWith('*'))
    expect(known.filter((id) => !ids.has(id))).toEqual([])
  })

  test.each(Object.entries(EXPLANATIONS))('%s says what, why, where from and how to mend it', (_id, one) => {
    for (const text of [one.means, one.rule, one.fix]) expect(text).toMatch(/^[A-Z`].*\.$/u)
    expect(one.sources.length).toBeGreaterThan(0)
  })

  test('names of objects are no ids', () => {
    for (const word of ['constructor', '__proto__', 'toString', '', '.', 'a.toString', '*.cannot-run.x']) {
      expect(findExplanation(word)).toBeUndefined()
    }
    expect(findExplanation('anything.cannot-run')).toBe(EXPLANATIONS['*.cannot-run'])
  })
})

describe('glossary', () => {
  test('has its words once each, none of them a finding', () => {
    const words = Object.entries(GLOSSARY).flatMap(([key, { also = [] }]) => [key, ...also])
    expect(words.filter((word, index) => words.indexOf(word) !== index)).toEqual([])
    expect(words.filter((word) => !/^[a-z0-9]+(?:-[a-z0-9]+)*$/u.test(word))).toEqual([])
    expect(Object.keys(GLOSSARY).length).toBeGreaterThanOrEqual(50)
  })

  test('finds a term by its other names', () => {
    expect(findTerm('busbar')?.[0]).toBe('bus-rating')
    expect(findTerm('line-side-tap')?.[0]).toBe('supply-side')
    expect(findTerm('constructor')).toBeUndefined()
  })

  test('names only keys that the project file has', () => {
    const schema = readFileSync(new URL('../../schemas/project.schema.json', import.meta.url), 'utf8')
    const keys = Object.values(GLOSSARY).flatMap(({ where = '' }) => where.match(/[a-z]+(?:_[a-z0-9]+)+/gu) ?? [])
    expect(keys.length).toBeGreaterThan(10)
    expect(keys.filter((key) => !schema.includes(`"${key}"`))).toEqual([])
  })

  test('so do the explanations', () => {
    const schema = readFileSync(new URL('../../schemas/project.schema.json', import.meta.url), 'utf8')
    const keys = Object.values(EXPLANATIONS).flatMap(({ fix }) => fix.match(/[a-z]+(?:_[a-z0-9]+)+/gu) ?? [])
    // The price list, the mapping of a form and the values of a key are not in that schema as keys.
    const elsewhere = [
      'usd_low',
      'size_pt',
      'usd_high',
      'opposite_end',
      'module_level',
      'hazard_control_system',
      'no_exposed_parts',
      'made_up',
      'by_hand',
      'must_stay_empty',
    ]
    expect([...new Set(keys)].filter((key) => !schema.includes(`"${key}"`) && !elsewhere.includes(key))).toEqual([])
  })
})

describe('topics', () => {
  const words = Object.entries(TOPICS).flatMap(([key, { also = [] }]) => [key, ...also])

  test('each is found by its key and its other words, and no finding or term stands before it', () => {
    for (const [key, topic] of Object.entries(TOPICS))
      for (const word of [key, ...(topic.also ?? [])]) expect(findTopic(word)).toEqual([key, topic])
    expect(words.filter((word) => findTerm(word) !== undefined || findExplanation(word) !== undefined)).toEqual([])
    expect(new Set(words).size).toBe(words.length)
    expect(findTopic('constructor')).toBeUndefined()
  })
})
