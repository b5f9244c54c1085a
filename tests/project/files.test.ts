import { execFileSync, spawnSync } from 'node:child_process'
import { closeSync, ftruncateSync, openSync, symlinkSync } from 'node:fs'
import { join } from 'node:path'
import { buildSync } from 'esbuild'
import { describe, expect, test } from 'vitest'
import { loadProject } from '../../src/project/index.js'
import { failureOf, makeFolder, STARTER, starterWith } from './support.js'

const withEquipmentFile = (file: string) =>
  `${STARTER.slice(0, STARTER.indexOf('equipment:'))}equipment:\n  file: ${file}\n`
const EQUIPMENT = STARTER.slice(STARTER.indexOf('  modules:\n    m410'), STARTER.indexOf('\n# Wiring')).replaceAll(
  /^ {2}/gm,
  '',
)

/** What is said about a file, with the folder cut off. */
function said(folder: string, name: string, allowOutside = false): [number, ...string[]] {
  const error = failureOf(() => loadProject({ path: join(folder, name), allowOutside }))
  return [error.exitCode, ...error.message.replaceAll(`${folder}/`, '').split('\n')]
}

describe('the project file', () => {
  test('missing, folder, part of the path is a file', () => {
    const folder = makeFolder({ 'a.yaml': STARTER })
    expect(said(folder, 'none.yaml')).toEqual([3, 'none.yaml  no such file'])
    expect(said(folder, 'a.yaml/b')).toEqual([3, 'a.yaml/b  no such file: a part of its path is not a folder'])
    expect(failureOf(() => loadProject({ path: folder })).message).toBe(`${folder}  is a folder, not a file`)
  })

  test('special files are refused at once', () => {
    const folder = makeFolder({})
    execFileSync('mkfifo', [join(folder, 'pipe')])
    const message = "is not a regular file; to read from a pipe give '-' as the file name"
    expect(said(folder, 'pipe')).toEqual([3, `pipe  ${message}`])
    expect(failureOf(() => loadProject({ path: '/dev/zero' })).message).toBe(`/dev/zero  ${message}`)
  })

  test('50 MB are refused without reading', () => {
    const folder = makeFolder({ 'big.yaml': '' })
    const descriptor = openSync(join(folder, 'big.yaml'), 'r+')
    ftruncateSync(descriptor, 50_000_000)
    closeSync(descriptor)
    expect(said(folder, 'big.yaml')).toEqual([3, 'big.yaml  is 50.0 MB large; at most 2.0 MB is read'])
  })

  test('bytes that are not UTF-8', () => {
    const folder = makeFolder({
      'latin.yaml': Buffer.from('format: gablewatt/2\ntitle: Caf\xE9\n', 'latin1'),
      'utf16.yaml': Buffer.from('\uFEFFtitle: a\n', 'utf16le'),
    })
    expect(said(folder, 'latin.yaml')).toEqual([2, 'latin.yaml  is not UTF-8 text (line 2); save it as UTF-8'])
    expect(said(folder, 'utf16.yaml')).toEqual([
      2,
      'utf16.yaml  is not UTF-8 text (it looks like UTF-16); save it as UTF-8',
    ])
  })

  test('standard input', () => {
    const folder = makeFolder({})
    const script = join(folder, 'read.mjs')
    const source = new URL('../../src/project/read-file.ts', import.meta.url).pathname
    buildSync({ entryPoints: [source], outfile: script, bundle: true, platform: 'node', format: 'esm' })
    const run = (input: string | Buffer) =>
      spawnSync(
        process.execPath,
        [
          '-e',
          `import('${script}').then((m) => process.stdout.write(String(m.readStandardInput(100000).length)), (e) => process.stdout.write(e.message))
        .catch((e) => process.stdout.write(e.message))`,
        ],
        { input },
      ).stdout.toString()
    expect(run('x'.repeat(99_999))).toBe('99999')
    expect(run('')).toBe('0')
    expect(run('x'.repeat(200_000))).toMatch(/at most 0\.1 MB is read/)
  })
})

describe('files that the project names', () => {
  test('equipment file', () => {
    const folder = makeFolder({ 'p.yaml': withEquipmentFile('kit/e.yaml'), 'kit/e.yaml': EQUIPMENT, 'q.yaml': STARTER })
    const loaded = loadProject({ path: join(folder, 'p.yaml') })
    expect(loaded.project.equipment.modules).toEqual(
      loadProject({ path: join(folder, 'q.yaml') }).project.equipment.modules,
    )
    expect(loaded.files.get('kit/e.yaml')).toBe(EQUIPMENT)
    expect(loaded.locate('equipment.modules.m410.pmax_w')).toMatchObject({ file: 'kit/e.yaml', line: 4, column: 13 })
  })

  test('what stands in the project wins, entry by entry', () => {
    const text = `${withEquipmentFile('e.yaml')}  modules:\n    m410: { pmax_w: 300, pmax_temp_coeff_pct_per_c: -0.3 }\n`
    const folder = makeFolder({ 'p.yaml': text, 'e.yaml': EQUIPMENT })
    const { project, locate } = loadProject({
      path: join(folder, 'p.yaml'),
      overrides: ['equipment.inverters.micro366.ac_power_w=300'],
    })
    expect(project.equipment.modules?.['m410']).toEqual({ pmax_w: 300, pmax_temp_coeff_pct_per_c: -0.3 })
    expect(project.equipment.inverters?.['micro366']).toMatchObject({ ac_power_w: 300, max_dc_power_w: 540 })
    expect(locate('equipment.modules.m410.pmax_w')).toMatchObject({ file: join(folder, 'p.yaml') })
    expect(locate('equipment.inverters.micro366.ac_power_w')).toEqual({
      override: '--set equipment.inverters.micro366.ac_power_w=300',
    })
  })

  test('problems inside an equipment file are located there', () => {
    const broken = EQUIPMENT.replace('pmax_w: 410', 'pmax_w: -410').replace('kind: module_level', 'knd: module_level')
    const folder = makeFolder({ 'p.yaml': withEquipmentFile('e.yaml'), 'e.yaml': broken })
    expect(said(folder, 'p.yaml')).toEqual([
      2,
      'e.yaml:4:13  equipment.modules.m410.pmax_w  -410 W is too low; allowed: above 0, at most 1000 W',
      'e.yaml:18:5  equipment.inverters.micro366.knd  unknown key; did you mean kind?',
    ])
  })

  const EQUIPMENT_CASES: readonly (readonly [string, string, string])[] = [
    ['not YAML', 'modules: [', 'e.yaml:1:11  not readable as YAML'],
    [
      'list',
      '- a',
      'e.yaml:1:1  equipment  a file for equipment is a map of the same shape as equipment; found a list of 1',
    ],
    ['empty', '', 'e.yaml  is empty'],
    [
      'nested',
      `${EQUIPMENT}\nfile: more.yaml\n`,
      'e.yaml:1:1  equipment.file  a file that is referred to cannot refer to another',
    ],
    ['unknown group', `${EQUIPMENT}\nmodles: {}\n`, 'e.yaml:25:1  equipment.modles  unknown key; did you mean'],
  ]
  test.each(EQUIPMENT_CASES)('equipment file: %s', (_name, text, start) => {
    const folder = makeFolder({ 'p.yaml': withEquipmentFile('e.yaml'), 'e.yaml': text })
    const [exitCode, ...lines] = said(folder, 'p.yaml')
    expect(exitCode).toBe(2)
    expect(lines.map((line) => line.slice(0, start.length))).toContain(start)
  })

  const withEpw = (path: string) => starterWith('climate: nearby', `climate: { epw: '${path}' }`)

  test('weather file, also in Latin-1', () => {
    const folder = makeFolder({
      'p.yaml': withEpw('w/a.epw'),
      'w/a.epw': Buffer.from('LOCATION,Montr\xE9al', 'latin1'),
    })
    const loaded = loadProject({ path: join(folder, 'p.yaml') })
    expect([...loaded.files]).toEqual([['w/a.epw', 'LOCATION,Montr\u00E9al']])
  })

  test('files that cannot be read: exit code 3, or 2 with other problems', () => {
    const folder = makeFolder({
      'p.yaml': withEpw('none.epw'),
      'q.yaml': withEpw('none.epw').replace('modules: 12', 'modules: 0'),
      'r.yaml': withEquipmentFile('none.yaml').replace('climate: nearby', 'climate: { epw: sub }'),
      'sub/x': '',
    })
    expect(said(folder, 'p.yaml')).toEqual([3, "p.yaml:19:19  site.climate.epw  file 'none.epw': no such file"])
    expect(said(folder, 'q.yaml')).toEqual([
      2,
      "q.yaml:19:19  site.climate.epw  file 'none.epw': no such file",
      'q.yaml:32:14  arrays.south.modules  0 is too low; allowed: 1 to 2000',
    ])
    expect(said(folder, 'r.yaml')).toEqual([
      3,
      "r.yaml:19:19  site.climate.epw  file 'sub': is a folder, not a file",
      "r.yaml:39:9  equipment.file  file 'none.yaml': no such file",
    ])
  })

  test('references that leave the folder', () => {
    const folder = makeFolder({
      'outside.epw': 'secret',
      'in/real/a.epw': 'inside',
      'in/up.yaml': withEpw('../outside.epw'),
      'in/none.yaml': withEpw('../../../nothing-there.epw'),
      'in/link.yaml': withEpw('link.epw'),
      'in/linked-folder.yaml': withEpw('away/outside.epw'),
      'in/sideways.yaml': withEpw('link-inside.epw'),
      'in/round.yaml': withEpw('real/../real/a.epw'),
    })
    const inside = join(folder, 'in')
    symlinkSync('../outside.epw', join(inside, 'link.epw'))
    symlinkSync('..', join(inside, 'away'))
    symlinkSync('real/a.epw', join(inside, 'link-inside.epw'))
    symlinkSync('in', join(folder, 'also-in'))
    const refused = (name: string, written: string) =>
      expect(said(inside, name)).toEqual([
        2,
        `${name}:19:19  site.climate.epw  file '${written}' lies outside the project's folder; copy it there, or allow outside files`,
      ])
    refused('up.yaml', '../outside.epw')
    refused('none.yaml', '../../../nothing-there.epw')
    refused('link.yaml', 'link.epw')
    refused('linked-folder.yaml', 'away/outside.epw')
    const text = (name: string, allowOutside = false) => [
      ...loadProject({ path: join(inside, name), allowOutside }).files.values(),
    ]
    expect(text('sideways.yaml')).toEqual(['inside'])
    expect(text('round.yaml')).toEqual(['inside'])
    expect(text('up.yaml', true)).toEqual(['secret'])
    expect(text('link.yaml', true)).toEqual(['secret'])
    expect([...loadProject({ path: join(folder, 'also-in/round.yaml') }).files.values()]).toEqual(['inside'])
  })

  test('absolute paths: inside the folder they are taken, outside refused', () => {
    const folder = makeFolder({ 'in/a.epw': 'inside', 'b.epw': 'outside' })
    const load = (path: string) => () =>
      loadProject({ path: '-', text: withEpw(path), baseFolder: join(folder, 'in') }).files.size
    expect(load(join(folder, 'in/a.epw'))()).toBe(1)
    expect(failureOf(load(join(folder, 'b.epw'))).message).toMatch(/lies outside the project's folder/)
    expect(failureOf(load('/dev/zero')).message).toMatch(/lies outside the project's folder/)
    const all = failureOf(() => loadProject({ path: '-', text: withEpw('/dev/zero'), allowOutside: true }))
    expect(all.message).toMatch(/is not a regular file/)
    expect(all.exitCode).toBe(3)
  })

  test('the digest follows every input', () => {
    const folder = makeFolder({
      'p.yaml': withEpw('a.epw'),
      'a.epw': 'one',
      'b/p.yaml': withEpw('a.epw'),
      'b/a.epw': 'two',
    })
    const digest = (name: string, overrides: readonly string[] = []) =>
      loadProject({ path: join(folder, name), overrides }).digest
    const digests = [digest('p.yaml'), digest('b/p.yaml'), digest('p.yaml', ['title=a']), digest('p.yaml', ['title=b'])]
    expect(new Set(digests).size).toBe(4)
    expect(digests[0]).toMatch(/^[0-9a-f]{64}$/)
    expect(digest('p.yaml')).toBe(digests[0])
  })
})
