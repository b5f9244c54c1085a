import fc from 'fast-check'
import { parse, stringify } from 'yaml'
import { describe, expect, test } from 'vitest'
import { loadProject, readCheckedYaml } from '../../src/project/index.js'
import { failureOf, loadText, makeFolder, problemsOf, STARTER, starterWith } from './support.js'

/** The starter with one line replaced, and what is marked in it. */
const markedIn = (from: string | RegExp, to: string): readonly string[] => loadText(starterWith(from, to)).madeUp

describe('the marker of made-up values', () => {
  test('leaves a value what it is without the marker', () => {
    const text = starterWith('pitch_in_12: 6', 'pitch_in_12: !made_up 6')
    expect(loadText(text).project).toEqual(loadText(STARTER).project)
    expect(loadText(text).madeUp).toEqual(['roof_planes.south.pitch_in_12'])
    expect(loadText(STARTER).madeUp).toEqual([])
  })

  // The core schema of YAML 1.2.2, 10.3.2, says what a plain scalar is; the yaml package reads it without the marker.
  test('every plain scalar is read as it is without the marker', () => {
    const plain = fc.oneof(
      fc.constantFrom(
        '1',
        '-2.50',
        '0o17',
        '0x1F',
        '1e3',
        '.5',
        'true',
        'False',
        'null',
        '~',
        'NEC 2020',
        '1/2',
        '2x8',
        '.inf',
        'no',
        '08-01',
      ),
      fc.integer().map(String),
      fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
    )
    fc.assert(
      fc.property(plain, (text) => {
        const marked = problemsOf(`title: !made_up ${text}\n`)
        expect(marked).toEqual(
          problemsOf(`title: ${text}\n`).map((line) =>
            line.replace(
              /^(\d+):(\d+)/u,
              (_, l, c) => `${l}:${Number(c) + (marked[0]?.startsWith(`${l}:${c}`) === true ? 0 : 9)}`,
            ),
          ),
        )
      }),
      { numRuns: 60 },
    )
  })

  test('text in quotes stays text', () => {
    expect(loadText(starterWith(/title: .*/, "title: !made_up '12'")).project.title).toBe('12')
  })

  test('stands on maps, lists and the values of a map on one line', () => {
    const outline = 'outline: { shape: rectangle, width_ft: 40, depth_ft: 16 }'
    expect(markedIn(outline, outline.replace('{', '!made_up {'))).toEqual(['roof_planes.south.outline'])
    expect(markedIn(outline, outline.replace('40', '!made_up 40'))).toEqual(['roof_planes.south.outline.width_ft'])
    expect(markedIn('    m410:', '    m410: !made_up')).toEqual(['equipment.modules.m410'])
  })

  test('counts where an alias repeats it', () => {
    const text = starterWith('pitch_in_12: 6', 'pitch_in_12: !made_up &six 6').replace(
      'eave_height_ft: 10',
      'eave_height_ft: *six',
    )
    expect(loadText(text).madeUp).toEqual(['roof_planes.south.pitch_in_12', 'roof_planes.south.eave_height_ft'])
  })

  test('other tags, and misspelled ones, are still told', () => {
    for (const tag of ['!madeup', '!made-up', '!Made_up', '!made_up_'])
      expect(problemsOf(starterWith('pitch_in_12: 6', `pitch_in_12: ${tag} 6`)).join('\n')).toContain('tag')
  })

  test('what is wrong behind it is told at its place', () => {
    expect(problemsOf(starterWith('pitch_in_12: 6', 'pitch_in_12: !made_up steep'))[0]).toMatch(
      /^24:27 {2}roof_planes\.south\.pitch_in_12 /u,
    )
  })

  test('a value of --set is stated, one inside of a marked map does not confirm the others', () => {
    const text = starterWith('    m410:', '    m410: !made_up').replace('pitch_in_12: 6', 'pitch_in_12: !made_up 6')
    const marked = (...overrides: string[]) => loadText(text, { overrides }).madeUp
    expect(marked('roof_planes.south.pitch_in_12=7')).toEqual(['equipment.modules.m410'])
    expect(marked('equipment.modules.m410.pmax_w=400')).toEqual([
      'roof_planes.south.pitch_in_12',
      'equipment.modules.m410',
    ])
  })

  test('counts in the file of the equipment, unless the project has the entry itself', () => {
    const start = STARTER.indexOf('equipment:')
    const equipment = parse(STARTER).equipment as object
    const sheets = stringify(equipment).replace('m410:', 'm410: !made_up')
    const named = (own: string) => `${STARTER.slice(0, start)}equipment: { file: sheets.yaml${own} }\n`
    const folder = makeFolder({ 'sheets.yaml': sheets, 'a.yaml': named('') })
    expect(loadProject({ path: `${folder}/a.yaml` }).madeUp).toEqual(['equipment.modules.m410'])
    const own = JSON.stringify((equipment as { modules: object }).modules)
    const other = makeFolder({ 'sheets.yaml': sheets, 'a.yaml': named(`, modules: ${own}`) })
    expect(loadProject({ path: `${other}/a.yaml` }).madeUp).toEqual([])
  })

  test('is refused in files that are no project', () => {
    const rules = { schema: { type: 'object' }, validate: () => true, check: () => [] }
    expect(failureOf(() => readCheckedYaml('prices.yaml', 'a: !made_up 1\n', rules)).message).toMatch(
      /^prices\.yaml:1:13 {2}a {2}the marker !made_up counts in a project file/u,
    )
  })
})

describe('--set path=null', () => {
  const without = (path: string) => problemsOf(STARTER, { overrides: [`${path}=null`] })

  test('takes a key away for the run; one that is needed is told as missing, with the override', () => {
    const { project } = loadText(STARTER, { overrides: ['site.elevation_ft=null'] })
    expect(project.site).not.toHaveProperty('elevation_ft')
    expect(without('site.latitude_deg')[0]).toContain('--set site.latitude_deg=null  site.latitude_deg  missing')
    expect(without('site')[0]).toContain('site  missing')
  })

  test('a key that is not there is no error, an entry of a list is, and a later --set states it anew', () => {
    expect(loadText(STARTER, { overrides: ['losses.dirt_pct=null'] }).project.losses).toBeUndefined()
    const listed = problemsOf(`${STARTER}documents: [a.pdf]\n`, { overrides: ['documents.0=null'] })
    expect(listed[0]).toContain('documents is a list; an entry of it cannot be taken away')
    const both = loadText(STARTER, { overrides: ['site.latitude_deg=null', 'site.latitude_deg=40'] })
    expect(both.project.site.latitude_deg).toBe(40)
  })
})
