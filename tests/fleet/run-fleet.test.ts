import { spawn, spawnSync } from 'node:child_process'
import {
  existsSync,
  lstatSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { execa } from 'execa'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { pagesOf } from '../drawings/pdf-text.js'
import { BINARY, ensureBuilt, ROOT, gablewattWarm } from '../cli/binary.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-fleet-'))
const fleet = join(ROOT, 'examples/fleet')
const template = join(fleet, 'template.yaml')
const customers = join(fleet, 'customers.csv')
const rows = readFileSync(customers, 'utf8').trim().split('\r\n').slice(1)
const put = (name: string, text: string): string => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}
/** In one thread, which starts three times as fast, unless the test says how many workers. */
const run = (args: readonly string[]) =>
  gablewattWarm(['run-fleet', ...args, ...(args.includes('--jobs') ? [] : ['--jobs', '1'])], { cwd: folder })
const linesOf = (text: string): { name: string; status: string; stages: Record<string, Record<string, unknown>> }[] =>
  text
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as never)
const journals = (): string[] => readdirSync(folder).filter((name) => name.endsWith('.journal'))

beforeAll(ensureBuilt, 90_000)
afterAll(() => rmSync(folder, { recursive: true }))

describe('a template and a table', () => {
  test('workers, one thread and shards give the same lines in the order of the table', async () => {
    const common = [template, '--table', customers, '--jsonl', '--stages', 'yield,wire']
    const [one, three, ...parts] = await Promise.all([
      run([...common, '--jobs', '1']),
      run([...common, '--jobs', '3']),
      ...[1, 2, 3].map((part) => run([...common, '--shard', `${part}/3`])),
    ])
    expect(one).toMatchObject({ exitCode: 0, stderr: '' })
    expect(linesOf(one.stdout).map(({ name }) => name)).toEqual(rows.map((row) => row.split(',')[0]))
    expect(three.stdout).toBe(one.stdout)
    expect(parts.map(({ stdout }) => stdout).join('')).toBe(one.stdout)
    expect(journals()).toEqual([])
  })

  test('more shards than houses leave some empty', async () => {
    const table = put('two.csv', 'id\na\nb\n')
    const parts = await Promise.all(
      [1, 2, 3].map((part) =>
        run([template, '--table', table, '--stages', 'yield', '--shard', `${part}/3`, '--jsonl']),
      ),
    )
    expect(parts.map(({ exitCode, stdout }) => [exitCode, linesOf(stdout).map(({ name }) => name)])).toEqual([
      [0, []],
      [0, ['a']],
      [0, ['b']],
    ])
    expect(await run([template, '--table', table, '--shard', '1/3'])).toMatchObject({ exitCode: 0 })
  })

  test('a bad row is told with the place of its cell and its key; the rest goes on', async () => {
    const table = put(
      'bad.csv',
      'id,site.latitude_deg,roof_planes.main.azimuth_deg,arrays.main.modules\nh1,38,,10\nh2,north,,10\nh3,38,180 deg,10\nh4,38,,"12"\nh5,38\n',
    )
    const result = await run([template, '--table', table, '--jsonl', '--stages', 'yield', '--jobs', '2'])
    expect(result.exitCode).toBe(2)
    expect(linesOf(result.stdout).map(({ name, status }) => [name, status])).toEqual([
      ['h1', 'ok'],
      ['h2', 'invalid'],
      ['h3', 'invalid'],
      ['h4', 'ok'],
      ['row-5', 'invalid'],
    ])
    expect(result.stderr).toMatch(/bad\.csv:3:4: h2: site\.latitude_deg: /u)
    expect(result.stderr).toMatch(/bad\.csv:4:7: h3: roof_planes\.main\.azimuth_deg: .*number/u)
    expect(result.stderr).toMatch(/bad\.csv:6:4: row-5: .*the row has 2 cells, the headings are 4/u)
    expect(result.stderr).toContain('3 of 5 projects could not be worked out')
  })

  test('headings that are no paths are told once, all of them, and nothing runs', async () => {
    const table = put('headings.csv', 'id,site.latitud_deg,titel\nh1,38,x\nh2,39,y\n')
    const result = await run([template, '--table', table, '--jsonl', '--stages', 'yield'])
    expect(result).toMatchObject({ exitCode: 2, stdout: '' })
    expect(result.stderr.trim().split('\n')).toEqual([
      expect.stringMatching(/^error: .*headings\.csv:1:4: .*'site\.latitud_deg'.*latitude_deg/u),
      expect.stringMatching(/^error: .*headings\.csv:1:21: .*'titel'.*title/u),
    ])
  })

  test('an error finding names the cell that causes it, and gives 1', async () => {
    const table = put('tight.csv', 'id,electrical.panel.bus_a\nwide,200\ntight,100\n')
    const result = await run([template, '--table', table, '--csv', '--stages', 'wire'])
    expect(result.exitCode).toBe(1)
    expect(result.stderr).toMatch(/^error: .*tight/mu)
    expect(result.stdout).toMatch(
      /^project,title,customer\.name,customer\.phone,status,.*errors,warnings\r\nwide,[^\r]*,ok,[^\r]*\r\ntight,[^\r]*,failed,/u,
    )
  })

  test('--fail-fast stops at the first that fails, in the order of the table', async () => {
    const table = put('stop.csv', 'id,site.latitude_deg\na,38\nb,39\nc,x\nd,40\ne,41\nf,42\ng,43\nh,44\ni,45\n')
    const result = await run([template, '--table', table, '--jsonl', '--stages', 'yield', '--fail-fast', '--jobs', '2'])
    expect(result.exitCode).toBe(2)
    expect(linesOf(result.stdout).map(({ name }) => name)).toEqual(['a', 'b', 'c'])
    for (const name of journals()) rmSync(join(folder, name))
  })

  test.each([
    [[template, '--table', customers, '--stages', 'yeld'], "there is no 'yeld'"],
    [[template, template, '--table', customers], '--table goes with one template'],
    [[template, '--shard', '3/2'], '--shard 3/2'],
    [[template, '--write', 'packet'], '--write goes with --out-dir'],
    [[template, '--jsonl', '--csv'], 'cannot be used with'],
    [[template, '--baseline', 'none.json', '--tolerance', '1'], 'write a percentage'],
  ])('%j is wrong usage', async (args, message) => {
    const result = await run(args)
    expect({ exitCode: result.exitCode, stdout: result.stdout }).toEqual({ exitCode: 2, stdout: '' })
    expect(result.stderr).toContain(message)
  })

  test.each([
    [['none.yaml']],
    [['none.yaml', '--table', customers]],
    [[template, '--table', 'none.csv']],
    [[template, '--baseline', 'none.json']],
  ])('%j cannot be read', async (args) => {
    const result = await run(args)
    expect(result.exitCode).toBe(3)
    expect(result.stderr).toMatch(/cannot read .*none/u)
  })
})

describe('an interrupted run', () => {
  const header = 'id,site.latitude_deg,site.longitude_deg'
  const many = Array.from({ length: 30 }, (_, i) => `h${i},${(33 + i / 5).toFixed(1)},-95`)
  const common = [template, '--jsonl', '--stages', 'yield', '--jobs', '2', '--out']
  const leftOver = (): string[] => readdirSync(folder).filter((name) => name.endsWith('.tmp'))

  test('killed with -9 in the middle, it loses nothing finished and repeats nothing', async () => {
    const table = put('many.csv', [header, ...many, ''].join('\n'))
    await run([...common, 'whole.jsonl', '--table', table])
    const journal = join(folder, '.killed.jsonl.journal')
    const child = spawn(process.execPath, [BINARY, 'run-fleet', ...common, 'killed.jsonl', '--table', table], {
      cwd: folder,
    })
    const finished = (): string[] => (existsSync(journal) ? readFileSync(journal, 'utf8').split('\n').slice(0, -1) : [])
    while (finished().length < 4 && child.exitCode === null) await new Promise((resolve) => setTimeout(resolve, 5))
    child.kill('SIGKILL')
    await new Promise((resolve) => child.once('exit', resolve))
    const before = finished()
    expect(before.length).toBeGreaterThanOrEqual(4)
    expect(before.length).toBeLessThan(many.length)
    expect(existsSync(join(folder, 'killed.jsonl'))).toBe(false)
    expect(leftOver().length).toBe(1)

    // Stopped a second time at a bad row, the journal shows what the second run worked out.
    const stopped = [header, ...many, 'bad,x,-95', ''].join('\n')
    writeFileSync(table, stopped)
    const second = await run([...common, 'killed.jsonl', '--table', table, '--resume', '--fail-fast'])
    expect(second.exitCode).toBe(2)
    expect(existsSync(journal)).toBe(false)
    expect(leftOver()).toEqual([])
    // Of another fleet, as it has one row more; each house is what it was.
    const houses = (name: string): object[] =>
      linesOf(readFileSync(join(folder, name), 'utf8'))
        .slice(0, many.length)
        .map((line) => ({ ...line, fleet: 0, seal: 0 }))
    expect(houses('killed.jsonl')).toEqual(houses('whole.jsonl'))
  }, 120_000)

  test('what is done is taken from the journal and not worked out again', async () => {
    const few = put('few.csv', [header, ...many.slice(0, 6), 'bad,x,-95', ...many.slice(6, 12), ''].join('\n'))
    const first = await run([
      template,
      '--stages',
      'yield',
      '--jobs',
      '1',
      '--table',
      few,
      '--fail-fast',
      '--journal',
      'few.journal',
      '--csv',
    ])
    expect(first.exitCode).toBe(2)
    const noted = readFileSync(join(folder, 'few.journal'), 'utf8')
    expect(noted.split('\n').length - 1).toBe(6)
    const second = await run([
      template,
      '--stages',
      'yield',
      '--jobs',
      '1',
      '--table',
      few,
      '--fail-fast',
      '--journal',
      'few.journal',
      '--resume',
    ])
    expect(second.stdout).toMatch(/Taken from the interrupted run +6/u)
    expect(readFileSync(join(folder, 'few.journal'), 'utf8')).toBe(noted)
    const other = await run([
      template,
      '--stages',
      'wire',
      '--jobs',
      '1',
      '--table',
      few,
      '--fail-fast',
      '--journal',
      'few.journal',
      '--resume',
    ])
    expect(other.stdout).not.toContain('interrupted run')
    const anew = await run([template, '--stages', 'yield', '--table', few, '--journal', 'few.journal', '--csv'])
    expect(anew.stderr).toContain('begun anew; --resume would have kept')
    expect(existsSync(join(folder, 'few.journal'))).toBe(false)
  })
})

test('a damaged journal is told, and never delivered', async () => {
  const few = put('told.csv', 'id,site.latitude_deg\na,38\nb,39\nbad,x\nc,40\n')
  const args = [
    template,
    '--stages',
    'yield',
    '--table',
    few,
    '--fail-fast',
    '--journal',
    'told.journal',
    '--jsonl',
    '--jobs',
    '1',
  ]
  const first = await run(args)
  expect(first.exitCode).toBe(2)
  const path = join(folder, 'told.journal')
  const noted = readFileSync(path, 'utf8')
  writeFileSync(path, noted.replace(/"annual\.ac_kwh":[\d.]+/u, '"annual.ac_kwh":99999'))
  const second = await run([...args, '--resume'])
  expect(second).toMatchObject({ exitCode: 2, stdout: first.stdout })
  expect(second.stderr).toContain('told.journal: line 1 is not as written; what it held is worked out again\n')
  const other = await run([template, '--stages', 'yield', '--table', few, '--journal', few, '--jsonl'])
  expect(other).toMatchObject({ exitCode: 2, stdout: '' })
  expect(other.stderr).toContain('told.csv is no journal of run-fleet')
  expect(readFileSync(few, 'utf8')).toContain('bad,x')
})

describe('output', () => {
  test('the summary as JSON is a result like any other', async () => {
    const table = put('json.csv', 'id,site.latitude_deg\na,38\nb,x\n')
    const { exitCode, stdout } = await run([template, '--table', table, '--stages', 'yield', '--json'])
    expect(exitCode).toBe(2)
    const validate = new Ajv2020({ strict: false }).compile(
      JSON.parse(readFileSync(join(ROOT, 'schemas/result.schema.json'), 'utf8')) as object,
    )
    const result = JSON.parse(stdout) as { values: { counts: object } }
    expect(validate(result), JSON.stringify(validate.errors)).toBe(true)
    expect(result.values.counts).toEqual({ projects: 2, ok: 1, failed: 0, not_usable: 1, not_run: 0 })
  })

  test('every line follows schemas/fleet-line.schema.json, whatever became of the project', async () => {
    const table = put(
      'lines.csv',
      'id,site.latitude_deg,electrical.panel.bus_a,equipment.file\na,38,,\nb,x,,\nc,38,60,\n../d,38,,\ne,38,,nowhere.yaml\n',
    )
    const rowsOf = await run([template, '--table', table, '--jsonl', '--out-dir', 'lines'])
    const samples = await run([fleet, '--jsonl'])
    const lines = [rowsOf, samples].flatMap(({ stdout }) => linesOf(stdout))
    expect(lines.length).toBeGreaterThan(30)
    expect(new Set(lines.map(({ status }) => status))).toEqual(new Set(['ok', 'failed', 'invalid', 'unreadable']))
    const validate = new Ajv2020({ strict: false }).compile(
      JSON.parse(readFileSync(join(ROOT, 'schemas/fleet-line.schema.json'), 'utf8')) as object,
    )
    for (const line of lines) expect(validate(line), `${line.name}: ${JSON.stringify(validate.errors)}`).toBe(true)
  })

  test('files of a project are those of its own subcommands', async () => {
    const project = join(fleet, 'reno-dry-high.yaml')
    const result = await run([project, '--out-dir', 'houses', '--junit', 'fleet.xml'])
    expect(result.exitCode).toBe(0)
    const alone = await gablewattWarm(['estimate-yield', project, '--json'])
    expect(readFileSync(join(folder, 'houses/reno-dry-high/yield.json'), 'utf8')).toBe(alone.stdout)
    expect(readFileSync(join(folder, 'fleet.xml'), 'utf8')).toContain(
      '<testcase classname="reno-dry-high" name="yield"/>',
    )
    const again = await run([project, '--out-dir', 'houses'])
    expect(again.exitCode).toBe(3)
    expect(again.stdout).toMatch(/exists already \(EEXIST\)/u)
    expect((await run([project, '--out-dir', 'houses', '--force'])).exitCode).toBe(0)
  })

  test('a bill of materials and a packet on request', async () => {
    const project = join(fleet, 'springfield-whole-job.yaml')
    const result = await run([project, '--out-dir', 'papers', '--write', 'bom,packet', '--jobs', '1', '--jsonl'])
    expect(result.exitCode).toBe(0)
    expect(linesOf(result.stdout)[0]).toMatchObject({
      files: ['springfield-whole-job/bom.csv', 'springfield-whole-job/packet.pdf'],
    })
    expect(readFileSync(join(folder, 'papers/springfield-whole-job/packet.pdf')).subarray(0, 5).toString()).toBe(
      '%PDF-',
    )
    expect(readFileSync(join(folder, 'papers/springfield-whole-job/bom.csv'), 'utf8')).toMatch(
      /^[a-z_]+(,[a-z_]+)+\r\n/u,
    )
  }, 60_000)

  test('a house whose design fails has failed, with its figures, and its packet is a draft that says so', async () => {
    const project = join(ROOT, 'examples/lark-hollow.yaml')
    const common = [project, '--set', 'electrical.panel.bus_a=100', '--stages', 'yield,wire', '--jobs', '1', '--jsonl']
    const result = await run([...common, '--out-dir', 'failing', '--write', 'results,packet'])
    expect(result.stderr).not.toContain('defect')
    expect(result.exitCode).toBe(1)
    const [house] = linesOf(result.stdout) as unknown as [
      { findings: { id: string; message: string; severity: string }[]; problems: unknown[]; files: string[] },
    ]
    expect(house).toMatchObject({ status: 'failed', problems: [] })
    expect(linesOf((await run(common)).stdout)[0]?.stages).toEqual((house as never as { stages: object }).stages)
    expect(house.files.map((file) => file.replace(/.*\//u, ''))).toEqual(['yield.json', 'wire.json', 'packet.pdf'])
    const told = house.findings.find(({ id }) => id === 'permit.drawn-as-draft')
    expect(told?.message).toMatch(/^packet.pdf is a draft and stamped so, for .*busbar/u)
    const pages = await pagesOf(new Uint8Array(readFileSync(join(folder, 'failing/lark-hollow/packet.pdf'))))
    expect(pages.every(({ text }) => text.includes('DRAFT'))).toBe(true)
  }, 60_000)

  test('a packet that lacks what a permit needs is a draft and says so; the design does not fail for it', async () => {
    const result = await run([
      join(fleet, 'reno-dry-high.yaml'),
      '--out-dir',
      'lacking',
      '--write',
      'packet',
      '--jsonl',
    ])
    expect(result.exitCode).toBe(0)
    const [house] = linesOf(result.stdout) as unknown as [{ findings: { id: string; severity: string }[] }]
    expect(house.findings).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ id: 'permit.no-date', severity: 'warning' }),
        expect.objectContaining({ id: 'permit.drawn-as-draft', severity: 'warning' }),
      ]),
    )
  }, 60_000)

  // The letter that the rafters stand on keeps its id, title and date; its file is not there.
  const LETTER_GONE = "[{ id: rafter_letter, file: gone.pdf, title: Letter, date: '2026-02-20' }]"

  test('a document that is missing takes the packet away, not the figures', async () => {
    const project = join(fleet, 'springfield-whole-job.yaml')
    const args = ['--set', `documents=${LETTER_GONE}`, '--out-dir', 'gone', '--write', 'results,packet', '--jsonl']
    const result = await run([project, ...args])
    expect(result.exitCode).toBe(3)
    const [house] = linesOf(result.stdout) as unknown as [
      { stages: object; files: string[]; problems: { message: string }[] },
    ]
    expect(Object.keys(house.stages)).toEqual(['yield', 'wire', 'mounts', 'bom', 'payback'])
    expect(house.problems[0]?.message).toContain("cannot read document 'gone.pdf'")
    expect(house.files).toContain('springfield-whole-job/yield.json')
  }, 60_000)

  test('a device is written straight, a link keeps its place, an existing file is not replaced', async () => {
    const common = [join(fleet, 'reno-dry-high.yaml'), '--jsonl', '--out']
    const pipe = join(folder, 'pipe')
    spawnSync('mkfifo', [pipe])
    const [read, written] = await Promise.all([execa('cat', [pipe]), run([...common, pipe, '--force'])])
    expect(written.exitCode).toBe(0)
    expect(linesOf(read.stdout)).toMatchObject([{ name: 'reno-dry-high' }])
    expect(statSync(pipe).isFIFO()).toBe(true)
    put('behind.jsonl', 'old')
    symlinkSync('behind.jsonl', join(folder, 'link.jsonl'))
    expect((await run([...common, 'link.jsonl'])).exitCode).toBe(3)
    expect(readFileSync(join(folder, 'behind.jsonl'), 'utf8')).toBe('old')
    expect((await run([...common, 'link.jsonl', '--force'])).exitCode).toBe(0)
    expect(lstatSync(join(folder, 'link.jsonl')).isSymbolicLink()).toBe(true)
    expect(linesOf(readFileSync(join(folder, 'behind.jsonl'), 'utf8'))).toMatchObject([{ name: 'reno-dry-high' }])
    expect(readdirSync(folder).filter((name) => name.endsWith('.tmp'))).toEqual([])
  })

  test('names of strangers cannot run as formulas nor steer a terminal', async () => {
    const table = put('evil.csv', 'id,title\nh1,=HYPERLINK(1)\nh2,\u001B[31mred\u001B[0m\n')
    const csv = await run([template, '--table', table, '--stages', 'yield', '--csv'])
    expect(csv.stdout).toContain("h1,'=HYPERLINK(1),,,ok")
    for (const format of ['--csv', '--jsonl', '--json', '--markdown']) {
      const { stdout, exitCode } = await run([template, '--table', table, '--stages', 'yield', format])
      expect(exitCode).toBe(0)
      expect(stdout).not.toContain('\u001B')
    }
  })
})

describe('a baseline', () => {
  test('the sample projects give the figures that are committed', async () => {
    const result = await run([fleet, '--baseline', join(fleet, 'baseline.json'), '--tolerance', '0.1%'])
    expect({ exitCode: result.exitCode, moved: result.stdout.match(/^.* -> .*$/gmu) ?? [] }).toEqual({
      exitCode: 0,
      moved: [],
    })
  }, 120_000)

  test('tells what moved, in which stage, and by how much', async () => {
    const common = [template, '--table', customers, '--stages', 'yield,wire', '--baseline', 'saved.json']
    expect((await run([...common, '--update-baseline'])).exitCode).toBe(0)
    const same = await run(common)
    expect(same).toMatchObject({ exitCode: 0 })
    expect(same.stdout).toContain('No value moved.')
    const dirt = await run([...common, '--set', 'losses.dirt_pct=3', '--tolerance', '0.5%', '--json'])
    expect(dirt.exitCode).toBe(1)
    const { values } = JSON.parse(dirt.stdout) as {
      values: {
        baseline: {
          over_tolerance: number
          moves: { stage: string; project: string; key: string; change_pct: number; over_tolerance: boolean }[]
        }
      }
    }
    const { moves } = values.baseline
    expect(new Set(moves.map(({ stage }) => stage))).toEqual(new Set(['yield']))
    expect(new Set(moves.map(({ project }) => project)).size).toBe(rows.length)
    const changes = moves.filter(({ over_tolerance }) => over_tolerance).map(({ change_pct }) => Math.abs(change_pct))
    expect(changes).toEqual(changes.toSorted((a, b) => b - a))
    // Dirt of 3 % in place of 2 % takes 1/98 of the DC energy; the inverter turns that into nearly the same share of AC.
    const annual = moves.find(({ key }) => key === 'annual.ac_kwh')?.change_pct ?? 0
    expect(annual).toBeGreaterThan(-1.15)
    expect(annual).toBeLessThan(-0.95)
    expect((await run([...common, '--set', 'losses.dirt_pct=3', '--tolerance', '2%'])).exitCode).toBe(0)
  }, 60_000)

  test('one that is not as it was written is refused in one line, and --update-baseline writes it anew', async () => {
    const common = [template, '--stages', 'yield', '--baseline', 'edited.json']
    await run([...common, '--update-baseline'])
    const path = join(folder, 'edited.json')
    const whole = readFileSync(path, 'utf8')
    writeFileSync(path, whole.replace(/"annual\.ac_kwh": [\d.]+/u, '"annual.ac_kwh": 99999'))
    const refused = await run(common)
    expect(refused).toMatchObject({ exitCode: 2, stdout: '' })
    expect(refused.stderr).toMatch(/^error: edited\.json: not as it was written.*--update-baseline[^\n]*\n$/u)
    expect((await run([...common, '--update-baseline'])).exitCode).toBe(0)
    expect(readFileSync(path, 'utf8')).toBe(whole)
  })

  test('notices a house that came and one that went, once over all shards', async () => {
    const [head, ...lines] = readFileSync(customers, 'utf8').split('\r\n')
    const changed = put(
      'changed.csv',
      [head, 'new,New house (invented),37,-93,1000,180,6,10,9000,200,14000,N. New (invented),', ...lines.slice(1)].join(
        '\r\n',
      ),
    )
    const common = [template, '--stages', 'yield', '--baseline', 'houses.json']
    await run([...common, '--table', customers, '--update-baseline'])
    const parts = await Promise.all(
      [1, 2, 3].map((part) => run([...common, '--table', changed, '--shard', `${part}/3`])),
    )
    expect(parts.map(({ exitCode }) => exitCode)).toEqual([1, 0, 0])
    expect(parts[0]?.stdout).toMatch(/new +status: not there -> ok/u)
    expect(parts[0]?.stdout).toMatch(/alder +status: ok -> not there/u)
  }, 60_000)
})
