import { Ajv2020 } from 'ajv/dist/2020.js'
import { readFileSync } from 'node:fs'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, it } from 'vitest'
import { run as planRun } from '../../src/cli/commands/plan-work.js'
import { run as reviewRun } from '../../src/cli/commands/review-output.js'
import { renderJson, type Report, type ReportContext } from '../../src/report/index.js'
import { renderText } from '../../src/cli/output/text.js'
import { FILE_STYLE } from '../../src/cli/output/style.js'
import type { CommandContext, CommandOutcome } from '../../src/cli/subcommand.js'
import { tape, tapeAtMost } from '../../src/fieldwork/work-plan/plan-facts.js'
import type { WorkPlanValues } from '../../src/fieldwork/index.js'
import { loadProject } from '../../src/project/index.js'
import { StageError } from '../../src/worksheet/index.js'

const path = (name: string): string => new URL(`../../examples/${name}`, import.meta.url).pathname
const SCHEMA: object = JSON.parse(
  readFileSync(new URL('../../schemas/result.schema.json', import.meta.url), 'utf8'),
) as object
const around: ReportContext = {
  tool: 'gablewatt 0.0.0',
  project: { title: 't', digest: 'd' },
  locate: () => undefined,
  showWork: true,
}

function contextOf(file: string, more: readonly string[] = [], overrides: readonly string[] = []): CommandContext {
  const loaded = loadProject({ path: path(file), overrides: [...overrides] })
  return {
    args: [path(file), ...more],
    tool: 'gablewatt 0.0.0',
    project: async () => await Promise.resolve(loaded),
    earlier: async () => await Promise.resolve(undefined),
    subcommands: [],
    progress: () => undefined,
  }
}
function reportOf(outcome: CommandOutcome): Report {
  if (!('report' in outcome)) throw new Error('no report')
  return outcome.report
}
const valuesOf = (outcome: CommandOutcome): WorkPlanValues => reportOf(outcome).result.values as WorkPlanValues
const saysOf = (values: WorkPlanValues, id: string): string =>
  (values.steps.find((step) => step.id === id)?.tasks ?? []).map((task) => task.says).join('\n')

describe('a project with mounts and wiring', () => {
  it('has every step in the order of the job, inspections before what they look at is covered', async () => {
    const { steps } = valuesOf(await planRun(contextOf('lark-hollow.yaml'), {}))
    const ids = steps.map((step) => step.id)
    expect(new Set(ids).size).toBe(ids.length)
    const order = [
      'before.utility',
      'before.permit',
      'before.safety',
      'before.lock-out',
      'before.prove-dead',
      'roof.layout',
      'roof.mounts',
      'roof.rails',
      'roof.bonding',
      'roof.raceway',
      'roof.rough-inspection',
      'equipment.inverters',
      'equipment.modules',
      'equipment.terminations',
      'equipment.labels',
      'test.dead',
      'finish.final-inspection',
      'finish.permission',
      'on.tests',
      'finish.first-week',
    ]
    expect(ids.filter((id) => order.includes(id))).toEqual(order)
    expect(steps.filter((step) => step.kind === 'inspection').every((step) => step.stop !== null)).toBe(true)
  })
  it('the voltage of the module by hand, at the temperature of today', async () => {
    const values = valuesOf(await planRun(contextOf('lark-hollow.yaml'), { cellTemperature: 5 }))
    // 37.4 V (1 - 0.27 % x (5 - 25)) = 39.42 V
    expect(values.readings).toHaveLength(1)
    expect(values.readings[0]?.voc_v).toBeCloseTo(39.4196, 4)
    expect(saysOf(values, 'on.tests')).toContain('39.4 V open at 5 C cells')
    expect(values.ac_voltage).toEqual({ nominal_v: 240, low_v: 228, high_v: 252 })
  })
  it('the mounts, straps and breakers are those of the other stages', async () => {
    const values = valuesOf(await planRun(contextOf('lark-hollow.yaml'), {}))
    expect(values.mounts.length).toBeGreaterThan(10)
    const screws = values.steps.find((step) => step.id === 'roof.layout')?.quantities[0]
    expect(screws?.count).toBe(values.mounts.length)
    expect(saysOf(values, 'roof.raceway')).toMatch(/straps at .* from its start/)
    expect(saysOf(values, 'equipment.terminations')).toMatch(/breaker \d+ A/)
    expect(saysOf(values, 'equipment.labels')).toContain('RAPID SHUTDOWN')
  })
  it('a torque is the equipment file’s, or room to write down the maker’s', async () => {
    const torques = (values: WorkPlanValues): string[] =>
      values.steps.flatMap((step) => step.tasks.map((task) => task.says)).filter((says) => says.startsWith('torque of'))
    const stated = torques(valuesOf(await planRun(contextOf('lark-hollow.yaml'), {})))
    expect(stated).toContain('torque of the bolt from rail to mount: 180 lb-in (15.0 lb-ft)')
    expect(stated).toContain('torque of the clamps: 120 lb-in (10.0 lb-ft)')
    const missing = torques(valuesOf(await planRun(contextOf('harbor-point.yaml'), {})))
    expect(missing.length).toBeGreaterThan(0)
    expect(missing.some((says) => says.includes('______'))).toBe(true)
  })

  it('as Markdown with task lists, as text, and as JSON that fits its schema', async () => {
    const outcome = await planRun(contextOf('lark-hollow.yaml'), { markdown: true })
    const markdown = 'document' in outcome ? String(outcome.document) : ''
    expect(markdown).toMatch(/^- \[ \] /mu)
    expect(markdown).not.toMatch(/undefined|NaN/u)
    const report = reportOf(await planRun(contextOf('lark-hollow.yaml'), {}))
    expect(await renderText(report, around, FILE_STYLE)).toContain('STOP: ')
    const json: unknown = JSON.parse(renderJson(report, around))
    const validate = new Ajv2020({ strictTypes: false }).compile(SCHEMA)
    expect(validate(json), JSON.stringify(validate.errors)).toBe(true)
  })
  it('as PDF whose text holds every task, and whose bytes repeat', async () => {
    const bytes = async (): Promise<Uint8Array> => {
      const outcome = await planRun(contextOf('lark-hollow.yaml'), { pdf: 'plan.pdf' })
      const content = outcome.files?.[0]?.content
      if (!(content instanceof Uint8Array)) throw new Error('no PDF')
      return content
    }
    const [one, two] = [await bytes(), await bytes()]
    expect(Buffer.compare(one, two)).toBe(0)
    const pdf = await getDocument({ data: Uint8Array.from(one), useSystemFonts: true }).promise
    const words: string[] = []
    for (let number = 1; number <= pdf.numPages; number += 1) {
      const { items } = await (await pdf.getPage(number)).getTextContent()
      for (const item of items) {
        if (!('str' in item)) continue
        words.push(item.str)
        const [x, y] = [item.transform[4] as number, item.transform[5] as number]
        expect(x + item.width).toBeLessThan(612)
        expect(y).toBeGreaterThan(20)
      }
    }
    const text = words.join(' ').replaceAll(/\s+/gu, ' ')
    const { steps } = valuesOf(await planRun(contextOf('lark-hollow.yaml'), {}))
    for (const step of steps) {
      expect(text).toContain(step.title)
      for (const task of step.tasks) expect(text).toContain(task.says.replaceAll(/\s+/gu, ' ').trim())
    }
    expect(text).toContain('page 1 of')
  })
})

describe('a project that lacks mounts and wiring', () => {
  it('is planned with stops, and says what is missing', async () => {
    const report = reportOf(await planRun(contextOf('harbor-point.yaml'), { cellTemperature: 40 }))
    const values = report.result.values as WorkPlanValues
    const lacking = report.result.findings.map((finding) => finding.id)
    if (values.mounts.length === 0) {
      expect(lacking).toContain('work.space-mounts-missing')
      expect(values.steps.find((step) => step.id === 'roof.mounts')?.stop).toMatch(
        /^do not begin: space-mounts cannot run/,
      )
    }
    const south = values.readings.find((reading) => reading.what === 'string 1 of array south')
    // 9 x 37.4 V x (1 - 0.27 % x 15) = 322.97 V; one module less 287.08 V
    expect(south?.voc_v).toBeCloseTo(322.968, 2)
    expect(south?.one_module_less_v).toBeCloseTo(287.082, 2)
  })
  it('without a mount or an electrical part nothing is drilled or wired', async () => {
    const loaded = loadProject({ path: path('lark-hollow.yaml') })
    const { electrical: _electrical, structure: _structure, ...bare } = loaded.project
    const context: CommandContext = {
      ...contextOf('lark-hollow.yaml'),
      project: async () => await Promise.resolve({ ...loaded, project: bare }),
    }
    const report = reportOf(await planRun(context, {}))
    const values = report.result.values as WorkPlanValues
    expect(report.result.findings.map((finding) => finding.id)).toEqual(
      expect.arrayContaining(['work.space-mounts-missing', 'work.size-wire-missing']),
    )
    for (const id of ['roof.layout', 'roof.mounts', 'roof.rails', 'roof.raceway', 'equipment.terminations']) {
      expect(values.steps.find((step) => step.id === id)?.stop, id).toMatch(/^do not begin/)
    }
  })
  it('a module without an open-circuit voltage is refused', async () => {
    const loaded = loadProject({ path: path('lark-hollow.yaml') })
    const module = loaded.project.equipment.modules?.['m410']
    const { voc_v: _voc, ...without } = module ?? { pmax_w: 0, pmax_temp_coeff_pct_per_c: 0 }
    const project = { ...loaded.project, equipment: { ...loaded.project.equipment, modules: { m410: without } } }
    const context: CommandContext = {
      ...contextOf('lark-hollow.yaml'),
      project: async () => await Promise.resolve({ ...loaded, project }),
    }
    await expect(planRun(context, {})).rejects.toThrow(StageError)
  })
})

describe('lengths on a tape', () => {
  it('to the nearest sixteenth, limits rounded down', () => {
    expect(tape(63.5)).toBe('5 ft 3-1/2 in')
    expect(tape(0.3125)).toBe('5/16 in')
    expect(tape(48)).toBe('4 ft 0 in')
    expect(tape(11.99)).toBe('1 ft 0 in')
    expect(tapeAtMost(11.99)).toBe('11-15/16 in')
    expect(tapeAtMost(64)).toBe('5 ft 4 in')
  })
})

describe('review-output as a command', () => {
  it('reads a table, prints a course, and its JSON fits the schema', async () => {
    const table = new URL('./tables/days.csv', import.meta.url).pathname
    const report = reportOf(await reviewRun(contextOf('lark-hollow.yaml', [table]), {}))
    const text = await renderText(report, around, FILE_STYLE)
    expect(text).toContain('Percentile of what was measured')
    expect(text).toContain('* measured')
    const json: unknown = JSON.parse(renderJson(report, around))
    const validate = new Ajv2020({ strictTypes: false }).compile(SCHEMA)
    expect(validate(json), JSON.stringify(validate.errors)).toBe(true)
  })
  it('names file, line and column of a bad cell', async () => {
    const table = new URL('./tables/bad-cells.csv', import.meta.url).pathname
    await expect(reviewRun(contextOf('lark-hollow.yaml', [table]), {})).rejects.toThrow(
      /bad-cells\.csv:3:12 {2}'twelve' is no number/,
    )
  })
})
