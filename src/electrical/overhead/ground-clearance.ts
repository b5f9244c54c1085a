import type { OverheadLine, Project } from '../../project/index.js'
import { planToGround } from '../../scene/index.js'
import type { Point as SpacePoint } from '../../sun/index.js'
import { groundClearances, type GroundClearance } from '../../tables/nec/index.js'
import { containsPoint, signedAreaFt2, type Feet, type Point } from '../../values/index.js'
import type { Clearance } from './roof-clearance.js'
import type { HangingLine } from './span.js'
import type { Surface } from './surfaces.js'

type Over = GroundClearance['over']

/** Least height over each kind of ground that a line crosses; what stands on the ground is judged by itself. */
export function clearancesOverGround(
  project: Project,
  line: OverheadLine,
  hanging: HangingLine,
  surfaces: readonly Surface[],
): ReadonlyMap<Over, Clearance> {
  const least = new Map<Over, Feet>()
  const lower = (over: Over, heightFt: Feet): void => {
    least.set(over, Math.min(heightFt, least.get(over) ?? Infinity))
  }
  const figures = surfaces.flatMap(({ parts }) => parts.map(({ figure }) => figure))
  const groundAt = groundOf(project)
  for (const place of hanging.spans.flat()) {
    const at: Point = { xFt: place.east, yFt: place.north }
    if (!figures.some((figure) => containsPoint(figure, at))) lower(groundAt(at), place.up)
  }
  const end: SpacePoint | undefined = line.kind === 'service_drop' ? hanging.spans.at(-1)?.at(-1) : undefined
  if (end !== undefined) lower('entrance', Math.min(end.up, line.drip_loop_ft ?? Infinity))
  const errorFt = (hanging.levelStepFt / 2) * hanging.steepest
  return new Map(
    [...least].map(([over, clearanceFt]) => {
      const { leastFt: requiredFt, part } = ruleFor(line, over)
      return [over, { clearanceFt, errorFt: over === 'entrance' ? 0 : errorFt, requiredFt, part }]
    }),
  )
}

function ruleFor(line: OverheadLine, over: Over): GroundClearance {
  const asked = over === 'lot' && line.pedestrians_only === true && line.kind === 'service_drop' ? 'entrance' : over
  const rule = groundClearances.find(
    (row) =>
      row.over === asked &&
      line.to_ground_v <= (row.toGroundUpToV ?? Infinity) &&
      (!row.onlyMultiplex || line.cable === 'multiplex'),
  )
  if (rule === undefined) throw new Error(`no clearance over ${asked}`)
  return rule
}

/** What lies at a place: the street beyond its lot line, the driveway, else lots where people live. */
function groundOf(project: Project): (at: Point) => Over {
  const plan = project.site_plan
  const toGround = planToGround(project)
  const lot = (plan?.lot ?? []).map(toGround)
  const driveway = (plan?.driveway ?? []).map(toGround)
  const index = plan?.street?.lot_line
  const [a, b] = index === undefined ? [] : [lot[index - 1], lot[index % lot.length]]
  const side = Math.sign(signedAreaFt2(lot))
  return (at) => {
    if (a !== undefined && b !== undefined && !containsPoint(lot, at)) {
      const beyond = (b.xFt - a.xFt) * (at.yFt - a.yFt) - (b.yFt - a.yFt) * (at.xFt - a.xFt)
      if (beyond * side < 0) return 'street'
    }
    return driveway.length > 0 && containsPoint(driveway, at) ? 'driveway' : 'lot'
  }
}
