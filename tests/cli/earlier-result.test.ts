import { createHash } from 'node:crypto'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { makeContext } from '../../src/cli/context.js'
import { explainFailure } from '../../src/cli/failure.js'
import { renderJson, type Report } from '../../src/report/index.js'
import { UsageError } from '../../src/cli/errors.js'
import { FileError } from '../../src/files/index.js'
import { loadProject, placeText, ProjectError, startingFile } from '../../src/project/index.js'
import { BUILD, canonicalJson, isWhole, sealed, sealOf } from '../../src/seal/index.js'
import { StageError, Worksheet } from '../../src/worksheet/index.js'
import { ensureBuilt, ROOT, gablewattWarm } from './binary.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-earlier-'))
const project = join(folder, 'project.yaml')
const house = join(ROOT, 'examples/lark-hollow.yaml')
const tool = 'gablewatt 9.9.9'
const own = `gablewatt ${(JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { version: string }).version}`

/** Real results of the demo house by stage, as their subcommands print them. */
const COMMANDS = {
  yield: 'estimate-yield',
  wire: 'size-wire',
  mounts: 'space-mounts',
  bom: 'price-bom',
  payback: 'payback',
}
type Stage = keyof typeof COMMANDS
const results = new Map<string, string>()

beforeAll(async () => {
  ensureBuilt()
  writeFileSync(project, startingFile())
  for (const [stage, command] of Object.entries(COMMANDS)) {
    const { stdout, stderr } = await gablewattWarm([command, house, '--json'])
    if (!stdout.startsWith('{')) throw new Error(stderr)
    // As the sources under test would have written it, which are another build than the program.
    results.set(stage, `${JSON.stringify(remade(JSON.parse(stdout) as object, { build: BUILD }), null, 2)}\n`)
  }
})
afterAll(() => rmSync(folder, { recursive: true }))

const stated = { document: 'Invented standard', edition: '2020', place: 'table 1', standing: 'from memory' } as const

function trialReport(stage: string): Report {
  const sheet = new Worksheet()
  sheet.step({
    id: 'trial.sum',
    says: 'Sum of two numbers',
    formula: 's = a + b',
    inputs: [
      { symbol: 'a', value: 1, unit: 'kWh', from: 'site.latitude_deg' },
      { symbol: 'b', value: 2, unit: 'kWh', from: 'invented table' },
    ],
    result: { symbol: 's', value: 3, unit: 'kWh' },
    check: { relation: '>=', limit: 2, pass: true },
    source: stated,
    limits: 'two numbers only',
  })
  sheet.find({
    severity: 'note',
    id: 'trial.note',
    message: 'a note',
    where: 'site',
    source: stated,
    fix: 'none needed',
  })
  sheet.assume({ path: 'losses.unequal_modules_pct', value: 1, unit: '%', why: 'not stated', source: stated })
  return { title: 'Trial', stage, sections: [], result: sheet.result({ annual_kwh: 1 / 3, months: [1, 2], name: 'x' }) }
}

const remade = (one: object, change: object): object => {
  const { seal: _, ...content } = { ...(one as { seal?: string }), ...change }
  return sealed(content)
}

type Data = Record<string, unknown> & { values: Record<string, never>; project: Record<string, unknown> }

const unchanged = (text: string): string => text

/** A change of the data with the seal that they had, or with a new one. */
const data =
  (change: (data: Data) => void, again = false) =>
  (text: string): string => {
    const { seal, ...content } = JSON.parse(text) as Data
    change(content)
    return JSON.stringify(again ? sealed(content) : { ...content, seal })
  }

function resultFile(name: string, stage: Stage, change: (text: string) => string = unchanged): string {
  const path = join(folder, name)
  writeFileSync(path, change(results.get(stage) ?? ''))
  return path
}

const earlier = (use: string[], stage: string, set: string[] = []): Promise<unknown> =>
  makeContext([house], own, { color: false, use, set }).earlier(stage)

describe('--use', () => {
  test('hands back the result of the stage that is asked for', async () => {
    const files = [resultFile('yield.json', 'yield'), resultFile('wire.json', 'wire')]
    const { values, worksheet, findings, assumptions } = JSON.parse(results.get('yield') ?? '') as Data
    expect(await earlier(files, 'yield')).toEqual({ values, worksheet, findings, assumptions })
    expect(await earlier(files, 'bom')).toBeUndefined()
    expect(await earlier([], 'yield')).toBeUndefined()
  })

  test('a file that was only laid out anew, with its keys in another order, is the same result', async () => {
    const path = resultFile('order.json', 'wire', (text) =>
      JSON.stringify(Object.fromEntries(Object.entries(JSON.parse(text) as object).toReversed()), null, 4),
    )
    expect(await earlier([path], 'wire')).toBeDefined()
  })

  const again = (stage: Stage) => `; make it again: gablewatt ${COMMANDS[stage]} ${house} --json --out `

  test.each<[string, Stage, (text: string) => string, string, string]>([
    ['not JSON', 'yield', () => 'format: gablewatt/2', 'the file is not JSON', '; make it again'],
    ['other JSON', 'yield', () => '{"a":1}', 'the file is no result', '; make it again'],
    [
      'an older format',
      'yield',
      data((one) => (one['format'] = 'gablewatt-result/1')),
      "its format is 'gablewatt-result/1', this program reads 'gablewatt-result/4'",
      again('yield'),
    ],
    [
      'another version',
      'yield',
      data((one) => (one['tool'] = 'gablewatt 9.9.8'), true),
      'it was made by gablewatt 9.9.8',
      again('yield'),
    ],
    [
      'another build of the same version',
      'yield',
      data((one) => (one['build'] = '0123456789abcdef'), true),
      'it was made by build 0123456789abcdef of gablewatt',
      again('yield'),
    ],
    [
      'another build on the file itself, without a new seal',
      'yield',
      data((one) => (one['build'] = '0123456789abcdef')),
      'the file is not as it was written',
      again('yield'),
    ],
    [
      'values of another form',
      'wire',
      data((one) => (one['schema'] = '0123456789abcdef'), true),
      "its values have another form than this program's",
      again('wire'),
    ],
    [
      'another project',
      'wire',
      data((one) => (one.project['digest'] = 'x'), true),
      'it was made from another project',
      again('wire'),
    ],
    [
      'no project',
      'wire',
      data((one) => (one.project = null as never), true),
      'it was made from another',
      again('wire'),
    ],
    [
      'a result without its values',
      'mounts',
      (text) => text.replace('"values"', '"value"'),
      "the file is a damaged result: at its top, 'values' is missing",
      again('mounts'),
    ],
    [
      'a breaker edited to 100 A',
      'wire',
      (text) => text.replace(/"breaker_a": \d+/u, '"breaker_a": 100'),
      'the file is not as it was written: its seal does not fit',
      again('wire'),
    ],
    [
      'an error taken out of the findings',
      'mounts',
      data((one) => (one['findings'] = [])),
      'the file is not as it was written: its seal does not fit',
      again('mounts'),
    ],
    [
      'a value that is missing, with a new seal',
      'wire',
      data(({ values }) => delete values['panel'], true),
      "its values are not those of a 'wire' result: at its top, 'panel' is missing",
      again('wire'),
    ],
    [
      'a value of another kind, with a new seal',
      'yield',
      data(({ values }) => Object.assign(values['annual'] ?? {}, { ac_kwh: '10725' }), true),
      "its values are not those of a 'yield' result: at /annual/ac_kwh, the value is none that can stand there",
      again('yield'),
    ],
    [
      'no values at all, with a new seal',
      'bom',
      data((one) => (one.values = {}), true),
      "its values are not those of a 'bom' result: at its top, ",
      again('bom'),
    ],
    [
      'lists nested without end',
      'wire',
      data((one) => {
        let inner: unknown = []
        for (let depth = 0; depth < 3000; depth += 1) inner = [inner]
        Object.assign(one.values, { more: inner })
      }),
      'the file is nested more than 100 levels deep',
      '; make it again',
    ],
  ])('refuses %s, says what is wrong and what to run', async (_name, stage, change, message, fix) => {
    const path = resultFile('changed.json', stage, change)
    await expect(earlier([path], stage)).rejects.toThrow(UsageError)
    await expect(earlier([path], stage)).rejects.toThrow(`--use ${path}: ${message}`)
    await expect(earlier([path], stage)).rejects.toThrow(fix)
  })

  test('--use-anyway takes what another build made, with a warning that stays; nothing else that is wrong', async () => {
    const anyway = (path: string, stage: string) =>
      makeContext([house], own, { color: false, quiet: true, use: [path], set: [], useAnyway: true }).earlier(stage)
    const other = (name: string, change: (one: Data) => void) => resultFile(name, 'wire', data(change, true))
    const taken = await anyway(
      other('other.json', (one) => (one['build'] = '0123456789abcdef')),
      'wire',
    )
    expect(taken?.findings[0]).toMatchObject({ severity: 'warning', id: 'use.other-build' })
    expect(taken?.findings[0]?.message).toContain('build 0123456789abcdef')
    for (const change of [
      (one: Data): unknown => (one['schema'] = '0123456789abcdef'),
      (one: Data): unknown => (one.project['digest'] = 'x'),
    ]) {
      await expect(anyway(other('wrong.json', change), 'wire')).rejects.toThrow(UsageError)
    }
    const path = resultFile('edited.json', 'wire', (text) => text.replace(/"breaker_a": \d+/u, '"breaker_a": 100'))
    await expect(anyway(path, 'wire')).rejects.toThrow('its seal does not fit')
  })

  test('the warning stands in what the program makes of it, and on stderr', async () => {
    const path = resultFile(
      'bom-from.json',
      'wire',
      data((one) => (one['build'] = '0123456789abcdef'), true),
    )
    const refused = await gablewattWarm(['price-bom', house, '--use', path, '--json'])
    expect(refused).toMatchObject({ exitCode: 2, stdout: '' })
    expect(refused.stderr).toContain('--use-anyway takes it with a warning; make it again: gablewatt size-wire')
    const { stdout, stderr } = await gablewattWarm(['price-bom', house, '--use', path, '--use-anyway', '--json'])
    expect(stderr).toMatch(/^warning: the stage 'wire' was not worked out anew/u)
    const { findings } = JSON.parse(stdout) as { findings: { id: string }[] }
    expect(findings.map(({ id }) => id)).toContain('use.other-build')
  })

  test('refuses a result that no subcommand takes', async () => {
    await expect(earlier([resultFile('payback.json', 'payback')], 'bom')).rejects.toThrow(
      "no subcommand takes a 'payback' result, only 'yield', 'wire', 'mounts', 'bom'; leave it out",
    )
  })

  test('with any one value of the wiring missing or of another kind, the packet is refused, and nothing is written', async () => {
    const whole = JSON.parse(results.get('wire') ?? '') as Data
    for (const key of Object.keys(whole.values)) {
      for (const value of [undefined, null, 7, 'x', []]) {
        const same = JSON.stringify(whole.values[key]) === JSON.stringify(value)
        // A text is a text, and a house may have no combiner, no strings and no load calculation; what fits the schema is
        // not refused.
        const maybe = ['combiner', 'service_load_a', 'service_load', 'fault_current'].includes(key) && value === null
        if (same || maybe || (key === 'edition' && value === 'x') || (key === 'service_load_a' && value === 7)) continue
        if (Array.isArray(value) && Array.isArray(whole.values[key])) continue
        const path = resultFile(
          'part.json',
          'wire',
          data((one) => Object.assign(one.values, { [key]: value }), true),
        )
        await expect(earlier([path], 'wire'), `${key}: ${String(value)}`).rejects.toThrow(UsageError)
      }
    }
    const edited = resultFile('wire100.json', 'wire', (text) => text.replace(/"breaker_a": \d+/u, '"breaker_a": 100'))
    const out = join(folder, 'packet.pdf')
    const { exitCode, stdout, stderr } = await gablewattWarm([
      'draw-permit',
      house,
      '--draft',
      '--use',
      edited,
      '--out',
      out,
    ])
    expect({ exitCode, stdout, written: existsSync(out) }).toEqual({ exitCode: 2, stdout: '', written: false })
    expect(stderr).toMatch(/^error: --use .*wire100\.json: the file is not as it was written/u)
    expect(stderr.trim().split('\n')).toHaveLength(1)
  })

  test.each([
    [
      'a key twice',
      (text: string) => text.replace('"annual": {', '"annual": { "ac_kwh": 99999,'),
      'JSON with a key twice in one map',
    ],
    [
      'a number beyond all',
      (text: string) => text.replace('"flag": null', '"flag": 1e999'),
      'JSON with a number beyond 1.8e308',
    ],
  ])('refuses a file with %s, which its seal does not show', async (_name, change, message) => {
    const path = resultFile('doubtful.json', 'yield', (text) => {
      const changed = change(text)
      expect(changed).not.toBe(text)
      // oxlint-disable-next-line unicorn/prefer-structured-clone -- as a reader takes it
      expect(isWhole(JSON.parse(changed) as Data)).toBe(true)
      return changed
    })
    await expect(earlier([path], 'yield')).rejects.toThrow(`--use ${path}: the file is ${message}`)
  })

  test('refuses what options made in the place of what the project states', async () => {
    const make = async (name: string, ...args: string[]): Promise<string> => {
      const path = join(folder, name)
      await gablewattWarm([...args, '--json', '--out', path, '--force'])
      return path
    }
    const other = await make('codes.json', 'size-wire', house, '--codes', 'NEC 2014')
    const refused = await gablewattWarm(['price-bom', house, '--use', other])
    expect(refused).toMatchObject({ exitCode: 2, stdout: '' })
    expect(refused.stderr).toContain('or by --codes or --rank')
    // The edition that the project states anyway is the project's.
    const same = await make('same.json', 'size-wire', house, '--codes', 'NEC 2020')
    expect((await gablewattWarm(['price-bom', house, '--use', same, '--json', '--quiet'])).exitCode).toBe(0)
    const ranked = await make('rank.json', 'space-mounts', house, '--rank', 'mounts')
    expect((await gablewattWarm(['price-bom', house, '--use', ranked])).exitCode).toBe(2)
  })

  test('a spacing that no project file states stays on what is made of it', async () => {
    const path = join(folder, 'spaced.json')
    await gablewattWarm(['space-mounts', house, '--spacing', '32', '--json', '--out', path])
    const { stdout } = await gablewattWarm(['price-bom', house, '--use', path, '--json', '--quiet'])
    const { findings } = JSON.parse(stdout) as { findings: { id: string; message: string }[] }
    expect(findings.filter(({ id }) => id === 'mounts.by-option').map(({ message }) => message)).toEqual([
      'the mounts are those of --spacing 32 in, which the project file does not state',
    ])
  })

  test('refuses a result from before a --set', async () => {
    await expect(earlier([resultFile('a.json', 'yield')], 'yield', ['losses.dirt_pct=3'])).rejects.toThrow(
      'its --set values changed',
    )
  })

  test('refuses two results of one stage, and a missing file', async () => {
    await expect(earlier([resultFile('a.json', 'yield'), resultFile('b.json', 'yield')], 'yield')).rejects.toThrow(
      "both a 'yield' result",
    )
    await expect(earlier([join(folder, 'missing.json')], 'yield')).rejects.toThrow(FileError)
  })
})

describe('a seal', () => {
  test('is SHA-256 of the data as canonical JSON, whatever the order of their keys', () => {
    // Keys sorted by UTF-16 units, no spaces, shortest numbers: RFC 8785, from memory.
    expect(canonicalJson({ b: [1.0, -0, 1e21, 0.1], a: { '\u20AC': null, A: true, '\r': 'x"\u000F' } })).toBe(
      '{"a":{"\\r":"x\\"\\u000f","A":true,"\u20AC":null},"b":[1,0,1e+21,0.1]}',
    )
    expect(canonicalJson([[], {}, { a: undefined, b: [undefined, {}] }])).toBe('[[],{},{"b":[null,{}]}]')
    // Longer than what goes into the digest at once.
    const long = { b: Array.from({ length: 30_000 }, (_, at) => at), a: '\u00e9\u{1F600}'.repeat(50_000) }
    expect(sealOf(long)).toBe(`sha256:${createHash('sha256').update(canonicalJson(long)).digest('hex')}`)
    // printf '{"a":1,"b":[]}' | sha256sum
    expect(sealOf({ b: [], a: 1 })).toBe('sha256:f87e4099e9be5e75094e0a4f46d3dc18a9c37429314a5a2490fb78d31e7e170c')
    expect(isWhole(JSON.parse(JSON.stringify(sealed({ b: 2, a: 'é\u2028' }))) as Record<string, unknown>)).toBe(true)
  })
})

describe('schemas/values', () => {
  test.each(Object.keys(COMMANDS))('%s.schema.json fits what its subcommand prints', (stage) => {
    const schema = JSON.parse(readFileSync(join(ROOT, `schemas/values/${stage}.schema.json`), 'utf8')) as object
    const validate = new Ajv2020({ strict: true, strictTypes: false, allowUnionTypes: true }).compile(schema)
    validate((JSON.parse(results.get(stage) ?? '') as Data).values)
    expect(validate.errors).toBeNull()
    expect(validate({})).toBe(false)
  })
})

describe('schemas/result.schema.json', () => {
  const schema = JSON.parse(readFileSync(join(ROOT, 'schemas/result.schema.json'), 'utf8')) as object
  const validate = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true }).compile(schema)

  test('fits a result with every kind of proof, with and without a project', () => {
    const around = { tool, project: { title: 'T', digest: 'd' }, locate: () => undefined, showWork: false }
    for (const one of [around, { ...around, project: undefined }]) {
      expect(validate(JSON.parse(renderJson(trialReport('trial'), one)))).toBe(true)
    }
  })

  test.each([
    ['list-sites', 'reno'],
    ['list-sites', 'zzzz'],
    ['check-project', project],
  ])('fits what %s %s prints', async (...args) => {
    const { stdout } = await gablewattWarm([...args, '--json'])
    validate(JSON.parse(stdout))
    expect(validate.errors).toBeNull()
  })

  test('refuses a result without proof, or with a key that it does not know', () => {
    const around = { tool, project: undefined, locate: () => undefined, showWork: false }
    const data = JSON.parse(renderJson(trialReport('trial'), around)) as Record<string, unknown>
    expect(validate({ ...data, worksheet: undefined })).toBe(false)
    expect(validate({ ...data, extra: 1 })).toBe(false)
  })
})

describe('what a person sees of an error', () => {
  test('a stage that cannot run: the place in the file, why, and the fix; exit 2', () => {
    const loaded = loadProject({ path: project })
    const error = new StageError('site.latitude_deg', 'wind speed is missing', 'ask the building department')
    const { exitCode, text } = explainFailure(error, (path) => placeText(loaded, path))
    expect(exitCode).toBe(2)
    expect(text).toMatch(
      /project\.yaml:\d+:\d+: site\.latitude_deg: wind speed is missing\n {2}fix: ask the building department\n$/u,
    )
  })

  test('an invalid project shows its line; exit 2', () => {
    let error: unknown
    try {
      loadProject({ path: '-', text: startingFile().replace('pitch_in_12', 'pich_in_12') })
    } catch (thrown) {
      error = thrown
    }
    expect(error).toBeInstanceOf(ProjectError)
    const { exitCode, text } = explainFailure(error, undefined)
    expect(exitCode).toBe(2)
    expect(text).toMatch(/^<stdin>:\d+:\d+ /u)
    expect(text).toContain('^^^')
  })

  test('a defect: one line, and the stack only when asked for; exit 70', () => {
    const quiet = explainFailure(new TypeError('x is not a function'), undefined)
    expect(quiet).toEqual({
      exitCode: 70,
      text: 'defect in gablewatt: x is not a function; run again with GABLEWATT_DEBUG=1 to see the stack\n',
    })
    process.env['GABLEWATT_DEBUG'] = '1'
    try {
      expect(explainFailure(new TypeError('x is not a function'), undefined).text).toContain('earlier-result.test.ts')
    } finally {
      delete process.env['GABLEWATT_DEBUG']
    }
  })
})
