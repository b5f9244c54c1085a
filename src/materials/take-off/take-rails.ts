import type { RailValue } from '../../structure/index.js'
import { StageError } from '../../worksheet/index.js'
import { cutStock } from '../cut/cut-stock.js'
import type { CutPiece } from '../cut/cutting-problem.js'
import { own, type Inches } from '../../values/index.js'
import { recordCuts, type CutLists } from './cut-record.js'
import type { Need } from './need.js'
import { practiceValue } from './practice.js'
import { stockItems } from './stock-lengths.js'
import type { TakeOffJob } from './take-off-job.js'

const FROM = 'mounts: values.rails'

/**
 * Rails as sticks by the cut list, and a splice for every joint.
 *
 * @throws StageError when the sheet of the rail states no stock lengths.
 */
export function takeRails(job: TakeOffJob, rails: readonly RailValue[]): { needs: Need[]; cuts: CutLists } {
  const railId = job.project.structure?.rail ?? ''
  const product = own(job.project.equipment.rails, railId)
  const lengths = product?.stock_lengths_in
  if (lengths === undefined)
    throw new StageError(
      `equipment.rails.${railId}.stock_lengths_in`,
      'the stock lengths of the rail are missing',
      'They stand on its data sheet or in the price list of the supplier.',
    )
  const itemOf = (lengthIn: Inches): string => `rail.${railId}.${lengthIn}in`
  const longestPieceIn = Math.max(0, ...rails.flatMap((rail) => rail.pieces_in))
  const stocks = stockItems(lengths, itemOf, job.prices, longestPieceIn)
  const kerfIn = practiceValue(job, 'kerf_in')
  const longestIn = Math.max(...stocks.map((stock) => stock.lengthIn))
  const { pieces, split } = railPieces(rails, longestIn)
  if (split.length > 0)
    job.worksheet.find({
      severity: 'warning',
      id: 'materials.rail-too-long',
      message: `pieces of rail ${split.join(', ')} are longer than the longest stock of ${longestIn} in; counted as if joined, which needs a splice and its rules`,
      where: `equipment.rails.${railId}.stock_lengths_in`,
      fix: 'Buy the longer stock length, or make the mounts stage plan the joints with the lengths that are sold',
    })
  const plan = cutStock(pieces, stocks, kerfIn)
  const counts = new Map<number, number>()
  for (const stick of plan.sticks) counts.set(stick.stockIn, (counts.get(stick.stockIn) ?? 0) + 1)
  const name = product?.name ?? `Rail ${railId}`
  const sticks = [...counts].map(([lengthIn, count]): Need => ({
    item: itemOf(lengthIn),
    name: `${name}, ${lengthIn} in`,
    group: 'racking',
    unit: 'stick',
    quantity: count,
    why: `cut list of ${pieces.length} pieces for ${rails.length} rails (${FROM}.pieces_in)`,
    noSpares: true,
  }))
  const splices = rails.reduce((sum, rail) => sum + rail.splices_in.length, 0) + split.length
  const splice: Need = {
    item: `splice.${railId}`,
    general: 'splice',
    name: `Splice for ${name}`,
    group: 'racking',
    unit: 'each',
    quantity: splices,
    why: `one at each of ${splices} joints (${FROM}.splices_in)`,
  }
  return { needs: [...sticks, splice], cuts: recordCuts(job, `rail.${railId}`, plan, kerfIn, itemOf) }
}

/** The pieces of all rails; one that no stock is long enough for is divided. */
function railPieces(rails: readonly RailValue[], longestIn: Inches): { pieces: CutPiece[]; split: string[] } {
  const split: string[] = []
  const pieces = rails.flatMap((rail) =>
    rail.pieces_in.flatMap((lengthIn, i): CutPiece[] => {
      const name = rail.pieces_in.length === 1 ? rail.id : `${rail.id} piece ${i + 1}`
      const parts = Math.ceil(lengthIn / longestIn - 1e-9)
      for (let joint = 1; joint < parts; joint++) split.push(rail.id)
      return Array.from({ length: parts }, (_, part) => ({
        for: parts === 1 ? name : `${name} part ${part + 1}`,
        lengthIn: part < parts - 1 ? longestIn : lengthIn - longestIn * (parts - 1),
      }))
    }),
  )
  return { pieces, split }
}
