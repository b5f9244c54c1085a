import { realpathSync } from 'node:fs'
import { Option, type Command } from 'commander'
import { LARGEST_DOCUMENT_BYTES, LARGEST_YAML_BYTES, readNamedBytes, readNamedText } from '../../project/index.js'
import { inWorker } from '../../project/foreign/index.js'
import { listFormFields, prepareForm, type FormFile } from '../../papers/index.js'
import type { Finding } from '../../worksheet/index.js'
import { DesignError, UsageError } from '../errors.js'
import { houseOf } from '../house-of.js'
import { readsProject, usesEarlier, writesReport, type ReportOptions } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'
import { fieldsReport, fillsReport } from './form-reports.js'

export const examples: readonly [Example, Example, Example, Example] = [
  { line: 'fill-form --list form.pdf', does: 'the fields of a form by their names' },
  { line: 'fill-form --starter form.pdf --out mapping.yaml', does: 'a mapping to fill in: which field gets what' },
  {
    line: 'fill-form project.yaml form.pdf mapping.yaml --out filled.pdf',
    does: 'the form filled; signatures, their dates and declarations stay empty',
  },
  {
    line: 'fill-form project.yaml form.pdf mapping.yaml --preview',
    does: 'what goes into which field and where it comes from; writes no PDF',
  },
]

interface Options extends ReportOptions {
  readonly list?: string
  readonly starter?: string
  readonly preview?: boolean
  readonly flatten?: boolean
  readonly use: readonly string[]
}

export function configure(command: Command): void {
  usesEarlier(
    writesReport(
      readsProject(
        command
          .argument('[project.yaml]', 'the project file, or - for stdin')
          .argument('[form.pdf]', 'the fillable form')
          .argument('[mapping.yaml]', 'what goes into which field'),
      )
        .addOption(
          new Option('--list <form.pdf>', 'print the fields of a form; needs no project').conflicts([
            'starter',
            'preview',
            'flatten',
          ]),
        )
        .addOption(
          new Option('--starter <form.pdf>', 'print a mapping of a form to start from').conflicts([
            'preview',
            'flatten',
          ]),
        )
        .option('--preview', 'print what goes into which field, and write no form')
        .option('--flatten', 'make the fields part of the page, so that they can no longer be filled'),
    ),
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const alone = options.list ?? options.starter
  const isReport = options.list !== undefined || options.preview === true
  for (const format of ['json', 'csv', 'markdown', 'showWork'] as const) {
    if (options[format] === true && !isReport)
      throw new UsageError(`--${format === 'showWork' ? 'show-work' : format} goes with --list or --preview`)
  }
  if (alone === undefined) return fill(context, options)
  if (context.args.length > 0) throw new UsageError('--list and --starter take a form alone, no project')
  const form = await listFormFields(readForm(alone), options.starter !== undefined, inWorker())
  if (options.list !== undefined) return { report: fieldsReport(alone, form) }
  const next = 'fill it in, then gablewatt fill-form project.yaml form.pdf mapping.yaml'
  return { document: form.starter, next }
}

async function fill(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const [, formPath, mappingPath] = context.args
  if (formPath === undefined || mappingPath === undefined) {
    throw new UsageError('state project, form and mapping: fill-form project.yaml form.pdf mapping.yaml')
  }
  for (const path of [formPath, mappingPath]) {
    if (options.out !== undefined && isSameFile(options.out, path)) {
      throw new UsageError(`cannot write ${options.out}: the form is filled from this file`)
    }
  }
  const mapping = { path: mappingPath, text: readNamedText(mappingPath, LARGEST_YAML_BYTES) }
  const house = await houseOf(context, ['yield', 'wire', 'mounts', 'bom'])
  const filled = await prepareForm(await context.project(), house, readForm(formPath), mapping, inWorker())
  if (options.preview === true) return { report: fillsReport(formPath, filled) }
  const errors = filled.findings.filter(({ severity }) => severity === 'error')
  if (errors.length > 0) throw notFilled(errors)
  const { pdf, notes } = await filled.draw(options.flatten === true)
  return { document: pdf, notes: [...filled.notes, ...filled.findings.map(sayFinding), ...notes] }
}

function readForm(path: string): FormFile {
  return { path, bytes: readNamedBytes(path, LARGEST_DOCUMENT_BYTES, `form '${path}'`) }
}

function notFilled(errors: readonly Finding[]): DesignError {
  const list = errors.map(({ message, fix }) => `\n  - ${message}${fix === undefined ? '' : `\n    fix: ${fix}`}`)
  const count = errors.length === 1 ? 'one field fails' : `${errors.length} fields fail`
  return new DesignError(`the form is not filled, because ${count}:${list.join('')}`)
}

function sayFinding({ id, where, message, fix }: Finding): string {
  // The others name their field; what is made up is named by its place in the project.
  const what = id.startsWith('project.made-up') && where !== '' ? `${where}: ${message}` : message
  return fix === undefined ? what : `${what}. ${fix}`
}

function isSameFile(a: string, b: string): boolean {
  try {
    return realpathSync(a) === realpathSync(b)
  } catch {
    return false
  }
}
