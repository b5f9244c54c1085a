import { describe, expect, it } from 'vitest'
import { run } from '../../src/cli/commands/size-wire.js'
import { streamStyle } from '../../src/cli/output/style.js'
import { renderText } from '../../src/cli/output/text.js'
import { displayWidth } from '../../src/cli/output/wrap.js'
import type { CommandContext } from '../../src/cli/subcommand.js'
import { loadProject } from '../../src/project/index.js'
import { renderCsv, renderJson, type Report, type ReportContext } from '../../src/report/index.js'

const around: ReportContext = { tool: 'gablewatt 0.0.0', project: undefined, locate: () => undefined, showWork: false }

async function compared(codes: string, options: { withRules?: boolean; showWork?: boolean } = {}): Promise<Report> {
  const loaded = loadProject({ path: new URL('../../examples/lark-hollow.yaml', import.meta.url).pathname })
  const context: CommandContext = {
    args: [],
    tool: 'gablewatt 0.0.0',
    project: () => Promise.resolve(loaded),
    earlier: () => Promise.resolve(undefined),
    subcommands: [],
    progress: () => undefined,
  }
  const outcome = await run(context, { codes, ...options })
  if (!('report' in outcome)) throw new Error('no report')
  return outcome.report
}

const textOf = async (report: Report, columns: number): Promise<string> =>
  renderText(report, around, await streamStyle({ isTTY: false, columns }, {}, false))
/** Rows of the first table as cells. */
const rowsOf = (report: Report): string[][] => {
  const [first] = report.sections
  if (first?.kind !== 'table') throw new Error('no table')
  return first.rows.map((row) => row.map((cell) => String(typeof cell === 'object' ? cell?.value : cell)))
}

describe('size-wire --codes: what changes for the person comes first', () => {
  it('each thing with both values; labels by their first words', async () => {
    const rows = rowsOf(await compared('NEC 2014,NEC 2023'))
    expect(rows).toContainEqual([
      'error: array electrode',
      'array_electrode',
      'this edition asks for a grounding electrode at the array and the project has none',
      '-',
    ])
    expect(rows).toContainEqual(['grounding electrode', 'array', 'required', 'not required'])
    expect(rows).toContainEqual(['rapid shutdown inside the boundary, at each module', 'array', 'no rule', '80 V'])
    expect(rows).toContainEqual([
      'rapid shutdown beyond the boundary',
      'array',
      '30 V and 240 VA in 10 s',
      '30 V in 30 s',
    ])
    expect(rows).toContainEqual(['label RSD_SWITCH', 'pv disconnect', '-', 'RAPID SHUTDOWN SWITCH FOR SOLAR PV SYSTEM'])
    expect(rows).toContainEqual([
      'label RSD_PLACARD',
      'main panel',
      'PHOTOVOLTAIC SYSTEM EQUIPPED WITH RAPID SHUTDOWN',
      'SOLAR PV SYSTEM IS EQUIPPED WITH RAPID SHUTDOWN.',
    ])
    expect(rows.find(([what]) => what === 'label AC_POI')?.slice(3)).toEqual(['-'])
    // Errors stand before labels, labels before the limits of the shutdown.
    const at = (start: string): number => rows.findIndex(([what]) => what?.startsWith(start))
    expect([at('error'), at('grounding'), at('label'), at('rapid')]).toEqual(
      [at('error'), at('grounding'), at('label'), at('rapid')].toSorted((a, b) => a - b),
    )
  })

  it('rules and sections only on request', async () => {
    const headings = (report: Report): (string | undefined)[] => report.sections.map(({ heading }) => heading)
    const plain = await compared('NEC 2014,NEC 2023')
    expect(headings(plain)).toEqual(['What changes for this project', undefined])
    expect(await textOf(plain, 140)).toMatch(
      /\d+ values, sections and texts of rules differ; --with-rules lists them\./,
    )
    expect(await textOf(plain, 140)).not.toContain('705.12(D)')
    for (const options of [{ withRules: true }, { showWork: true }]) {
      const report = await compared('NEC 2014,NEC 2023', options)
      expect(headings(report)).toEqual([
        'What changes for this project',
        'Values and sections that differ',
        'Findings that not every edition has',
      ])
      expect(await textOf(report, 140)).toContain('705.12(D)(2)(3)(b)')
    }
  })

  it.each([80, 140])('fits %i columns, with three editions too', async (columns) => {
    for (const codes of ['NEC 2014,NEC 2023', 'NEC 2014,NEC 2017,NEC 2026']) {
      const lines = (await textOf(await compared(codes), columns)).split('\n')
      expect(Math.max(...lines.map(displayWidth))).toBeLessThanOrEqual(columns)
      expect(lines.join(' ').replaceAll(/ +/gu, ' ')).toMatch(/grounding (?:electrode|array required)/)
      const head = lines.find((line) => line.startsWith('What  '))
      for (const edition of codes.split(',')) expect(head).toContain(edition)
    }
  })

  it('JSON keeps its names and has the consequences; CSV has them as rows', async () => {
    const report = await compared('NEC 2014,NEC 2023')
    const { values } = JSON.parse(renderJson(report, around)) as { values: Record<string, unknown> }
    expect(Object.keys(values)).toEqual(['editions', 'consequences', 'differences', 'differing_findings', 'results'])
    expect(values['consequences']).toContainEqual({
      what: 'grounding electrode',
      where: 'array',
      values: { 'NEC 2014': 'required', 'NEC 2023': 'not required' },
    })
    expect(values['consequences']).toContainEqual(
      expect.objectContaining({ what: 'error: array electrode', where: 'electrical.array_electrode' }),
    )
    if (report.csv === undefined) throw new Error('no CSV')
    expect(renderCsv(report.csv).split('\n')[0]?.trim()).toBe('what,where,nec_2014,nec_2023')
  })

  it('2026 beside 2023: only that its text was not read, as nothing else bears on this house', async () => {
    expect(rowsOf(await compared('NEC 2023,NEC 2026')).map(([what]) => what)).toEqual(['warning: edition secondary'])
  })

  it('the same edition twice changes nothing', async () => {
    const report = await compared('NEC 2023,NEC 2023')
    expect(report.sections[0]?.heading).toBe('Nothing changes for this project between NEC 2023')
  })
})
