import type { Project } from '../../project/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { PriceList } from '../price-list/price-list-types.generated.js'
import type { PricedGoods } from './price-goods.js'
import { laterIncentives } from './purchase-incentives.js'

const WHERE = 'materials.price_list'

/** Findings about prices: missing, ranges, packs that do not fit, and days that are over. */
export function tellPrices(
  goods: PricedGoods,
  list: PriceList | undefined,
  project: Project,
  worksheet: Worksheet,
): void {
  if (list === undefined) {
    worksheet.find({
      severity: 'warning',
      id: 'materials.no-price-list',
      message: `no price list is given, so none of the ${goods.missing.length} items has a price`,
      where: WHERE,
      fix: 'Write one to fill in with --blank-list, and name it under materials.price_list',
    })
    return
  }
  if (list.invented === true)
    worksheet.find({
      severity: 'note',
      id: 'materials.prices-invented',
      message: `the prices of ${list.supplier} are invented`,
      where: WHERE,
    })
  if (goods.missing.length > 0)
    worksheet.find({
      severity: 'warning',
      id: 'materials.price-missing',
      message: `no price for ${goods.missing.join(', ')}; the totals have no upper end`,
      where: WHERE,
      fix: 'Add usd to these items, or usd_low and usd_high when you only know a range',
    })
  if (goods.ranges.length > 0)
    worksheet.find({
      severity: 'note',
      id: 'materials.price-is-a-range',
      message: `only a range of prices is known for ${goods.ranges.join(', ')}; the totals take the high end`,
      where: WHERE,
      fix: 'Ask the supplier for a price',
    })
  for (const { id, message } of goods.misfits)
    worksheet.find({
      severity: 'warning',
      id: 'materials.pack-does-not-fit',
      message,
      where: WHERE,
      fix: `Sell ${id} by foot or spool when it is needed in ft, by stick, each or box otherwise`,
    })
  tellDays(goods, project.document?.date, worksheet)
}

function tellDays(goods: PricedGoods, day: string | undefined, worksheet: Worksheet): void {
  const dated = goods.used.filter(({ validUntil }) => validUntil !== undefined)
  if (day === undefined) {
    if (dated.length > 0)
      worksheet.find({
        severity: 'note',
        id: 'materials.prices-not-dated',
        message: `${dated.length} prices hold until a day, but the project has no date to compare with`,
        where: 'document.date',
        fix: 'State document.date',
      })
    return
  }
  // Days as year-month-day compare as text.
  const over = new Map<string, string[]>()
  for (const { id, validUntil } of dated)
    if (validUntil !== undefined && validUntil < day) over.set(validUntil, [...(over.get(validUntil) ?? []), id])
  for (const [validUntil, ids] of over)
    worksheet.find({
      severity: 'warning',
      id: 'materials.price-expired',
      message: `the price of ${[...new Set(ids)].join(', ')} held until ${validUntil}, the project is of ${day}`,
      where: WHERE,
      fix: 'Ask the supplier for prices that still hold',
    })
}

/** What is not on the bill because the project does not state it, or because no result knows it. */
export function tellNotCounted(project: Project, hasWiring: boolean, worksheet: Worksheet): void {
  const { materials } = project
  if (hasWiring)
    worksheet.find({
      severity: 'note',
      id: 'materials.not-in-geometry',
      message:
        'elbows of raceways, leads from the last module to the first box, and supports of boxes are not in the geometry and therefore not counted',
      where: 'materials.extra_items',
      fix: 'Add them under materials.extra_items, with the ids that price-bom prints where it has them',
    })
  const absent = [
    ...(materials?.labour === undefined ? ['labour'] : []),
    ...(materials?.fees === undefined ? ['fees'] : []),
    ...(materials?.sales_tax_pct === undefined ? ['sales_tax_pct'] : []),
  ]
  if (absent.length > 0)
    worksheet.find({
      severity: 'note',
      id: 'materials.not-counted',
      message: `not stated and therefore not counted: ${absent.join(', ')}`,
      where: 'materials',
      fix: 'State them under materials; 0 says that there are none',
    })
  const later = laterIncentives(project.incentives)
  if (later.length > 0)
    worksheet.find({
      severity: 'note',
      id: 'materials.incentives-later',
      message: `${later.join(', ')} come later or depend on taxes or output, so they are in the payback and not in the net cost here`,
      where: 'incentives',
    })
}
