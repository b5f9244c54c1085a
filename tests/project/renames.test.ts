import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { renderJson } from '../../src/report/index.js'
import { tableJobs } from '../../src/fleet/index.js'
import { loadProject, pathTrouble, renameText } from '../../src/project/index.js'
import { RENAMED_KEYS, RENAMED_LADDER, RENAMED_VALUES } from '../../src/project/renames.js'
import { alternatives, childSchemas, projectSchema, type Schema } from '../../src/project/schema.js'
import { countFitted } from '../../src/roof/index.js'
import { estimateYield } from '../../src/yield/index.js'
import { failureOf, makeFolder, problemsOf, STARTER, starterWith } from './support.js'

const ROOT = new URL('../..', import.meta.url).pathname

/** What may stand at a dotted path by the schema; `*` is any id. */
function allowedAt(path: string): unknown[] {
  const root = projectSchema()
  let schemas: Schema[] = [root]
  for (const step of path.split('.')) schemas = schemas.flatMap((each) => childSchemas(each, step, root))
  return schemas
    .flatMap((each) => alternatives(each, root))
    .flatMap((each) => ('const' in each ? [each.const] : (each.enum ?? [])))
}

/** The frozen house as version 1 had it. */
const VERSION_1 = STARTER.replace('gablewatt/2', 'gablewatt/1').replace('mounting: near_roof', 'mounting: close_roof')

describe('the names of gablewatt/1', () => {
  it('renames something, each name once', () => {
    expect(RENAMED_KEYS.length).toBeGreaterThan(10)
    const names = [
      ...RENAMED_KEYS.map(({ under, from }) => `${under}.${from}`),
      ...RENAMED_VALUES.map(({ at, from }) => `${at} ${from}`),
    ]
    expect(new Set(names).size).toBe(names.length)
  })

  it.each(RENAMED_KEYS)('$under.$from is gone from the schema, and $to is there', ({ under, from, to }) => {
    expect(pathTrouble(`${under}.${to}`)).toBeUndefined()
    expect(pathTrouble(`${under}.${from}`)).toBe(
      `no key '${from}' under ${under}: it is called ${to} since gablewatt/2`,
    )
    expect(JSON.stringify(projectSchema())).not.toMatch(new RegExp(`\\b${from}\\b`, 'u'))
  })

  it.each(RENAMED_VALUES)('$at takes $to and no longer $from', ({ at, from, to }) => {
    expect(allowedAt(at)).toContain(to)
    expect(allowedAt(at)).not.toContain(from)
  })

  it('a file of version 1 is told every old name with its place and the new one', () => {
    const text = `${VERSION_1}losses: { soiling_pct: 2, age_years: 3 }\nmodel: { incidence: ashrae, temperature_delta_c: 1 }\n`
    const [format, mounting, ...more] = problemsOf(text)
    expect(format).toMatch(/^7:9 {2}format {2}found 'gablewatt\/1', this program reads 'gablewatt\/2'/u)
    expect(mounting).toMatch(
      /^34:15 {2}arrays\.south\.mounting {2}'close_roof' is called near_roof since gablewatt\/2; write /u,
    )
    expect(more.map((line) => line.split(' since ')[0]?.replace(/^\d+:/u, ''))).toEqual([
      "11  losses.soiling_pct  'soiling_pct' is called dirt_pct",
      "27  losses.age_years  'age_years' is called in_use_years",
      "21  model.incidence  'ashrae' is called one_coefficient",
      "29  model.temperature_delta_c  'temperature_delta_c' is called cell_above_back_c",
    ])
    expect(failureOf(() => loadProject({ path: '-', text })).exitCode).toBe(2)
  })

  it('an old name is told beside other mistakes, and in a file of version 2 too', () => {
    const problems = problemsOf(
      `${starterWith('standoff_in: 4', 'standoff_in: -4')}losses: { nameplate_pct: 1, dirt_pct: 200 }\n`,
    )
    expect(problems).toHaveLength(3)
    expect(problems.filter((line) => line.includes('called rating_shortfall_pct'))).toHaveLength(1)
  })

  it('old names in an override are told, as key and as value', () => {
    expect(problemsOf(STARTER, { overrides: ['losses.mismatch_pct=1', 'arrays.south.mounting=open_rack'] })).toEqual([
      expect.stringContaining("no key 'mismatch_pct' under losses: it is called unequal_modules_pct"),
      expect.stringContaining("'open_rack' is called free_rack"),
    ])
  })

  it('an old name as heading of a table is told with its place', () => {
    const folder = makeFolder({ 'table.csv': 'id,losses.connections_pct\na,1\n' })
    const table = join(folder, 'table.csv')
    expect(() => [...tableJobs('template.yaml', table, [])]).toThrow(
      `${table}:1:4: the heading 'losses.connections_pct': no key 'connections_pct' under losses: it is called contacts_pct since gablewatt/2`,
    )
  })
})

describe('rewriting a file of gablewatt/1', () => {
  it('replaces the very words and leaves every other byte', () => {
    const text = [
      "format:   'gablewatt/1' # soiling_pct and open_rack in a comment stay",
      'losses:\t{ "soiling_pct" : [1,2], age_years: 0x3,snow_pct: 0 }   # dirt',
      'arrays:',
      '  open_rack: &all { mounting: open_rack, note: open_rack }\r',
      '  two:   *all',
      '  \'three\': { mounting:   "insulated_back" }',
      '',
      'equipment: { modules: { glass_glass: { construction: glass_glass } } }',
      'model: {incidence: physical,temperature_a: -3}',
    ].join('\n')
    expect(renameText('p.yaml', text)).toEqual({
      replaced: 8,
      text: [
        'format:   gablewatt/2 # soiling_pct and open_rack in a comment stay',
        'losses:\t{ dirt_pct : [1,2], in_use_years: 0x3,snow_pct: 0 }   # dirt',
        'arrays:',
        '  open_rack: &all { mounting: free_rack, note: open_rack }\r',
        '  two:   *all',
        "  'three': { mounting:   laid_on_roof }",
        '',
        'equipment: { modules: { glass_glass: { construction: glass_back } } }',
        'model: {incidence: glass_layer,back_rise_still_air: -3}',
      ].join('\n'),
    })
  })

  it('brings the frozen house of version 1 to that of this version, and then finds nothing more', () => {
    expect(renameText('house.yaml', VERSION_1)).toEqual({ text: STARTER, replaced: 2 })
    expect(renameText('house.yaml', STARTER)).toEqual({ text: STARTER, replaced: 0 })
  })

  it('a file of equipment, which has no format, is rewritten too', () => {
    const text = '# sheet\nmodules: { m: { construction: thin_film_steel } }\n'
    expect(renameText('e.yaml', text).text).toBe('# sheet\nmodules: { m: { construction: steel_back } }\n')
  })

  it('an old name beside the new one is refused', () => {
    const error = failureOf(() =>
      renameText('p.yaml', 'format: gablewatt/1\nlosses: { dirt_pct: 1, soiling_pct: 2 }\n'),
    )
    expect(error.exitCode).toBe(2)
    expect(error.message).toMatch(/^p\.yaml:2:\d+ {2}losses\.dirt_pct {2}this key stands twice/u)
  })
})

describe('results before and after the names changed', () => {
  interface Before {
    readonly values: { readonly ladder: Readonly<Record<string, number>>; readonly arrays: Record<string, object> }
    readonly assumptions: readonly (readonly [path: string, value: unknown])[]
  }

  it('the demo house has the steps and the losses of version 1, under the new names', () => {
    const before = JSON.parse(
      readFileSync(new URL('fixtures/demo-house-version-1.json', import.meta.url), 'utf8'),
    ) as Before
    const loaded = loadProject({ path: join(ROOT, 'examples/lark-hollow.yaml') })
    // Version 1 clipped means of the hour only.
    const model = { ...loaded.project.model, clipping_within_hour: 'none' } as const
    const result = estimateYield({ ...countFitted(loaded.project), model }, loaded.files)
    const context = { tool: 'gablewatt', project: undefined, locate: () => undefined, showWork: false }
    const after = JSON.parse(renderJson({ title: '', stage: 'yield', sections: [], result }, context)) as {
      values: Before['values']
      assumptions: { path: string; value: unknown }[]
    }
    const ladder = Object.entries(before.values.ladder).map(([key, kwh]) => [RENAMED_LADDER[key] ?? key, kwh])
    expect(Object.keys(after.values.ladder)).toEqual(ladder.map(([key]) => key))
    const newKey = new Map(RENAMED_KEYS.map(({ under, from, to }) => [`${under}.${from}`, `${under}.${to}`]))
    const newValue = (path: string, value: unknown) =>
      RENAMED_VALUES.find(({ at, from }) => at === path && from === value)?.to ?? value
    const told = new Map(after.assumptions.map(({ path, value }) => [path, value]))
    const losses = before.assumptions.filter(([path]) => path.startsWith('losses.') && newKey.has(path))
    expect(losses.length).toBeGreaterThan(5)
    for (const [path, value] of losses) {
      expect(told.get(newKey.get(path) ?? path)).toEqual(newValue(path, value))
    }
  })
})
