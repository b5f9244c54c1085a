import {
  cautionTexts,
  cleanLine,
  cleanText,
  columnTitle,
  type Report,
  type ReportContext,
  type Section,
  type TableData,
} from '../../report/index.js'
import { assumptionLine, findingLines } from './findings.js'
import { plotXY } from './plot.js'
import { withRoundedSums } from './rounded-sums.js'
import { FILE_STYLE } from './style.js'
import { alignment, cellText } from './cells.js'
import { groupSteps, workLines } from './work.js'

/** A report as GitHub-flavoured Markdown. */
export function renderMarkdown(report: Report, context: ReportContext): string {
  const { findings, assumptions, worksheet } = report.result
  const parts = [
    `# ${escape(report.title)}`,
    ...report.sections.flatMap((section) => [
      ...(section.heading === undefined ? [] : [`## ${escape(section.heading)}`]),
      renderSection(section),
    ]),
  ]
  if (context.showWork) {
    for (const [group, steps] of groupSteps(worksheet)) {
      parts.push(`## Work: ${escape(group)}`, ...steps.map((step) => renderStep(workLines(step))))
    }
  }
  if (assumptions.length > 0) parts.push('## Assumed', list(assumptions.map(assumptionLine)))
  if (findings.length > 0) parts.push('## Found', list(findingLines(findings, context.locate).map(findingText)))
  const cautions = cautionTexts(report.cautions ?? [])
  if (cautions.length > 0) parts.push('## Caution', list(cautions))
  return `${parts.join('\n\n')}\n`
}

function renderSection(section: Section): string {
  switch (section.kind) {
    case 'table':
      return table(section)
    case 'facts':
      return table({
        columns: [{ heading: 'Item' }, { heading: 'Value', align: 'right' }],
        rows: section.facts.map((fact) => [
          fact.label,
          `${cellText(fact.value, fact.decimals)}${fact.unit === undefined ? '' : ` ${fact.unit}`}`,
        ]),
      })
    case 'paragraph':
      return escapeText(cleanText(section.text))
    case 'drawing':
      return ['```text', ...section.text.split('\n').map(cleanLine), '```'].join('\n')
    case 'list':
      return list(section.items)
    case 'bars':
      return table({
        columns: [{ heading: '' }, { heading: section.unit, decimals: section.decimals ?? 0 }],
        rows: section.bars.map((bar) => [bar.label, bar.value]),
      })
    case 'plot':
      return ['```text', ...plotXY(section.x, section.y, section.series, FILE_STYLE), '```'].join('\n')
  }
}

function table(given: TableData): string {
  const data = withRoundedSums(given)
  const all = data.total === undefined ? data.rows : [...data.rows, data.total]
  return [
    row(data.columns.map((column) => escape(columnTitle(column)))),
    row(data.columns.map((column, index) => (alignment(column, data.rows, index) === 'right' ? '---:' : '---'))),
    ...all.map((cells) => row(cells.map((cell, index) => escape(cellText(cell, data.columns[index]?.decimals))))),
  ].join('\n')
}

function row(cells: readonly string[]): string {
  return `| ${cells.join(' | ')} |`
}

function list(items: readonly string[]): string {
  return items.map((item) => `- ${escape(item)}`).join('\n')
}

function findingText(finding: ReturnType<typeof findingLines>[number]): string {
  const details = [
    finding.where === undefined ? '' : ` At ${finding.where}.`,
    finding.source === undefined ? '' : ` Source: ${finding.source}.`,
    finding.fix === undefined ? '' : ` Fix: ${finding.fix}.`,
  ]
  return `${finding.severity}: ${finding.message} [${finding.id}].${details.join('')}`
}

function renderStep(step: ReturnType<typeof workLines>): string {
  return [
    `${escape(step.says)} [${escape(step.id)}]`,
    // A fence longer than any run of back ticks a name could hold.
    ['````text', ...step.written.map((line) => cleanLine(line).replaceAll('```', "'''")), '````'].join('\n'),
    list([
      ...(step.check === undefined ? [] : [`check: ${step.check}`]),
      ...step.inputs.map((input) => `with ${input}`),
      `source: ${step.source}`,
      ...(step.limits === undefined ? [] : [`limits: ${step.limits}`]),
    ]),
  ].join('\n\n')
}

function escape(text: string): string {
  return escapeText(cleanLine(text))
}

/**
 * A stranger's name must not become a link, a heading, an image or HTML. Unlike `markdownLine` it takes texts of several lines, and a sign at
 * their beginnings only where a space follows, as figures below zero stand in many cells.
 */
function escapeText(text: string): string {
  return text
    .replace(/[\\`*[\]<>|]/gu, '\\$&')
    .replace(/(?<![\p{L}\p{N}])_|_(?![\p{L}\p{N}])/gu, '\\_')
    .replace(/^(\s*)([#>+-])(?=\s)/gmu, '$1\\$2')
}
