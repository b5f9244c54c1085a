import type { Step } from '../../worksheet/index.js'
import { flowBlocks, plainNumber, type SheetDraft } from '../layout/index.js'
import { sheetSource } from '../sheet-source.js'
import { continued, type SheetJob } from './job.js'

/**
 * Sheets of a calculation: each step with formula, numbers, result, check and source.
 *
 * @param isNamed Whether each row begins with what it is about, as many circuits and segments are worked out alike.
 */
export function calculationSheets(
  job: SheetJob,
  id: string,
  title: string,
  steps: readonly Step[],
  isNamed = false,
): SheetDraft[] {
  const rows = steps.map((step) => [
    [...(isNamed ? subjectOf(step) : []), step.says].join(': '),
    step.formula,
    step.inputs.map((input) => `${input.symbol} = ${amount(input.value, input.unit)}`).join('; '),
    `${step.result.symbol} = ${amount(step.result.value, step.result.unit)}`,
    step.check === undefined
      ? ''
      : `${step.check.relation === '<=' ? '≤' : '≥'} ${plainNumber(step.check.limit, 3)}: ${step.check.pass ? 'passes' : 'FAILS'}`,
    sheetSource(step.source),
  ])
  const pages = flowBlocks(
    [
      { kind: 'heading', text: title },
      {
        kind: 'table',
        columns: [
          { heading: 'What is worked out', share: 0.23 },
          { heading: 'Formula', share: 0.17 },
          { heading: 'Numbers', share: 0.23 },
          { heading: 'Result', share: 0.13, bold: true },
          { heading: 'Check', share: 0.08 },
          { heading: 'Source', share: 0.16 },
        ],
        rows,
      },
    ],
    job.stationery.body,
  )
  return pages.map((paper, page) => ({
    id: continued(id, page),
    title: page === 0 ? title : `${title}, continued`,
    scale: 'None',
    paper,
  }))
}

/** What a step is about: `home.roof.b1` of the step `wire.home.roof.b1.terminal`. */
function subjectOf({ id }: Step): string[] {
  const subject = id.split('.').slice(1, -1).join('.')
  return subject === '' ? [] : [subject]
}

/** A number with its unit, or a name as it stands. */
export function amount(value: number | string, unit: string): string {
  if (typeof value === 'string') return unit === '' ? value : `${value} ${unit}`
  const size = Math.abs(value)
  const text = plainNumber(value, size >= 1000 ? 0 : size >= 10 ? 2 : size >= 0.01 || size === 0 ? 4 : 7)
  return unit === '' ? text : `${text} ${unit}`
}
