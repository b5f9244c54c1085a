import { markdownLine } from '../../report/index.js'
import { cautionWords, quantityText, stateText, tape } from './plan-facts.js'
import type { WorkPlanValues } from './plan-values.js'

/** The plan as Markdown with task lists, for printing or for an issue tracker. */
export function planMarkdown(
  title: string,
  values: WorkPlanValues,
  cautions: readonly string[],
  gaps: readonly string[],
): string {
  const parts = [`# ${markdownLine(title)}`]
  if (gaps.length > 0) parts.push('## Missing', list(gaps))
  if (cautions.length > 0) parts.push('## Caution', list(cautions))
  values.steps.forEach((step, index) => {
    parts.push(`## ${index + 1}. ${markdownLine(step.title)}${step.kind === 'inspection' ? ' (inspection)' : ''}`)
    parts.push(`State: ${stateText(step)}`)
    if (step.tools.length > 0) parts.push(`Tools: ${step.tools.map(markdownLine).join('; ')}`)
    if (step.quantities.length > 0) {
      parts.push(`Quantities: ${step.quantities.map((each) => markdownLine(quantityText(each))).join('; ')}`)
    }
    if (step.cautions.length > 0) parts.push(`Caution: ${cautionWords(step)}`)
    if (step.tasks.length > 0) {
      parts.push(
        step.tasks
          .map(
            (task) =>
              `- [ ] ${markdownLine(task.says)}${task.source === '' ? '' : ` *(${markdownLine(task.source)})*`}`,
          )
          .join('\n'),
      )
    }
    if (step.stop !== null) parts.push(`**STOP: ${markdownLine(step.stop)}**`)
  })
  if (values.mounts.length > 0) {
    parts.push(
      '## Mount positions',
      table(
        ['Mount', 'Plane', 'Rail', 'Rafter', 'From the left end of the eave', 'Up the slope', 'Done'],
        values.mounts.map((mount) => [
          mount.mount,
          mount.plane,
          mount.rail,
          mount.stands_on === 'rafter' ? `${mount.rafter}` : `${mount.stands_on}, nearest ${mount.rafter}`,
          tape(mount.x_in),
          tape(mount.y_in),
          '☐',
        ]),
      ),
    )
  }
  parts.push(
    '## First week by month (80 % range)',
    table(
      ['Month', 'Expected kWh', 'Low kWh', 'High kWh'],
      values.first_week.map((week) =>
        [week.month, week.expected_kwh, week.p10_kwh, week.p90_kwh].map((value) => value.toFixed(0)),
      ),
    ),
  )
  return `${parts.join('\n\n')}\n`
}

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  return [heads, heads.map(() => '---'), ...rows.map((row) => row.map(markdownLine))]
    .map((row) => `| ${row.join(' | ')} |`)
    .join('\n')
}

function list(items: readonly string[]): string {
  return items.map((item) => `- ${markdownLine(item)}`).join('\n')
}
