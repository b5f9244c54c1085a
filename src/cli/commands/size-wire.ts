import type { Command } from 'commander'
import {
  compareEditions,
  editionConsequences,
  wiringContext,
  type EditionComparison,
  type EditionConsequence,
  type WiringValues,
} from '../../electrical/index.js'
import type { Project } from '../../project/index.js'
import type { Result, Worksheet } from '../../worksheet/index.js'
import { UsageError } from '../errors.js'
import { type Report, STAGE_CAUTIONS } from '../../report/index.js'
import { houseOf } from '../house-of.js'
import { takesProject, usesEarlier, writesReport } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'
import { own } from '../../values/index.js'
import { comparisonSections, consequenceTable } from './edition-sections.js'
import { circuitTable, wiringSections } from './wiring-sections.js'

export const examples: readonly [Example, Example, Example] = [
  { line: 'size-wire project.yaml', does: 'conductors, raceways, breakers, grounds, and what the panel allows' },
  {
    line: 'size-wire project.yaml --codes "NEC 2014,NEC 2023"',
    does: 'editions side by side: what changes for this project',
  },
  { line: 'size-wire project.yaml --show-work', does: 'every step in the order in which an inspector checks it' },
]

interface Options {
  readonly codes?: string
  readonly withRules?: boolean
  readonly showWork?: boolean
}

export function configure(command: Command): void {
  usesEarlier(
    writesReport(
      takesProject(command)
        .option(
          '--codes <editions>',
          'code editions to use instead of codes.electrical; two or more are set side by side, e.g. "NEC 2014,NEC 2023"',
        )
        .option(
          '--with-rules',
          'beside two or more editions: every value and section that differs, also where it changes nothing (so does --show-work)',
        ),
    ),
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const { project } = await context.project()
  const editions = editionsOf(options.codes)
  if (editions !== undefined && editions.length > 1) {
    const { wiring, climate } = wiringContext(project)
    const comparison = compareEditions(project, editions, wiring)
    // The labels bring the drawings with them, which nothing else here needs.
    const { labelTraits } = await import('./edition-labels.js')
    const consequences = editionConsequences(comparison.results, labelTraits(project, comparison.results))
    const withRules = options.withRules === true || options.showWork === true
    return { report: comparisonReport(project, comparison, consequences, { climate, withRules }) }
  }
  const [edition] = editions ?? []
  const house = await houseOf(context, edition === undefined ? ['wire'] : [], { edition })
  const report = reportOf(project, await house.wire())
  if (edition === undefined || edition === project.codes?.electrical) return { report }
  return { report: { ...report, inPlaceOfProject: [`--codes ${edition}`] } }
}

/** The proof of the design temperatures before that of the wiring. */
function withProof(climate: Worksheet, result: Result<WiringValues>): Result<WiringValues> {
  climate.include(result)
  return climate.result(result.values)
}

function editionsOf(text: string | undefined): string[] | undefined {
  if (text === undefined) return undefined
  const editions = text.split(',').map((name) => name.trim())
  if (editions.some((name) => name === ''))
    throw new UsageError('--codes wants editions with commas between: "NEC 2014,NEC 2023"')
  return editions
}

function reportOf(project: Project, result: Result<WiringValues>): Report {
  return {
    title: `Wiring: ${project.title}`,
    stage: 'wire',
    sections: wiringSections(result.values),
    csv: circuitTable(result.values),
    result,
    cautions: STAGE_CAUTIONS.wire,
  }
}

function comparisonReport(
  project: Project,
  comparison: EditionComparison,
  consequences: readonly EditionConsequence[],
  { climate, withRules }: { readonly climate: Worksheet; readonly withRules: boolean },
): Report {
  const { editions } = comparison
  const last = own(comparison.results, editions.at(-1))
  if (last === undefined) throw new Error('a comparison without a result')
  const { findings, assumptions } = withProof(climate, last)
  return {
    title: `Wiring by ${editions.join(', ')}: ${project.title}`,
    stage: 'wire-comparison',
    sections: comparisonSections(comparison, consequences, withRules),
    csv: consequenceTable(editions, consequences),
    result: {
      values: {
        editions,
        consequences,
        differences: comparison.differences,
        differing_findings: comparison.findings,
        results: Object.fromEntries(
          Object.entries(comparison.results).map(([edition, { values }]) => [edition, values]),
        ),
      },
      // The findings of the last edition named; those that differ stand in the table.
      findings,
      assumptions,
      worksheet: last.worksheet,
    },
    cautions: STAGE_CAUTIONS.wire,
  }
}
