import type { BomValues } from '../materials/index.js'
import type { Result } from '../worksheet/index.js'

/** Total of a bill before incentives, USD, as incentives are worked out with their dates; null when prices are missing. */
export function totalOf({ values }: Result<BomValues>): number | null {
  const { gross_usd: grossUsd } = values.totals
  return typeof grossUsd === 'number' && Number.isFinite(grossUsd) ? grossUsd : null
}
