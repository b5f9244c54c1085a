import type { Obstacle, Project } from '../../project/index.js'
import { footprint, isAtPlace, planToGround } from '../../scene/index.js'
import { radiansOf } from '../../values/index.js'
import { label, TYPE_PT } from '../layout/index.js'
import { boundsOf, xy, type Box, type Primitive, type XY } from '../model/index.js'
import { planPoint } from './plan-frame.js'

/** Trees and other things at places of the plan, with their heights: round ones as circles, others by their corners. */
export function obstacleFigures(project: Project, sheet: Box): Primitive[] {
  return placed(project).flatMap(([id, obstacle]): Primitive[] => {
    const corners = cornersOf(project, obstacle)
    const box = boundsOf(corners)
    const middle = xy(box.x + box.width / 2, box.y + box.height / 2)
    if (!isOn(sheet, middle)) return []
    const isRound = obstacle.at !== undefined && obstacle.length_ft === undefined
    const shape: Primitive = isRound
      ? {
          kind: 'circle',
          center: planPoint(obstacle.at!),
          radius: (obstacle.width_ft ?? 0) / 2,
          pen: 'thin',
          dash: 'hidden',
        }
      : { kind: 'path', points: corners, closed: true, pen: 'thin', dash: 'hidden' }
    return [
      shape,
      label(middle.x, middle.y, `${id.replaceAll('_', ' ')}, ${obstacle.height_ft} ft high`, {
        sizePt: TYPE_PT.small,
        align: 'center',
        valign: 'middle',
        halo: true,
        shifts: [0, 10, -10, 20, -20].map((dy) => xy(0, dy)),
      }),
    ]
  })
}

/** What stands beyond the sheet and shades the modules is told in words. */
export function obstaclesBeyond(project: Project, sheet: Box): string[] {
  return placed(project).flatMap(([id, obstacle]) => {
    const box = boundsOf(cornersOf(project, obstacle))
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
    if (isOn(sheet, xy(x, y))) return []
    return `Beyond this sheet: ${id.replaceAll('_', ' ')}, ${obstacle.height_ft} ft high, its middle at x ${x.toFixed(0)} ft, y ${y.toFixed(0)} ft from the corner that the plan counts from.`
  })
}

const placed = ({ site }: Project): [string, Obstacle][] =>
  Object.entries(site.obstacles ?? {}).filter(([, obstacle]) => isAtPlace(obstacle))

/** Corners in plan coordinates: the footprint on the ground turned back as the drawing lies. */
function cornersOf(project: Project, obstacle: Obstacle): XY[] {
  const angle = radiansOf(project.site_plan?.up_azimuth_deg ?? 0)
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)]
  return footprint(obstacle, planToGround(project)).map(({ xFt: east, yFt: north }) =>
    xy(east * cos - north * sin, east * sin + north * cos),
  )
}

const isOn = (sheet: Box, { x, y }: XY): boolean =>
  x >= sheet.x && x <= sheet.x + sheet.width && y >= sheet.y && y <= sheet.y + sheet.height
