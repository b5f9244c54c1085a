import type { Finance } from '../../project/index.js'
import { HIGH_ESCALATION_PCT } from '../../tables/money/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'

/** Parts of a rate sheet whose prices may go their own ways. */
export const PRICE_PARTS = ['energy', 'fixed', 'export'] as const
export type PricePart = (typeof PRICE_PARTS)[number]

/** Real price of each year relative to the purchase year, year 1 first. */
export type PriceParts = Readonly<Record<PricePart, readonly number[]>>

/**
 * The price path of each part; what is not stated follows the general index.
 *
 * @param general Real price of electricity relative to the purchase year, year 1 first.
 * @returns Undefined when the project states no path.
 * @throws StageError when a part states no path, or two.
 */
export function priceParts(
  { price_path: path }: Finance,
  general: readonly number[],
  worksheet: Worksheet,
): PriceParts | undefined {
  if (path === undefined) return undefined
  const read = (part: PricePart): readonly number[] => {
    const change = path[part]
    if (change === undefined) return general
    const where = `finance.price_path.${part}`
    const { real_pct_per_year: pct, relative_by_year: list } = change
    if ((pct === undefined) === (list === undefined)) {
      throw new StageError(
        where,
        `the path states ${pct === undefined ? 'neither' : 'both'} real_pct_per_year ${pct === undefined ? 'nor' : 'and'} relative_by_year`,
        'State one of them.',
      )
    }
    if (pct !== undefined && pct > HIGH_ESCALATION_PCT && part !== 'fixed') {
      worksheet.find({
        severity: 'warning',
        id: 'payback.escalation-high',
        message: `${part === 'energy' ? 'energy' : 'exported energy'} is taken to rise ${String(pct)} % a year above inflation, to ${((1 + pct / 100) ** general.length).toFixed(1)} times its price in ${String(general.length)} years; savings and payback rest on it`,
        where,
        fix: 'State the rise ABOVE inflation: published central values run from -0.5 to +0.1 % a year.',
      })
    }
    if (list !== undefined && list.length > general.length) {
      worksheet.find({
        severity: 'note',
        id: 'payback.path-after-study',
        message: `the path has ${String(list.length)} years and the study ${String(general.length)}; the later ones count for nothing`,
        where: `${where}.relative_by_year`,
      })
    }
    return general.map((_, i) =>
      list === undefined ? (1 + (pct ?? 0) / 100) ** (i + 1) : (list[i] ?? list.at(-1) ?? 1),
    )
  }
  return { energy: read('energy'), fixed: read('fixed'), export: read('export') }
}
