import { realpathSync } from 'node:fs'
import { resolve } from 'node:path'
import { EXIT, type ExitCode } from './exit-codes.js'
import type { FrameContext } from './context.js'
import { UsageError } from './errors.js'
import type { CommonOptions, ReportOptions } from './options.js'
import {
  cleanLine,
  csvTable,
  renderCsv,
  renderJson,
  reportInCurrency,
  textInCurrency,
  type Report,
  type ReportContext,
} from '../report/index.js'
import { digestOf } from '../seal/index.js'
import { writeErr, writeOut } from './streams.js'
import type { CommandOutcome, OutputFile } from './subcommand.js'

type DeliveryOptions = CommonOptions & ReportOptions

/** Looks before the work begins whether its result can be put where `--out` says. */
export async function checkDelivery(options: DeliveryOptions): Promise<void> {
  if (options.out === undefined || options.out === '-') return
  const { checkTarget } = await import('../files/index.js')
  checkTarget(options.out, options.force === true)
}

/** Puts an outcome where it belongs and says so; returns the exit code. */
export async function deliver(
  outcome: CommandOutcome,
  context: FrameContext,
  options: DeliveryOptions,
): Promise<ExitCode> {
  const isReport = 'report' in outcome
  const currency = context.loaded()?.project.finance?.currency
  const report = isReport ? reportInCurrency(outcome.report, currency) : undefined
  const content =
    report === undefined ? ('document' in outcome ? outcome.document : '') : await render(report, context, options)
  const files = [...(outcome.files ?? [])]
  const toStdout = options.out === undefined || options.out === '-'
  if (!toStdout) files.push({ path: options.out, content })
  await writeAll(files, context, options)
  if (toStdout) writeOut(content)
  const notes = isReport ? [] : (outcome.notes ?? [])
  if (options.quiet !== true) for (const note of notes) writeErr(`note: ${cleanLine(textInCurrency(note, currency))}\n`)
  if (report !== undefined && options.csv === true) await tellFindings(report, context, options)
  const next = isReport ? outcome.report.next : outcome.next
  if (next !== undefined && options.quiet !== true && process.stderr.isTTY) writeErr(`next: ${cleanLine(next)}\n`)
  const failed = isReport
    ? outcome.report.result.findings.some((finding) => finding.severity === 'error')
    : outcome.failed === true
  return outcome.exit ?? (failed ? EXIT.checkFailed : EXIT.done)
}

/** Those for people are loaded only for their own format. */
async function render(report: Report, context: FrameContext, options: DeliveryOptions): Promise<string> {
  const around = reportContext(context, options, report.inPlaceOfProject)
  if (options.json === true) return renderJson(report, around)
  if (options.markdown === true) return (await import('./output/markdown.js')).renderMarkdown(report, around)
  if (options.csv === true) {
    const table = csvTable(report)
    if (table === undefined)
      throw new UsageError('this result has no table, so it cannot be printed as CSV; use --json')
    return renderCsv(table)
  }
  const [{ renderText }, { FILE_STYLE, streamStyle }] = await Promise.all([
    import('./output/text.js'),
    import('./output/style.js'),
  ])
  const toFile = options.out !== undefined && options.out !== '-'
  return renderText(report, around, toFile ? FILE_STYLE : await streamStyle(process.stdout, process.env, options.color))
}

/** CSV has no room for findings, and they must not be lost. */
async function tellFindings(report: Report, context: FrameContext, options: DeliveryOptions): Promise<void> {
  const [{ renderFindings }, { streamStyle }] = await Promise.all([
    import('./output/text.js'),
    import('./output/style.js'),
  ])
  const findings = report.result.findings.filter((finding) => options.quiet !== true || finding.severity === 'error')
  const style = await streamStyle(process.stderr, process.env, options.color)
  const lines = renderFindings(findings, reportContext(context, options).locate, style)
  if (lines.length > 0) writeErr(`${lines.join('\n')}\n`)
}

function reportContext(
  context: FrameContext,
  options: DeliveryOptions,
  inPlaceOfProject: readonly string[] = [],
): ReportContext {
  const loaded = context.loaded()
  const digest =
    loaded === undefined || inPlaceOfProject.length === 0
      ? loaded?.digest
      : digestOf([loaded.digest, ...inPlaceOfProject])
  return {
    tool: context.tool,
    project: loaded === undefined || digest === undefined ? undefined : { title: loaded.project.title, digest },
    locate: context.locate,
    showWork: options.showWork === true,
  }
}

/** All targets are looked at before the first is written, so that a refusal leaves no half of a set. */
async function writeAll(files: readonly OutputFile[], context: FrameContext, options: DeliveryOptions): Promise<void> {
  if (files.length === 0) return
  const { checkTarget, writeWhole } = await import('../files/index.js')
  const taken = new Set<string>()
  for (const { path, inPlace = false } of files) {
    refuseOwnInput(path, context)
    if (taken.has(resolve(path)))
      throw new UsageError(`two results would be written to ${path}; give each a file of its own`)
    taken.add(resolve(path))
    checkTarget(path, inPlace || options.force === true)
  }
  for (const { path, content, inPlace = false } of files) {
    writeWhole(path, content, inPlace || options.force === true)
    if (options.quiet !== true) writeErr(`wrote ${cleanLine(path)}\n`)
  }
}

/** `--out project.yaml --force` would destroy the work of hours. */
function refuseOwnInput(path: string, context: FrameContext): void {
  const loaded = context.loaded()
  if (loaded === undefined) return
  const files = [loaded.path, ...[...loaded.files.keys()].map((file) => resolve(loaded.folder, file))]
  if (files.map(real).includes(real(path))) throw new UsageError(`cannot write ${path}: the project reads this file`)
}

function real(path: string): string {
  try {
    return realpathSync(path)
  } catch {
    return path
  }
}
