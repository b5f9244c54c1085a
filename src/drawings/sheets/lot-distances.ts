import { xy, type XY } from '../model/index.js'
import type { Feet } from '../../values/index.js'

/** The shortest way from a building to one lot line. */
export interface LotDistance {
  readonly from: XY
  readonly to: XY
  readonly lengthFt: Feet
}

/** For every lot line the nearest corner of the building and the foot of its perpendicular, when that lies on the line. */
export function lotDistances(lot: readonly XY[], building: readonly XY[]): LotDistance[] {
  return lot.flatMap((a, index) => {
    const b = lot[(index + 1) % lot.length] ?? a
    const length = Math.hypot(b.x - a.x, b.y - a.y)
    if (length === 0) return []
    const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length]
    const found = building.flatMap((corner): LotDistance[] => {
      const along = (corner.x - a.x) * ux + (corner.y - a.y) * uy
      if (along < 0 || along > length) return []
      const to = xy(a.x + along * ux, a.y + along * uy)
      return [{ from: corner, to, lengthFt: Math.hypot(corner.x - to.x, corner.y - to.y) }]
    })
    const least = Math.min(...found.map((each) => each.lengthFt))
    const nearest = found.filter((each) => each.lengthFt < least + 0.01)
    // A wall along the lot line is measured from its middle.
    const middle = (points: readonly XY[]): XY =>
      xy(
        points.reduce((sum, each) => sum + each.x, 0) / points.length,
        points.reduce((sum, each) => sum + each.y, 0) / points.length,
      )
    if (nearest.length === 0 || least < 0.01) return []
    return [
      { from: middle(nearest.map((each) => each.from)), to: middle(nearest.map((each) => each.to)), lengthFt: least },
    ]
  })
}
