import { existsSync } from 'node:fs'
import type { Command } from 'commander'
import {
  addEquipment,
  entriesOfTable,
  entryOfSettings,
  EQUIPMENT_KINDS,
  LARGEST_SHEETS_BYTES,
  LARGEST_YAML_BYTES,
  readColumns,
  readNamedText,
  readSettings,
  type AddedEquipment,
  type EquipmentKind,
} from '../../project/index.js'
import type { Report, Section } from '../../report/index.js'
import { Worksheet } from '../../worksheet/index.js'
import { UsageError } from '../errors.js'
import { writesReport } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'

export const examples: readonly [Example, Example, Example] = [
  {
    line: 'add-equipment --file equipment.yaml --module m420 --set pmax_w=420 --set pmax_temp_coeff_pct_per_c=-0.34 --set length_in="1722 mm"',
    does: 'one module from its data sheet; a number may have the unit of the sheet',
  },
  {
    line: 'add-equipment --file equipment.yaml --table sheets.csv --columns columns.yaml --dry-run',
    does: 'what a table of many would write',
  },
  {
    line: 'add-equipment --file equipment.yaml --mount foot --set lag.size=5/16 --set lag.length_in=5 --set lag.count=1',
    does: 'keys below a part are dotted',
  },
]

/** Ids by the option of their kind, as commander names it. */
type OptionOf<Kind> = Kind extends 'trunk-cable' ? 'trunkCable' : Kind extends 'storage-unit' ? 'storageUnit' : Kind
type KindOptions = { readonly [Kind in EquipmentKind as OptionOf<Kind>]?: string }

interface Options extends KindOptions {
  readonly file: string
  readonly set: readonly string[]
  readonly table?: string
  readonly columns?: string
  readonly replace?: boolean
  readonly dryRun?: boolean
}

export function configure(command: Command): void {
  writesReport(command.requiredOption('--file <equipment.yaml>', 'the equipment file, made if it is not there'))
  for (const kind of EQUIPMENT_KINDS)
    command.option(`--${kind} <id>`, `the ${kind.replace('-', ' ')} to write, under your own id`)
  command
    .option(
      '--set <key=value>',
      'a value of its data sheet, e.g. pmax_w=410 or weight_lb="21.5 kg" (repeatable)',
      (value: string, before: readonly string[]) => [...before, value],
      [],
    )
    .option('--table <sheets.csv>', 'many at once: a table with one on each row')
    .option('--columns <columns.yaml>', 'what the columns of the table hold, and in which units')
    .option('--replace', 'put it in the place of one with the same id')
    .option('--dry-run', 'show what would be written, and write nothing')
}

export function run(_: CommandContext, options: Options): CommandOutcome {
  const { file, replace = false, dryRun = false } = options
  const text = existsSync(file) ? readNamedText(file, LARGEST_YAML_BYTES) : ''
  const added = addEquipment({ file, text, replace, ...readEntries(options) })
  const isWritten = added.text !== undefined && !dryRun
  const files = added.text === undefined || dryRun ? [] : [{ path: file, content: added.text, inPlace: true }]
  return { report: reportOf(added, { file, before: text, dryRun, isWritten }), files }
}

/** The entries that the options state: one, or those of a table. */
function readEntries(options: Options): Pick<Parameters<typeof addEquipment>[0], 'entries' | 'problems' | 'sources'> {
  const { table, columns, set } = options
  const named = EQUIPMENT_KINDS.flatMap((kind) => {
    const id = options[kind === 'trunk-cable' ? 'trunkCable' : kind === 'storage-unit' ? 'storageUnit' : kind]
    return id === undefined ? [] : [{ kind, id }]
  })
  if (table !== undefined) {
    if (columns === undefined) throw new UsageError('--table needs --columns, which says what its columns hold')
    if (named.length > 0 || set.length > 0)
      throw new UsageError('--table stands without ids and --set; what is the same in every row goes under values')
    const [text, declared] = [readNamedText(table, LARGEST_SHEETS_BYTES), readNamedText(columns, LARGEST_YAML_BYTES)]
    return { ...entriesOfTable(table, text, readColumns(columns, declared)), sources: new Map([[table, text]]) }
  }
  if (columns !== undefined) throw new UsageError('--columns belongs to --table')
  const [one, another] = named
  if (one === undefined || another !== undefined)
    throw new UsageError(`name one piece: ${EQUIPMENT_KINDS.map((kind) => `--${kind} ID`).join(', ')}; or --table`)
  const settings = readSettings(set)
  const read = entryOfSettings(one, settings.stated, { file: `--${one.kind} ${one.id}` })
  return { entries: [read.entry], problems: [...settings.problems, ...read.problems] }
}

interface Outcome {
  readonly file: string
  readonly before: string
  readonly dryRun: boolean
  readonly isWritten: boolean
}

const DOES = { adds: 'added', replaces: 'replaced', keeps: 'not written' } as const

function reportOf({ compared, findings, text }: AddedEquipment, outcome: Outcome): Report {
  const { file, before, dryRun, isWritten } = outcome
  const sheet = new Worksheet()
  for (const finding of findings) sheet.find(finding)
  const rows = compared.map(({ entry, does }) => {
    const name = typeof entry.values['name'] === 'string' ? entry.values['name'] : ''
    return { kind: entry.kind, id: entry.id, name, does: text === undefined ? DOES.keeps : DOES[does] }
  })
  const count = rows.filter(({ does }) => does !== DOES.keeps).length
  const said = text === undefined ? 'nothing written' : `${count} ${dryRun ? 'would be written' : 'written'}`
  const sections: Section[] = [
    {
      kind: 'table',
      columns: ['Kind', 'Id', 'Name', dryRun ? 'Would be' : 'Was'].map((heading) => ({ heading })),
      rows: rows.map(({ kind, id, name, does }) => [kind, id, name, does]),
    },
  ]
  if (dryRun && text !== undefined)
    sections.push({ kind: 'drawing', heading: `New lines of ${file}`, text: newLines(before, text) })
  return {
    title: `Equipment of ${file}: ${said}`,
    stage: 'equipment',
    sections,
    result: sheet.result({ file, written: isWritten, entries: rows }),
  }
}

/** The lines that are not in the file yet, in their order, with their numbers. */
function newLines(before: string, after: string): string {
  const [old, fresh] = [before, after].map((text) => text.replace(/\r?\n$/u, '').split(/\r?\n/u)) as [
    string[],
    string[],
  ]
  let start = 0
  while (start < old.length && start < fresh.length && old[start] === fresh[start]) start += 1
  let end = 0
  while (end < old.length - start && end < fresh.length - start && old.at(-1 - end) === fresh.at(-1 - end)) end += 1
  const shown = fresh.slice(start, fresh.length - end)
  const width = String(start + shown.length).length
  return shown.map((line, i) => `${String(start + i + 1).padStart(width)}  ${line}`).join('\n')
}
