import { REVIEW_THRESHOLDS } from '../../../tables/fieldwork/index.js'
import type { ModuleYield } from '../../../yield/index.js'
import type { Period } from '../count-days.js'
import type { ModuleReview } from '../review-values.js'
import { median } from './soiling.js'
import { dateText } from '../../../values/index.js'

/**
 * Each module against its neighbours: what it gave over what its place gives in the estimate, relative to the median.
 *
 * @param expected Modules of the estimate, for the differences of shade and direction between them.
 */
export function reviewModules(
  ids: readonly string[],
  periods: readonly Period[],
  expected: readonly ModuleYield[],
): ModuleReview[] {
  const share = ids.map((id) => expected.find((module) => module.id === id)?.ac_kwh ?? 0)
  const relative = (kwh: readonly (number | undefined)[]): (number | undefined)[] => {
    const scaled = kwh.map((value, at) => (value === undefined || share[at]! <= 0 ? undefined : value / share[at]!))
    const middle = median(scaled.flatMap((value) => value ?? []))
    return scaled.map((value) => (value === undefined || middle <= 0 ? undefined : value / middle))
  }
  const byPeriod = periods.map((period) => relative(period.moduleKwh))
  const sums = ids.map((_, at) => periods.reduce((sum, period) => sum + (period.moduleKwh[at] ?? 0), 0))
  const overall = relative(sums)
  return ids.map((id, at) => {
    let deadFrom: Period | undefined
    let deadDays = 0
    for (let index = periods.length - 1; index >= 0; index -= 1) {
      const value = byPeriod[index]?.[at]
      if (value === undefined) continue
      if (value >= REVIEW_THRESHOLDS.deadModuleShare) break
      deadFrom = periods[index]
      deadDays += deadFrom?.days ?? 0
    }
    const isDead = deadFrom !== undefined && deadDays >= REVIEW_THRESHOLDS.deadModuleDays
    return {
      id,
      measured_kwh: sums[at]!,
      relative_pct: 100 * (overall[at] ?? 0),
      dead_since: isDead ? dateText((deadFrom as Period).firstDay) : null,
    }
  })
}
