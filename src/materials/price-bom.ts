import type { WiringValues } from '../electrical/index.js'
import type { Project } from '../project/index.js'
import type { Arrangement } from '../roof/index.js'
import type { MountValues } from '../structure/index.js'
import { Worksheet, type Result } from '../worksheet/index.js'
import type { PriceList } from './price-list/price-list-types.generated.js'
import { lineValues, type LineValues } from './pricing/bill-line.js'
import { billTotals, type TotalValues } from './pricing/bill-totals.js'
import { otherCosts } from './pricing/other-costs.js'
import { priceBook } from './price-list/price-book.js'
import { priceGoods } from './pricing/price-goods.js'
import { purchaseIncentives } from './pricing/purchase-incentives.js'
import { tellNotCounted, tellPrices } from './pricing/tell-prices.js'
import { recordNeeds, recordTotals } from './record-bill.js'
import type { CutListEntry, CutSummary } from './take-off/cut-record.js'
import { moduleCounts } from './take-off/take-equipment.js'
import { takeOff } from './take-off/take-off.js'
import type { LabelNeed, TakeOffJob } from './take-off/take-off-job.js'
import { ZERO, type Decimal } from '../values/decimal/index.js'
import { own, type Watts } from '../values/index.js'

/** What the bill is made from. A result that is left out makes the bill a lower bound. */
export interface BomInput {
  readonly project: Project
  readonly arrangement: Result<Arrangement>
  readonly mounts?: Result<MountValues> | undefined
  readonly wire?: Result<WiringValues> | undefined
  /** Labels that the permit packet places. */
  readonly labels?: readonly LabelNeed[] | undefined
  readonly prices?: PriceList | undefined
}

/** Values of the stage, with the names that the JSON has. */
export interface BomValues {
  readonly supplier: string | null
  readonly lines: readonly LineValues[]
  /** At the high end of ranges; null where a price is missing. */
  readonly totals: TotalValues
  readonly totals_at_least: TotalValues
  /** Whether every price is known and every part of the job counted. */
  readonly complete: boolean
  readonly rating_w: number
  /** Every stick with its cuts. */
  readonly cut_list: readonly CutListEntry[]
  readonly cut_summaries: readonly CutSummary[]
}

/**
 * What to buy and what it costs, taken from the results of the roof, the mounts and the wiring.
 *
 * @returns Lines in whole packs with their reasons, totals in USD to the cent, and the cut list.
 * @throws StageError when an amount is stated by halves or results are not of the same layout.
 * @limits Elbows of raceways, leads from the last module to its box, and supports of boxes are not in the geometry.
 */
export function priceBom(input: BomInput): Result<BomValues> {
  const { project, arrangement, mounts, wire: wiring, prices } = input
  const worksheet = new Worksheet()
  for (const earlier of [arrangement, mounts, wiring]) if (earlier !== undefined) worksheet.include(earlier)
  const materials = project.materials ?? {}
  const book = prices === undefined ? undefined : priceBook(prices)
  const job: TakeOffJob = {
    project,
    materials,
    arrangement: arrangement.values,
    mounts: mounts?.values,
    wiring: wiring?.values,
    labels: input.labels,
    prices: book,
    worksheet,
  }
  const { needs, cutList, cutSummaries, missing } = takeOff(job)
  recordNeeds(needs, worksheet)
  const goods = priceGoods(needs, book)
  tellPrices(goods, prices, project, worksheet)
  tellNotCounted(project, wiring !== undefined, worksheet)
  if (materials.sales_tax_pct !== undefined && materials.sales_tax_on === undefined)
    worksheet.assume({
      path: 'materials.sales_tax_on',
      value: 'materials',
      unit: '',
      why: 'sales tax is counted on the goods alone where the project does not say otherwise; ask which parts your state taxes',
      source: { document: '', standing: 'common practice, no source' },
    })
  const lines = [...goods.lines, ...otherCosts(materials, goods.lines, prices)]
  const ratingW = dcRatingW(job)
  const incentives = (gross: Decimal): Decimal =>
    purchaseIncentives(project.incentives, gross, ratingW).reduce((sum, each) => sum.plus(each.usd), ZERO)
  const totals = billTotals(lines, missing.length > 0, incentives, ratingW)
  recordTotals(totals, ratingW, worksheet)
  return worksheet.result({
    supplier: prices?.supplier ?? null,
    lines: lines.map(lineValues),
    totals: totals.atMost,
    totals_at_least: totals.atLeast,
    complete: totals.gross.high !== null,
    rating_w: ratingW,
    cut_list: cutList,
    cut_summaries: cutSummaries,
  })
}

function dcRatingW(job: TakeOffJob): Watts {
  const { arrays, equipment } = job.project
  return [...moduleCounts(job)].reduce(
    (sum, [id, { count }]) => sum + count * (own(equipment.modules, own(arrays, id)?.module)?.pmax_w ?? 0),
    0,
  )
}
