import type { PlanPoint } from '../project-types.generated.js'
import { showNumber } from '../words.js'
import type { Report, Rule } from './rule.js'

/** Corners nearer than this are one corner, ft. */
const NEAREST_FT = 0.1

/** Figures of the site plan have sides of some length. */
export const checkSitePlan: Rule = ({ site_plan: plan }, report) => {
  if (plan === undefined) return
  checkFigure(['site_plan', 'lot'], plan.lot, report)
  checkFigure(['site_plan', 'driveway'], plan.driveway, report)
  const { street, second_street: second } = plan
  for (const [key, each] of [
    ['street', street],
    ['second_street', second],
  ] as const) {
    if (typeof each !== 'object' || each.lot_line <= plan.lot.length) continue
    report(
      ['site_plan', key, 'lot_line'],
      `is ${each.lot_line}, and the lot has ${plan.lot.length} lines; count from its first corner`,
    )
  }
  if (typeof second === 'object' && street === undefined)
    report(['site_plan', 'second_street'], 'is the other street of a corner lot; state the first as street too')
  else if (typeof second === 'object' && second.lot_line === street?.lot_line)
    report(
      ['site_plan', 'second_street', 'lot_line'],
      `is ${second.lot_line}, as that of street; the streets of a corner lot lie on two lot lines`,
    )
  for (const [id, { corners }] of Object.entries(plan.buildings ?? {})) {
    checkFigure(['site_plan', 'buildings', id, 'corners'], corners, report)
  }
}

function checkFigure(path: readonly string[], corners: readonly PlanPoint[] | undefined, report: Report): void {
  for (const [index, corner] of (corners ?? []).entries()) {
    const before = corners?.at(index - 1)
    if (before === undefined || Math.hypot(corner.x_ft - before.x_ft, corner.y_ft - before.y_ft) >= NEAREST_FT) continue
    const place = `${showNumber(corner.x_ft)}, ${showNumber(corner.y_ft)}`
    report([...path, String(index)], `the corner at ${place} stands where its neighbour does; leave one of them out`)
  }
}
