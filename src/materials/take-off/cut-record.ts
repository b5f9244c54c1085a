import type { CutPlan } from '../cut/cut-stock.js'
import type { TakeOffJob } from './take-off-job.js'
import type { Inches } from '../../values/index.js'

/** A stick of the cut list, with the names that the JSON has. */
export interface CutListEntry {
  readonly item: string
  readonly stock_in: number
  readonly cuts: readonly { readonly for: string; readonly length_in: number }[]
  readonly offcut_in: number
}

/** The cut list of one material as a whole. */
export interface CutSummary {
  readonly material: string
  readonly sticks: number
  readonly stock_in: number
  readonly pieces_in: number
  readonly offcuts_in: number
  readonly kerf_in: number
  /** By the sum of the lengths alone, in sticks of the longest length. */
  readonly least_sticks: number
  /** Whether stock was chosen by price; by length otherwise. */
  readonly by_price: boolean
  /** Whether no cheaper way exists. */
  readonly proven: boolean
}

/** Everything that is cut. */
export interface CutLists {
  readonly entries: readonly CutListEntry[]
  readonly summaries: readonly CutSummary[]
}

/** Puts a plan into the cut list and on the worksheet. */
export function recordCuts(
  job: TakeOffJob,
  material: string,
  plan: CutPlan,
  kerfIn: Inches,
  itemOf: (stockIn: Inches) => string,
): CutLists {
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)
  const pieces = plan.sticks.flatMap((stick) => stick.pieces)
  const summary: CutSummary = {
    material,
    sticks: plan.sticks.length,
    stock_in: sum(plan.sticks.map((stick) => stick.stockIn)),
    pieces_in: sum(pieces.map((piece) => piece.lengthIn)),
    offcuts_in: sum(plan.sticks.map((stick) => stick.offcutIn)),
    kerf_in: kerfIn,
    least_sticks: plan.leastSticks,
    by_price: plan.byPrice,
    proven: plan.proven,
  }
  job.worksheet.note({
    id: `materials.cuts.${material}`,
    says: `Sticks of ${material}: ${plan.proven ? 'no cheaper way to cut them exists' : 'the best way that was found in the time allowed'}`,
    formula: 'least cost so that in every stick the pieces and a kerf between them fit',
    inputs: [
      { symbol: 'pieces', value: pieces.length, unit: '', from: `${summary.pieces_in.toFixed(2)} in together` },
      { symbol: 'kerf', value: kerfIn, unit: 'in', from: 'materials.kerf_in' },
      { symbol: 'least', value: plan.leastSticks, unit: 'sticks', from: 'sum of lengths over the longest stock' },
    ],
    result: { symbol: 'sticks', value: summary.sticks, unit: '' },
    source: {
      document: 'Gilmore & Gomory, A Linear Programming Approach to the Cutting-Stock Problem, 1961',
      place: 'bound; the search itself is complete enumeration',
      standing: 'from memory',
    },
    limits: 'A piece is not joined from two pieces; joints in rails lie where the mounts stage put them.',
  })
  const entries = plan.sticks.map((stick): CutListEntry => ({
    item: itemOf(stick.stockIn),
    stock_in: stick.stockIn,
    cuts: stick.pieces.map((piece) => ({ for: piece.for, length_in: piece.lengthIn })),
    offcut_in: stick.offcutIn,
  }))
  return { entries, summaries: [summary] }
}
