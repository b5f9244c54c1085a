import type { OverheadValues } from '../../electrical/index.js'
import { SAFETY_FIGURES as FIGURES } from '../../tables/fieldwork/index.js'
import type { PlanSystem } from './plan-system.js'

/** The rule of overhead lines, and what it means at this house. */
export function overheadText({ project, wire }: PlanSystem): readonly string[] {
  const rule = `overhead lines are found first: ladder, rail, raceway and people keep ${FIGURES.lineDistanceFt} ft away (up to ${FIGURES.lineDistanceUpToKv} kV, more above); where that cannot be, the utility covers or cuts them`
  const lines = project.site.overhead_lines
  if (lines === undefined)
    return [
      `${rule}. The project does not say whether there are any (site.overhead_lines): look before anything is carried`,
    ]
  if (lines === 'none')
    return [`${rule}. The project says that there are none near; look again before anything is carried`]
  const names = Object.keys(lines).join(', ')
  const work = (wire?.overhead ?? []).filter(({ kind }) => kind === 'work')
  if (work.length === 0)
    return [
      `${rule}. Here: ${names}`,
      `how near ${names} comes to people and ladders was not worked out: measure from the ground, never with a tape or pole at the line, before anybody climbs`,
    ]
  return [`${rule}. Here: ${names}`, ...work.map(distanceText)]
}

function distanceText(each: OverheadValues): string {
  const ft = (Math.floor((each.clearance_ft - each.error_ft) * 10 + 1e-6) / 10).toFixed(1)
  const near = `${each.id} comes within ${ft} ft of ${each.what} (${each.to})`
  return each.complies
    ? `${near}; ${each.required_ft.toFixed(1)} ft are kept as long as nothing longer than ${Math.max(0, Number(ft) - each.required_ft).toFixed(1)} ft is held up towards it: rails are carried level and two-handed`
    : `DANGER: ${near}, ${each.required_ft.toFixed(1)} ft are needed: nobody works there before the utility has cut or covered the line and has said so in writing`
}
