import type { Finding, Step } from '../../worksheet/index.js'
import {
  cautionTexts,
  cellTone,
  cleanLine,
  cleanText,
  type Fact,
  type Report,
  type ReportContext,
  type Section,
  type TableData,
} from '../../report/index.js'
import { renderBars } from './bars.js'
import { assumptionLine, FINDING_TONES, findingLines } from './findings.js'
import { plotXY } from './plot.js'
import { cellText } from './cells.js'
import type { Style } from './style.js'
import { groupSteps, workLines } from './work.js'
import { displayWidth, hang, wrapText } from './wrap.js'

/** A report for a terminal or a plain text file. Tables are drawn by a package, which only a report with one loads. */
export async function renderText(report: Report, context: ReportContext, style: Style): Promise<string> {
  const { findings, assumptions, worksheet } = report.result
  const headed = (heading: string): string[] =>
    wrapText(cleanLine(heading), style.width).map((line) => style.paint('heading', line))
  const block = (heading: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ['', ...headed(heading), ...lines]
  const lines = headed(report.title)
  for (const section of report.sections) {
    lines.push('', ...(section.heading === undefined ? [] : headed(section.heading)))
    lines.push(...(section.kind === 'table' ? await drawTable(section, style) : renderSection(section, style)))
  }
  lines.push(
    ...(context.showWork ? renderWork(worksheet, style) : []),
    ...block('Assumed, because the project does not say', bullets(assumptions.map(assumptionLine), style)),
    ...block('Found', renderFindings(findings, context.locate, style)),
    ...block('Caution', bullets(cautionTexts(report.cautions ?? []), style)),
  )
  return `${lines.join('\n')}\n`
}

async function drawTable(table: TableData, style: Style): Promise<string[]> {
  const { renderTable } = await import('./table.js')
  return renderTable(table, style)
}

function renderSection(section: Exclude<Section, { kind: 'table' }>, style: Style): string[] {
  switch (section.kind) {
    case 'facts':
      return renderFacts(section.facts, style)
    case 'paragraph':
      return wrapText(cleanText(section.text), style.width)
    case 'drawing':
      return section.text.split('\n').map(cleanLine)
    case 'list':
      return bullets(section.items, style)
    case 'bars':
      return renderBars(section.bars, section.unit, section.decimals, style)
    case 'plot':
      return plotXY(section.x, section.y, section.series, style)
  }
}

function bullets(items: readonly string[], style: Style): string[] {
  return items.flatMap((item) => hang('- ', cleanLine(item), style.width))
}

/** Columns that the values of facts get at least; where labels leave fewer, values stand below them. */
const LEAST_VALUE_WIDTH = 18

function renderFacts(facts: readonly Fact[], style: Style): string[] {
  const labelWidth = Math.max(0, ...facts.map((fact) => displayWidth(cleanLine(fact.label))))
  const below = style.width - labelWidth - 2 < LEAST_VALUE_WIDTH
  const indent = below ? 2 : labelWidth + 2
  return facts.flatMap((fact) => {
    const label = cleanLine(fact.label)
    const text = `${cellText(fact.value, fact.decimals)}${fact.unit === undefined ? '' : ` ${cleanLine(fact.unit)}`}`
    const tone = cellTone(fact.value)
    const lead = below ? ' '.repeat(indent) : label + ' '.repeat(indent - displayWidth(label))
    const lines = wrapText(text, style.width - indent).map(
      (line, index) =>
        (index === 0 ? lead : ' '.repeat(indent)) + (tone === undefined ? line : style.paint(tone, line)),
    )
    return below ? [...wrapText(label, style.width), ...lines] : lines
  })
}

/** Each finding with its severity word, so that nothing hangs on colour alone. Also used for stderr beside CSV. */
export function renderFindings(
  findings: readonly Finding[],
  locate: (path: string) => string | undefined,
  style: Style,
): string[] {
  const detail = (name: string, text: string | undefined): string[] =>
    text === undefined ? [] : hang(`    ${name}: `, cleanLine(text), style.width)
  return findingLines(findings, locate).flatMap((finding) => {
    const [first = '', ...rest] = hang(
      `${finding.severity}: `,
      `${cleanLine(finding.message)} [${finding.id}]`,
      style.width,
    )
    const word = `${finding.severity}:`
    return [
      style.paint(FINDING_TONES[finding.severity], word) + first.slice(word.length),
      ...rest,
      ...detail('at', finding.where),
      ...detail('source', finding.source),
      ...detail('fix', finding.fix),
    ]
  })
}

function renderWork(steps: readonly Step[], style: Style): string[] {
  const lines: string[] = []
  const say = (lead: string, text: string): void => void lines.push(...hang(lead, cleanLine(text), style.width))
  for (const [group, members] of groupSteps(steps)) {
    lines.push('', style.paint('heading', `Work: ${cleanLine(group)}`))
    for (const step of members.map(workLines)) {
      say('', `${step.says} [${step.id}]`)
      for (const line of step.written) say('    ', line)
      if (step.check !== undefined) say('    check: ', step.check)
      for (const input of step.inputs) say('    with ', input)
      say('    source: ', step.source)
      if (step.limits !== undefined) say('    limits: ', step.limits)
    }
  }
  return lines
}
