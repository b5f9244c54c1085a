import type { VicinityPoint } from '../project-types.generated.js'
import { own, type Feet } from '../../values/index.js'
import { vicinityFeet } from '../vicinity-feet.js'
import { showNumber } from '../words.js'
import type { Rule } from './rule.js'

/** Points nearer than this are one, ft. */
const NEAREST_FT = 1

/** Streets of the vicinity sketch have some length, and the cross street is one of them. */
export const checkVicinity: Rule = ({ site_plan: plan }, report) => {
  const vicinity = plan?.vicinity
  if (vicinity === undefined) return
  const { streets, cross_street: cross } = vicinity
  for (const [id, { points }] of Object.entries(streets)) {
    for (const [index, point] of points.entries()) {
      const before = points[index - 1]
      if (before === undefined || apartFt(point, before) >= NEAREST_FT) continue
      report(
        ['site_plan', 'vicinity', 'streets', id, 'points', String(index)],
        `the point at ${placeWords(point)} stands where the one before it does; leave one of them out`,
      )
    }
  }
  if (cross !== undefined && own(streets, cross) === undefined)
    report(
      ['site_plan', 'vicinity', 'cross_street'],
      `no '${cross}' under streets; there ${Object.keys(streets).length === 1 ? 'is' : 'are'} ${Object.keys(streets).join(', ')}`,
    )
}

function apartFt(a: VicinityPoint, b: VicinityPoint): Feet {
  const [one, other] = [vicinityFeet(a), vicinityFeet(b)]
  return Math.hypot(one.x - other.x, one.y - other.y)
}

const placeWords = (point: VicinityPoint): string =>
  'x_ft' in point
    ? `${showNumber(point.x_ft)}, ${showNumber(point.y_ft)} ft`
    : `${showNumber(point.x_mi)}, ${showNumber(point.y_mi)} mi`
