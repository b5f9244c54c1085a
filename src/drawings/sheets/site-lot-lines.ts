import type { SitePlan } from '../../project/index.js'
import { feetInches, label, TYPE_PT } from '../layout/index.js'
import { xy, type Primitive, type XY, inCapitals } from '../model/index.js'
import { degreesOf, type Degrees } from '../../values/index.js'

export function street(stated: SitePlan['street'], lot: readonly XY[]): Primitive[] {
  if (stated === undefined) return []
  const a = lot[stated.lot_line - 1]
  const b = lot[stated.lot_line % lot.length]
  if (a === undefined || b === undefined) return []
  const { middle, out, rotationDeg } = beside(a, b, lot)
  return [
    label(middle.x, middle.y, inCapitals(stated.name), {
      sizePt: TYPE_PT.head,
      face: 'bold',
      align: 'center',
      valign: 'middle',
      rotationDeg,
      halo: true,
      maxWidthPt: 150,
      // Farther along the line before it stands aside: a leader to the line would run along it.
      shifts: [0, 60, -60, 120, -120, 180, -180].flatMap((along) =>
        [24, 30, 36].map((by) => shifted(a, b, out, by, along)),
      ),
    }),
  ]
}

export function lotLines(lot: readonly XY[]): Primitive[] {
  return lot.flatMap((a, index) => {
    const b = lot[(index + 1) % lot.length] ?? a
    if (a.x === b.x && a.y === b.y) return []
    const { middle, out, rotationDeg } = beside(a, b, lot)
    return label(middle.x, middle.y, `LOT LINE ${feetInches(Math.hypot(b.x - a.x, b.y - a.y), 1)}`, {
      sizePt: TYPE_PT.small,
      align: 'center',
      valign: 'middle',
      rotationDeg,
      halo: true,
      shifts: [9, 18, 27, 36].flatMap((by) => [0, 50, -50, 100, -100].map((along) => shifted(a, b, out, by, along))),
    })
  })
}

function shifted(a: XY, b: XY, out: XY, by: number, along: number): XY {
  const length = Math.hypot(b.x - a.x, b.y - a.y)
  return xy(out.x * by + ((b.x - a.x) / length) * along, -out.y * by - ((b.y - a.y) / length) * along)
}

/** Middle of a lot line, the direction away from the lot, and the angle of a text along it. */
function beside(a: XY, b: XY, lot: readonly XY[]): { middle: XY; out: XY; rotationDeg: Degrees } {
  const length = Math.hypot(b.x - a.x, b.y - a.y)
  const area = lot.reduce((sum, p, index) => {
    const q = lot[(index + 1) % lot.length] ?? p
    return sum + p.x * q.y - q.x * p.y
  }, 0)
  const side = area > 0 ? 1 : -1
  const angle = degreesOf(Math.atan2(b.y - a.y, b.x - a.x))
  const upright = angle > 90.01 || angle <= -89.99 ? angle + (angle > 0 ? -180 : 180) : angle
  return {
    middle: xy((a.x + b.x) / 2, (a.y + b.y) / 2),
    out: xy((side * (b.y - a.y)) / length, (side * (a.x - b.x)) / length),
    rotationDeg: Math.round(upright * 1000) / 1000,
  }
}
