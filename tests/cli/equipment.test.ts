import { copyFileSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { ensureBuilt, gablewattWarm, ROOT } from './binary.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-equipment-'))
const EXAMPLE = join(ROOT, 'examples/equipment.yaml')
const HOUSE = join(ROOT, 'examples/lark-hollow.yaml')
const file = join(folder, 'equipment.yaml')
const MODULE = ['pmax_w=420', 'pmax_temp_coeff_pct_per_c=-0.34', 'sheet=Sheet 1 (invented)'].flatMap((one) => [
  '--set',
  one,
])

beforeAll(() => {
  ensureBuilt()
  copyFileSync(EXAMPLE, file)
})
afterAll(() => rmSync(folder, { recursive: true }))

const validate = new Ajv2020({ strict: false }).compile(
  JSON.parse(readFileSync(`${ROOT}/schemas/result.schema.json`, 'utf8')) as object,
)

describe('add-equipment', () => {
  test('shows what it would write, and writes nothing, with --dry-run', async () => {
    const args = ['add-equipment', '--file', file, '--module', 'm420', ...MODULE, '--dry-run']
    const { exitCode, stdout, stderr } = await gablewattWarm(args)
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' })
    expect(stdout).toContain('1 would be written')
    expect(stdout).toMatch(/^30 {4}m420:\n31 {6}pmax_w: 420\n32 {6}pmax_temp_coeff_pct_per_c: -0\.34\n33 {6}sheet:/mu)
    expect(stdout).not.toMatch(/^3[4-9] /mu)
    expect(readFileSync(file, 'utf8')).toBe(readFileSync(EXAMPLE, 'utf8'))
  })

  test('writes into the file without --force, and makes a new one', async () => {
    const { exitCode, stderr } = await gablewattWarm(['add-equipment', '--file', file, '--module', 'm420', ...MODULE])
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: `wrote ${file}\n` })
    expect(readFileSync(file, 'utf8')).toContain('  m420:\n    pmax_w: 420\n')
    const fresh = join(folder, 'fresh.yaml')
    expect((await gablewattWarm(['add-equipment', '--file', fresh, '--module', 'm420', ...MODULE])).exitCode).toBe(0)
    expect(readFileSync(fresh, 'utf8')).toMatch(/^modules:\n {2}m420:\n {4}pmax_w: 420\n/u)
    expect(readdirSync(folder).filter((name) => name.includes('.tmp'))).toEqual([])
  })

  test.each([
    [['--module', 'm410', ...MODULE], 1, 'stands in the file already'],
    [['--module', 'bad', ...MODULE, '--set', 'vmp_v=30', '--set', 'imp_a=10'], 1, '[equipment.power-product]'],
    [['--module', 'bad', '--set', 'pmax_w=-1'], 2, '--set pmax_w=-1  equipment.modules.bad.pmax_w  -1 W is too low'],
    [['--module', 'bad', '--set', 'pmaxw=1'], 2, 'did you mean pmax_w?'],
    [[...MODULE], 2, 'name one piece: --module ID, --inverter ID'],
    [['--module', 'a', '--rail', 'b', ...MODULE], 2, 'name one piece'],
    [['--table', 'x.csv'], 2, '--table needs --columns'],
    [['--columns', 'x.yaml', '--module', 'a'], 2, '--columns belongs to --table'],
    [['--table', 'x.csv', '--columns', 'y.yaml', '--module', 'a'], 2, '--table stands without ids'],
    [['--table', 'no.csv', '--columns', 'no.yaml'], 3, 'cannot read no.csv'],
  ])('%j writes nothing and ends with %i', async (args, code, words) => {
    const before = readFileSync(file, 'utf8')
    const { exitCode, stdout, stderr } = await gablewattWarm(['add-equipment', '--file', file, ...args])
    expect(exitCode).toBe(code)
    expect(code === 1 ? stdout : stderr).toContain(words)
    expect(readFileSync(file, 'utf8')).toBe(before)
  })

  test('a file that is no YAML is refused with its place, and stays', async () => {
    const broken = join(folder, 'broken.yaml')
    writeFileSync(broken, 'modules:\n  a: [\n')
    const { exitCode, stderr } = await gablewattWarm(['add-equipment', '--file', broken, '--module', 'a', ...MODULE])
    expect(exitCode).toBe(2)
    expect(stderr).toContain('broken.yaml:')
    expect(readFileSync(broken, 'utf8')).toBe('modules:\n  a: [\n')
  })

  test('a table is written as a whole or not at all', async () => {
    const [table, columns] = [join(folder, 'sheets.csv'), join(folder, 'columns.yaml')]
    const declared =
      'format: gablewatt-equipment-columns/1\nkind: module\nid_column: Id\ncolumns:\n  pmax_w: { column: P }\n  pmax_temp_coeff_pct_per_c: { column: T }\nvalues: { sheet: List 1 (invented) }\n'
    writeFileSync(columns, declared)
    const target = join(folder, 'many.yaml')
    const args = ['add-equipment', '--file', target, '--table', table, '--columns', columns]
    writeFileSync(table, 'Id,P,T\na,400,-0.3\nb,4000,-0.3\n')
    const refused = await gablewattWarm(args)
    expect(refused.exitCode).toBe(2)
    expect(refused.stderr).toContain('sheets.csv:3:3  equipment.modules.b.pmax_w  4000 W is too high')
    expect(existsSync(target)).toBe(false)
    writeFileSync(table, 'Id,P,T\na,400,-0.3\nb,410,-0.3\n')
    const { exitCode, stdout } = await gablewattWarm([...args, '--json'])
    expect(exitCode).toBe(0)
    const result = JSON.parse(stdout) as { values: { written: boolean; entries: { id: string; does: string }[] } }
    expect(validate(result), JSON.stringify(validate.errors)).toBe(true)
    expect(result.values.written).toBe(true)
    expect(result.values.entries.map(({ id, does }) => [id, does])).toEqual([
      ['a', 'added'],
      ['b', 'added'],
    ])
    expect(readFileSync(target, 'utf8').match(/^ {2}[ab]:$/gmu)).toHaveLength(2)
  })
})

describe('list-equipment', () => {
  test('tells what a file holds', async () => {
    const { exitCode, stdout, stderr } = await gablewattWarm(['list-equipment', EXAMPLE], { env: { COLUMNS: '80' } })
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' })
    for (const heading of ['Modules', 'Inverters', 'Trunk cables', 'Rails', 'Mounts'])
      expect(stdout).toMatch(new RegExp(`^${heading}$`, 'mu'))
    expect(stdout).toMatch(/^m410 +Invented M410 +410 +67\.8 +44\.6 +37\.4 +13\.87$/mu)
    expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80)
  })

  test('with --fits tells what fits a project and why the others do not', async () => {
    const candidates = join(folder, 'candidates.yaml')
    writeFileSync(candidates, readFileSync(EXAMPLE, 'utf8').replace('pmax_w: 410', 'pmax_w: 545'))
    const args = ['list-equipment', EXAMPLE, candidates, '--fits', HOUSE]
    const { exitCode, stdout, stderr } = await gablewattWarm(args, { env: { COLUMNS: '80' } })
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' })
    expect(stdout).toMatch(/^m410 +Invented M410 +410 .*yes +20 +8\.20$/mu)
    expect(stdout).toMatch(/^m410 +Invented M410 +545 .*no$/mu)
    expect(stdout).toContain('- m410: arrays.south.inverter: a module of 545 W is more than the 540 W')
    expect(stdout).toContain('- s6000: the arrays have module-level inverters')
    expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80)
  })

  test('as JSON and CSV holds every reason', async () => {
    const args = ['list-equipment', '--fits', HOUSE, '--set', 'equipment.inverters.micro366.max_input_isc_a=12']
    const json = JSON.parse((await gablewattWarm([...args, '--json'])).stdout) as {
      values: { equipment: { kind: string; fit: { fits: boolean; reasons: string[] } | null }[] }
      findings: { id: string }[]
    }
    expect(validate(json), JSON.stringify(validate.errors)).toBe(true)
    expect(json.findings.map(({ id }) => id)).toContain('equipment.project-fails')
    expect(json.values.equipment.map(({ kind, fit }) => [kind, fit?.fits])).toEqual([
      ['module', true],
      ['inverter', true],
      ['inverter', false],
      ['trunk-cable', undefined],
      ['rail', undefined],
      ['mount', undefined],
    ])
    const csv = await gablewattWarm([...args, '--csv'])
    expect(csv.stdout.split('\r\n')[0]).toBe('kind,id,name,file,power_w,fits,modules,array_power_w,reasons')
  })

  test.each([
    [[], 2, 'name an equipment file, or a project with --fits'],
    [[EXAMPLE, '--set', 'title=x'], 2, '--set changes a project'],
    [['no.yaml'], 3, 'cannot read no.yaml'],
    [[EXAMPLE, '--fits', 'no.yaml'], 3, 'no.yaml'],
  ])('%j ends with %i', async (args, code, words) => {
    const { exitCode, stdout, stderr } = await gablewattWarm(['list-equipment', ...args])
    expect({ exitCode, stdout }).toEqual({ exitCode: code, stdout: '' })
    expect(stderr).toContain(words)
  })

  test('what is wrong in a file is told at its place', async () => {
    const wrong = join(folder, 'wrong.yaml')
    writeFileSync(wrong, 'modules:\n  a:\n    pmax_w: -4\n    pmax_temp_coeff_pct_per_c: -0.3\n')
    const { exitCode, stderr } = await gablewattWarm(['list-equipment', wrong])
    expect(exitCode).toBe(2)
    expect(stderr).toContain('wrong.yaml:3:13  equipment.modules.a.pmax_w  -4 W is too low')
  })
})

describe('explain of keys', () => {
  test('tells what a key means, where to find it and what it can move', async () => {
    const { exitCode, stdout, stderr } = await gablewattWarm(['explain', 'arrays.south.standoff_in'])
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' })
    expect(stdout).toMatch(/^Unit +in$/mu)
    expect(stdout).toMatch(/^Allowed +a number \(0 to 120 in\)$/mu)
    expect(stdout).toContain('from the covering to the underside of the frame')
    expect(stdout).toMatch(/^estimate-yield, size-wire, space-mounts/mu)
  })

  test('lists the keys of a part, and those that end alike', async () => {
    expect((await gablewattWarm(['explain', 'roof_planes'])).stdout).toMatch(/^ID\.azimuth_deg +Direction/mu)
    expect((await gablewattWarm(['explain', 'bus_a'])).stdout).toContain('bus_a: 3 keys of the project file')
  })

  test('hints at the nearest, and has a JSON form', async () => {
    const { exitCode, stderr } = await gablewattWarm(['explain', 'arrays.south.standof_in'])
    expect(exitCode).toBe(2)
    expect(stderr).toContain('did you mean standoff_in?')
    const { stdout } = await gablewattWarm(['explain', 'standoff_in', '--json'])
    const result = JSON.parse(stdout) as { values: { keys: unknown[] } }
    expect(validate(result), JSON.stringify(validate.errors)).toBe(true)
    expect(result.values.keys[0]).toMatchObject({ key: 'arrays.ID.standoff_in', unit: 'in', example: 'standoff_in: 4' })
  })
})
