import type { Command } from 'commander'
import { tryEquipment, type EquipmentFit, type FitTrial } from '../../house/index.js'
import {
  EQUIPMENT_GROUPS,
  EQUIPMENT_KINDS,
  LARGEST_YAML_BYTES,
  loadProject,
  readEquipment,
  readNamedText,
  type Candidate,
  type EquipmentKind,
  type LoadedProject,
} from '../../project/index.js'
import { Worksheet } from '../../worksheet/index.js'
import { UsageError } from '../errors.js'
import { readsProject, writesReport, type ProjectOptions } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'
import { csvOf, sectionsOf, valuesOf, type ListedEquipment } from './equipment-sections.js'

export const examples: readonly [Example, Example, Example] = [
  { line: 'list-equipment equipment.yaml', does: 'what a file holds' },
  { line: 'list-equipment --fits project.yaml', does: 'which of its modules and inverters a project could have' },
  {
    line: 'list-equipment suppliers/*.yaml --fits project.yaml --csv',
    does: 'the same for the files of suppliers, for a script',
  },
]

interface Options extends ProjectOptions {
  readonly fits?: string
}

export function configure(command: Command): void {
  const files = command.argument('[equipment.yaml...]', 'equipment files; those of the project when none is named')
  writesReport(
    readsProject(files.option('--fits <file>', 'try each module and inverter in this project file, and say why not')),
  )
}

export async function run({ args, progress }: CommandContext, options: Options): Promise<CommandOutcome> {
  const { fits, set, allowOutside = false } = options
  if (args.length === 0 && fits === undefined) throw new UsageError('name an equipment file, or a project with --fits')
  if (fits === undefined && set.length > 0) throw new UsageError('--set changes a project: name one with --fits')
  const loaded = fits === undefined ? undefined : loadProject({ path: fits, overrides: set, allowOutside })
  const listed = args.length === 0 && loaded !== undefined ? ofProject(loaded) : args.flatMap(ofFile)
  const trial = loaded === undefined ? undefined : await tryEquipment(loaded)
  const tried: ListedEquipment[] = []
  for (const one of listed) {
    if (trial !== undefined) progress(`trying ${one.id}`)
    tried.push(trial === undefined ? one : { ...one, fit: await fitOf(one, trial) })
  }
  const sheet = new Worksheet()
  if (trial !== undefined) tellFailing(trial, tried, sheet)
  const count = `${tried.length} ${tried.length === 1 ? 'piece' : 'pieces'}`
  return {
    report: {
      title: loaded === undefined ? `Equipment: ${count}` : `Equipment for ${loaded.project.title}: ${count}`,
      stage: 'equipment',
      sections: sectionsOf(tried),
      csv: csvOf(tried),
      result: sheet.result(valuesOf(tried, fits)),
    },
  }
}

function ofFile(file: string): ListedEquipment[] {
  return readEquipment(file, readNamedText(file, LARGEST_YAML_BYTES)).map(({ kind, id, values }) => ({
    kind,
    id,
    values,
    file,
  }))
}

function ofProject({ project, path }: LoadedProject): ListedEquipment[] {
  const groups = project.equipment as Readonly<Record<string, Readonly<Record<string, object>> | undefined>>
  return EQUIPMENT_KINDS.flatMap((kind: EquipmentKind) =>
    Object.entries(groups[EQUIPMENT_GROUPS[kind]] ?? {})
      // The inverter of an AC module is no piece of its own.
      .filter(([id]) => !id.includes(':'))
      .map(([id, values]) => ({ kind, id, values: values as Readonly<Record<string, unknown>>, file: path })),
  )
}

async function fitOf({ kind, id, values }: ListedEquipment, trial: FitTrial): Promise<EquipmentFit | undefined> {
  if (kind !== 'module' && kind !== 'inverter') return undefined
  return trial.fit({ kind, id, values } as unknown as Candidate)
}

function tellFailing({ failing }: FitTrial, tried: readonly ListedEquipment[], sheet: Worksheet): void {
  if (failing.length > 0)
    sheet.find({
      severity: 'warning',
      id: 'equipment.project-fails',
      message: `the project as it stands fails ${failing.length === 1 ? 'a check' : `${failing.length} checks`}, which is not held against equipment: ${failing.slice(0, 3).join('; ')}`,
      where: '',
      fix: "'gablewatt check-project' tells all of them; mend them first",
    })
  const fits = tried.flatMap(({ fit }) => (fit === undefined ? [] : [fit]))
  if (fits.length === 0 || fits.some((one) => one.fits)) return
  sheet.find({
    severity: 'warning',
    id: 'equipment.none-fits',
    message: `none of ${fits.length} modules and inverters fits this project`,
    where: '',
    fix: 'look at the first reason of each',
  })
}
