import type { Command } from 'commander'
import {
  blankPriceList,
  compareBills,
  priceBom,
  readPriceList,
  shoppingList,
  type BomValues,
  type PriceList,
} from '../../materials/index.js'
import { LARGEST_YAML_BYTES, readNamedText } from '../../project/index.js'
import type { Result } from '../../worksheet/index.js'
import { type Report, STAGE_CAUTIONS } from '../../report/index.js'
import { houseOf } from '../house-of.js'
import { takesProject, usesEarlier, writesReport } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'
import { billSections, comparisonTable } from './bom-sections.js'

export const examples: readonly [Example, Example, Example] = [
  { line: 'price-bom project.yaml', does: 'what to buy in whole packs, what it costs, and how to cut the rails' },
  { line: 'price-bom project.yaml --csv --out shopping.csv', does: 'a shopping list' },
  { line: 'price-bom project.yaml --compare other-list.yaml', does: 'two suppliers side by side' },
]

interface Options {
  readonly compare?: string
  readonly blankList?: string
}

export function configure(command: Command): void {
  usesEarlier(
    writesReport(
      takesProject(command)
        .option('--compare <prices.yaml>', 'also price the job with another list, side by side')
        .option('--blank-list <file>', 'also write a price list of all items, to fill in'),
    ),
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const { project } = await context.project()
  const house = await houseOf(context, ['mounts', 'wire'])
  // What is wrong with a list is told before the work.
  await house.prices()
  const other = options.compare === undefined ? undefined : readOther(options.compare)
  const result = await house.bom()
  const second = other === undefined ? undefined : priceBom({ ...(await house.takeOff()), prices: other })
  const report = reportOf(project.title, result, second)
  if (options.blankList === undefined) return { report }
  return { report, files: [{ path: options.blankList, content: blankPriceList(result.values) }] }
}

function readOther(path: string): PriceList {
  return readPriceList(path, readNamedText(path, LARGEST_YAML_BYTES))
}

function reportOf(title: string, result: Result<BomValues>, second: Result<BomValues> | undefined): Report {
  const base = {
    title: `Bill of materials: ${title}`,
    stage: 'bom',
    cautions: STAGE_CAUTIONS.bom,
  } satisfies Partial<Report>
  if (second === undefined)
    return { ...base, sections: billSections(result.values), csv: shoppingList(result.values), result }
  const comparison = compareBills(result.values, second.values)
  const table = comparisonTable(comparison)
  return {
    ...base,
    sections: [...table, ...billSections(result.values)],
    result: {
      ...result,
      values: { ...result.values, comparison: { ...comparison, other: second.values } },
      findings: [
        ...result.findings,
        // What only the second list gives rise to.
        ...second.findings
          .filter(
            (finding) =>
              finding.id.startsWith('materials.') &&
              !result.findings.some((own) => own.id === finding.id && own.message === finding.message),
          )
          .map((finding) => ({ ...finding, message: `${comparison.second}: ${finding.message}`, where: '' })),
      ],
    },
  }
}
