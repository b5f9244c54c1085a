import { InvalidArgumentError, Option, type Command } from 'commander'
import { combinationsOf, compareParts, RANKS, type PartsRank } from '../../house/index.js'
import { readPriceList } from '../../materials/index.js'
import { isAcModule, LARGEST_YAML_BYTES, readNamedText, type Project } from '../../project/index.js'
import { UsageError } from '../errors.js'
import { partsPool } from '../parts-pool.js'
import { takesProject, writesReport } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'
import { partsSections, partsTable } from './parts-sections.js'

export const examples: readonly [Example, Example, Example] = [
  {
    line: 'compare-parts project.yaml --modules m410,m430 --prices prices.yaml',
    does: 'two modules in the place of the project’s own, each priced and paid back',
  },
  {
    line: 'compare-parts project.yaml --modules m410 --inverters micro366,micro400 --sizes 10,12,14 --by payback',
    does: 'inverters and sizes too, the shortest payback first',
  },
  {
    line: 'compare-parts project.yaml --storage battery10,battery13 --units 0,1,2 --json --out parts.json',
    does: 'without storage and with one or two units of two kinds, all modules of the project, for a script',
  },
]

interface Options {
  readonly modules?: readonly string[]
  readonly inverters?: readonly string[]
  readonly sizes?: readonly number[]
  readonly storage?: readonly string[]
  readonly units?: readonly number[]
  readonly prices?: string
  readonly by: PartsRank
}

export function configure(command: Command): void {
  writesReport(
    takesProject(command)
      .option('--modules <ids>', 'modules to try, parted by commas; all of the project when missing', idsOf)
      .option('--inverters <ids>', 'inverters to try; the project keeps its own when missing', idsOf)
      .option('--sizes <numbers>', 'numbers of modules to try, where the program places them', sizesOf)
      .option('--storage <ids>', 'storage units to try; the project keeps its own when missing', idsOf)
      .option('--units <numbers>', 'how many of them, 0 = none; one when missing', unitsOf)
      .option('--prices <prices.yaml>', 'price list, in place of materials.price_list')
      .addOption(
        new Option('--by <what>', 'what comes first: net present value, payback, energy or price')
          .choices([...RANKS])
          .default('npv'),
      ),
  )
}

function idsOf(text: string): readonly string[] {
  const ids = text.split(',').map((id) => id.trim())
  if (ids.some((id) => id === '')) throw new InvalidArgumentError('Part the ids by single commas: m410,m430.')
  return [...new Set(ids)]
}

function sizesOf(text: string): readonly number[] {
  const words = text.split(',').map((word) => word.trim())
  if (!words.every((word) => /^\d{1,3}$/u.test(word) && Number(word) > 0)) {
    throw new InvalidArgumentError('It must be whole numbers from 1 to 999 parted by commas: 10,12,14.')
  }
  return [...new Set(words.map(Number))].toSorted((a, b) => a - b)
}

function unitsOf(text: string): readonly number[] {
  const words = text.split(',').map((word) => word.trim())
  if (!words.every((word) => /^(\d|1\d|20)$/u.test(word))) {
    throw new InvalidArgumentError('It must be whole numbers from 0 to 20 parted by commas: 0,1,2.')
  }
  return [...new Set(words.map(Number))].toSorted((a, b) => a - b)
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const stated = await (context.asStated ?? context.project)()
  const prices = pricesOf(stated, options.prices)
  const wishes = {
    modules: options.modules ?? Object.keys(stated.project.equipment.modules ?? {}),
    inverters: options.inverters ?? [],
    sizes: options.sizes ?? [],
    storage: options.storage ?? [],
    units: options.units ?? [],
  }
  const tryAll = partsPool(combinationsOf(wishes).length)
  const result = await compareParts(stated, {
    ...wishes,
    ...(tryAll === undefined ? {} : { tryAll }),
    by: options.by,
    prices,
    progress: (done, of) => {
      context.progress(`trying ${String(done + 1)} of ${String(of)}`)
    },
  })
  return {
    report: {
      title: `Parts compared: ${stated.project.title}`,
      stage: 'parts',
      sections: partsSections(result.values, ownParts(stated.project)),
      csv: partsTable(result.values, 'all'),
      result,
      cautions: ['estimate', 'money'],
      next: `gablewatt price-bom ${context.args[0] ?? 'project.yaml'}`,
    },
  }
}

/** The price list of the option, else that of the project. */
function pricesOf(
  { project, files }: { readonly project: Project; readonly files: ReadonlyMap<string, string> },
  path: string | undefined,
): Parameters<typeof compareParts>[1]['prices'] {
  const name = path ?? project.materials?.price_list
  const text = path === undefined ? files.get(name ?? '') : readNamedText(path, LARGEST_YAML_BYTES)
  if (name === undefined || text === undefined) {
    throw new UsageError('no price list: name one with --prices, or as materials.price_list in the project')
  }
  return { name, text, list: readPriceList(name, text) }
}

/** What the project has itself, for a mark. */
function ownParts({ arrays, inverter_units: units = {}, storage }: Project): ReadonlySet<string> {
  const ids = Object.values(arrays).flatMap(({ module, inverter }) => [module, inverter ?? ''])
  const strings = Object.values(units).map(({ inverter }) => inverter)
  return new Set([...ids, ...strings, storage?.unit ?? ''].filter((id) => id !== '' && !isAcModule(id)))
}
