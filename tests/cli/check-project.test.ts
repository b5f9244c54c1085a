import { describe, expect, test } from 'vitest'
import type { CheckStage } from '../../src/house/index.js'
import { run } from '../../src/cli/commands/check-project.js'
import { loadProject, startingFile } from '../../src/project/index.js'
import { StageError, Worksheet, type Result } from '../../src/worksheet/index.js'

const loaded = loadProject({ path: '-', text: startingFile() })
const source = { document: 'invented for this test', standing: 'project file' } as const

function found(severity: 'error' | 'warning', id: string): Result<unknown> {
  const sheet = new Worksheet()
  sheet.find({ severity, id, message: `${id} was found`, where: 'site' })
  sheet.assume({ path: `losses.${id}`, value: 1, unit: '%', why: 'not stated', source })
  return sheet.result({})
}

function stage(name: string, act: () => Result<unknown>, applies = true): CheckStage {
  return { name, applies: () => applies, run: () => Promise.resolve().then(act) }
}

async function check(stages: readonly CheckStage[]): Promise<Result<unknown>> {
  const context = {
    args: ['-'],
    tool: 'gablewatt 0.0.0',
    project: () => Promise.resolve(loaded),
    earlier: () => Promise.resolve(undefined),
    subcommands: [],
    progress: () => undefined,
  }
  const outcome = await run(context, {}, stages)
  if (!('report' in outcome)) throw new Error('check-project hands back a report')
  return outcome.report.result
}

function refuse(): never {
  throw new StageError('site.wind_mph', 'wind speed is missing', 'ask the building department')
}

function broken(): never {
  throw new TypeError('a defect')
}

describe('check-project', () => {
  test('gathers findings and assumptions of all stages, errors first and each once', async () => {
    const stages = [
      stage('a', () => found('warning', 'one')),
      stage('b', () => found('error', 'two')),
      stage('c', () => found('warning', 'one')),
    ]
    const result = await check(stages)
    expect(result.findings.map(({ id }) => id)).toEqual(['two', 'one'])
    expect(result.assumptions.map(({ path }) => path)).toEqual(['losses.one', 'losses.two'])
    expect(result.values).toMatchObject({ ok: false, stages_run: ['a', 'b', 'c'], counts: { modules: 12 } })
  })

  test('tells of a stage that cannot run and runs the others', async () => {
    const result = await check([stage('mounts', refuse), stage('b', () => found('warning', 'one'))])
    expect(result.findings[0]).toEqual({
      severity: 'error',
      id: 'mounts.cannot-run',
      message: 'wind speed is missing',
      where: 'site.wind_mph',
      fix: 'ask the building department',
    })
    expect(result.values).toMatchObject({ ok: false, stages_run: ['b'] })
  })

  test('leaves out a stage whose parts the project does not hold, and lets a defect through', async () => {
    expect((await check([stage('a', broken, false)])).values).toMatchObject({ ok: true, stages_run: [] })
    await expect(check([stage('a', broken)])).rejects.toThrow('a defect')
  })
})
