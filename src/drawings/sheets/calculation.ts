import type { Step } from '../../worksheet/index.js'
import { flowBlocks, type Block, type SheetDraft } from '../layout/index.js'
import { sheetSource } from '../sheet-source.js'
import { amount } from './amount.js'
import { calculationRows, groupedRows, type CalculationRow } from './calculation-rows.js'
import { continued, type SheetJob } from './job.js'

/** How a calculation is laid out. */
interface Calculation {
  readonly id: string
  readonly title: string
  readonly steps: readonly Step[]
  /** What a step is about; undefined for the whole. */
  readonly subjectOf: (step: Step) => string | undefined
  /** Heading over the rows about some subjects; without it each row begins with its subjects. */
  readonly heading?: (subjects: readonly string[]) => string
}

/** Sheets of a calculation: each step with formula, numbers, result, check and source; equal ones once. */
function calculationSheets(job: SheetJob, { id, title, steps, subjectOf, heading }: Calculation): SheetDraft[] {
  const rows = calculationRows(steps, subjectOf)
  const groups = heading === undefined ? [{ subjects: [], rows }] : groupedRows(rows)
  const pages = flowBlocks(
    [
      { kind: 'heading', text: title },
      ...groups.flatMap((group): Block[] => [
        ...(heading === undefined ? [] : [{ kind: 'heading', text: heading(group.subjects) } as const]),
        { kind: 'table', columns: COLUMNS, rows: group.rows.map((row) => cells(row, heading === undefined)) },
      ]),
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

const COLUMNS = [
  { heading: 'What is worked out', share: 0.23 },
  { heading: 'Formula', share: 0.17 },
  { heading: 'Numbers', share: 0.23 },
  { heading: 'Result', share: 0.13, bold: true },
  { heading: 'Check', share: 0.08 },
  { heading: 'Source', share: 0.16 },
]

function cells({ subjects, says, step }: CalculationRow, isNamed: boolean): string[] {
  return [
    isNamed && subjects.length > 0 ? `${subjects.join(', ')}: ${says}` : says,
    step.formula,
    step.inputs.map((input) => `${input.symbol} = ${amount(input.value, input.unit)}`).join('; '),
    `${step.result.symbol} = ${amount(step.result.value, step.result.unit)}`,
    step.check === undefined
      ? ''
      : `${step.check.relation === '<=' ? '≤' : '≥'} ${amount(step.check.limit, '')}: ${step.check.pass ? 'passes' : 'FAILS'}`,
    sheetSource(step.source),
  ]
}

/** The structural calculation, with a heading for each roof plane, or for planes that are alike. */
export function structuralCalculation(job: SheetJob, steps: readonly Step[]): SheetDraft[] {
  return calculationSheets(job, {
    id: 'S-601',
    title: 'Structural calculation',
    steps,
    // `structure.PLANE.what` is about a plane, `structure.check-part` is the hardest case of a check.
    subjectOf: ({ id }) => {
      const [, part = '', ...more] = id.split('.')
      if (more.length > 0) return part
      return part.startsWith('check-') ? HARDEST : undefined
    },
    heading: (subjects) => {
      if (subjects.length === 0) return 'The whole roof'
      if (subjects.length === 1 && subjects[0] === HARDEST) return 'The hardest case of each check'
      return `Roof ${subjects.length === 1 ? 'plane' : 'planes'} ${subjects.join(', ')}`
    },
  })
}

/** No id of a plane: those begin with a letter. */
const HARDEST = '*'

/** The electrical calculation: each row begins with the circuits or segments that it is about. */
export function electricalCalculation(job: SheetJob, steps: readonly Step[]): SheetDraft[] {
  return calculationSheets(job, {
    id: 'E-603',
    title: 'Electrical calculation',
    steps,
    // `home.roof.b1` of the step `wire.home.roof.b1.terminal`.
    subjectOf: ({ id }) => {
      const subject = id.split('.').slice(1, -1).join('.')
      return subject === '' ? undefined : subject
    },
  })
}
