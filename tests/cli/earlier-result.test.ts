import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { makeContext } from '../../src/cli/context.js'
import { explainFailure } from '../../src/cli/failure.js'
import { renderJson, type Report } from '../../src/cli/output/index.js'
import { FileError, UsageError } from '../../src/cli/errors.js'
import { loadProject, ProjectError, startingFile } from '../../src/project/index.js'
import { StageError, Worksheet } from '../../src/worksheet/index.js'
import { ensureBuilt, gablewatt, ROOT } from './binary.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-earlier-'))
const project = join(folder, 'project.yaml')
const tool = 'gablewatt 9.9.9'

beforeAll(() => {
  ensureBuilt()
  writeFileSync(project, startingFile())
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
  sheet.assume({ path: 'losses.mismatch_pct', value: 1, unit: '%', why: 'not stated', source: stated })
  return { title: 'Trial', stage, sections: [], result: sheet.result({ annual_kwh: 1 / 3, months: [1, 2], name: 'x' }) }
}

function resultFile(name: string, stage: string, change: (text: string) => string = (text) => text): string {
  const { digest, project: data } = loadProject({ path: project })
  const around = { tool, project: { title: data.title, digest }, locate: () => undefined, showWork: false }
  const path = join(folder, name)
  writeFileSync(path, change(renderJson(trialReport(stage), around)))
  return path
}

const earlier = (use: string[], stage: string, set: string[] = []): Promise<unknown> =>
  makeContext([project], tool, { color: false, use, set }).earlier(stage)

describe('--use', () => {
  test('hands back the result of the stage that is asked for', async () => {
    const files = [resultFile('yield.json', 'yield'), resultFile('wire.json', 'wire')]
    const { result } = trialReport('yield')
    expect(await earlier(files, 'yield')).toEqual({
      ...result,
      values: { annual_kwh: 0.3333333333, months: [1, 2], name: 'x' },
    })
    expect(await earlier(files, 'price')).toBeUndefined()
    expect(await earlier([], 'yield')).toBeUndefined()
  })

  test.each<[string, (text: string) => string, string]>([
    ['not JSON', () => 'format: gablewatt/1', 'the file is not JSON'],
    ['other JSON', () => '{"a":1}', 'the file is no result'],
    [
      'an older format',
      (text) => text.replace('gablewatt-result/1', 'gablewatt-result/0'),
      "its format is 'gablewatt-result/0'",
    ],
    ['another version', (text) => text.replace(tool, 'gablewatt 9.9.8'), 'it was made by gablewatt 9.9.8'],
    ['another project', (text) => text.replace(/"digest": "./u, '"digest": "x'), 'it was made from another project'],
    [
      'no project',
      (text) => text.replace(/"project": \{[^}]+\}/u, '"project": null'),
      'it was made from another project',
    ],
    ['a damaged file', (text) => text.replace('"values"', '"value"'), 'the file is a damaged result'],
  ])('refuses %s', async (_name, change, message) => {
    const path = resultFile('changed.json', 'yield', change)
    await expect(earlier([path], 'yield')).rejects.toThrow(UsageError)
    await expect(earlier([path], 'yield')).rejects.toThrow(`--use ${path}: ${message}`)
  })

  test('refuses a result from before a --set', async () => {
    await expect(earlier([resultFile('a.json', 'yield')], 'yield', ['arrays.south.modules=3'])).rejects.toThrow(
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
    const { stdout } = await gablewatt([...args, '--json'])
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
    const { exitCode, text } = explainFailure(error, loaded)
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
