import type { FleetOutcome } from '../../fleet/index.js'
import { writeWhole } from '../../files/index.js'
import { cleanLine, csvTable, renderCsv, renderJson, type Report, type ReportContext } from '../../report/index.js'
import { FILE_STYLE, renderMarkdown, renderText, streamStyle } from '../output/index.js'
import { writeErr, writeOut } from '../streams.js'
import { outFile, type FleetOptions } from './fleet-options.js'

/** Puts the report of the fleet on stdout or into a file, in the format that was asked for. */
export async function deliverReport(report: Report, tool: string, options: FleetOptions): Promise<void> {
  const around: ReportContext = { tool, project: undefined, locate: () => undefined, showWork: false }
  const target = outFile(options)
  const style = target === undefined ? await streamStyle(process.stdout, process.env, options.color) : FILE_STYLE
  const content = await (async (): Promise<string> => {
    if (options.json === true) return renderJson(report, around)
    if (options.markdown === true) return renderMarkdown(report, around)
    const table = csvTable(report)
    return options.csv === true && table !== undefined ? renderCsv(table) : renderText(report, around, style)
  })()
  if (target === undefined) {
    writeOut(content)
    return
  }
  writeWhole(target, content, options.force === true)
  if (options.quiet !== true) writeErr(`wrote ${cleanLine(target)}\n`)
}

/** What moved, for people, where stdout holds something for machines. */
export async function tellMoves(report: Report, tool: string, options: FleetOptions): Promise<void> {
  const sections = report.sections.slice(2)
  const around: ReportContext = { tool, project: undefined, locate: () => undefined, showWork: false }
  const alone = { ...report, sections, result: { ...report.result, findings: [] }, cautions: [] }
  writeErr(await renderText(alone, around, await streamStyle(process.stderr, process.env, options.color)))
}

/** What keeps a project from being worked out, and the checks that fail, where the output has no room for them. */
export function tellProblems({ name, problems, findings }: FleetOutcome): void {
  const lines = [
    ...problems.map(({ place, key, message }) => [place, name, key, message]),
    ...findings.filter(({ severity }) => severity === 'error').map(({ where, message }) => [where, name, message]),
  ]
  for (const line of lines) writeErr(`error: ${cleanLine(line.filter((part) => part !== '').join(': '))}\n`)
}
