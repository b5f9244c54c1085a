import type { ArrangedPlane, KeepOut } from '../../roof/index.js'
import { degreesOf, radiansOf } from '../../values/index.js'
import { feetInches, label, TYPE_PT } from '../layout/index.js'
import { cornersOf, xy, type Box, type Hatch, type Primitive, type XY } from '../model/index.js'
import { clippedTo, toXY } from './plane-figures.js'

const SETBACK: Hatch = { angleDeg: 45, gapPt: 5 }
const PATHWAY: Hatch = { angleDeg: 135, gapPt: 4, cross: true }

/** A strip along an edge, or below a rescue opening, that stays free. */
export function strip(keepOut: KeepOut, outline: readonly XY[]): Primitive[] {
  if (keepOut.kind !== 'edge' && keepOut.kind !== 'rescue-opening') return []
  if (keepOut.kind === 'edge' && keepOut.clearanceIn === 0) return []
  const points = clippedTo(outline, keepOut.corners.map(toXY))
  if (points.length < 3) return []
  return [{ kind: 'path', points, closed: true, pen: 'thin', dash: 'dashed', hatch: SETBACK }]
}

/** Fire access pathways with their widths, named in the part of the plane that is drawn. */
export function pathways(plane: ArrangedPlane, outline: readonly XY[], region: Box | undefined): Primitive[] {
  return plane.pathways.flatMap((pathway) =>
    pathway.figures.flatMap((figure, index) => {
      const points = clippedTo(outline, figure.map(toXY))
      if (points.length < 3) return []
      const hatched: Primitive = { kind: 'path', points, closed: true, pen: 'thin', dash: 'dashed', hatch: PATHWAY }
      if (index > 0) return [hatched]
      const text = `${feetInches(pathway.widthFt)} FIRE ACCESS PATHWAY`
      const shown = region === undefined ? points : clippedTo(points, cornersOf(region))
      if (shown.length < 3) return []
      const middle = shown.reduce((sum, { x, y }) => xy(sum.x + x / shown.length, sum.y + y / shown.length), xy(0, 0))
      const [a, b] = [figure[0] ?? { xFt: 0, yFt: 0 }, figure[1] ?? { xFt: 0, yFt: 1 }]
      const along = pathway.kind === 'straight' ? 90 : degreesOf(Math.atan2(b.yFt - a.yFt, b.xFt - a.xFt))
      const rotationDeg =
        Math.round((along > 90.01 ? along - 180 : along <= -89.99 ? along + 180 : along) * 1000) / 1000
      const turn = radiansOf(rotationDeg)
      const shifts = [0, -40, 40, -80, 80].map((by) => xy(by * Math.cos(turn), -by * Math.sin(turn)))
      const name = label(middle.x, middle.y, text, {
        sizePt: TYPE_PT.small,
        align: 'center',
        valign: 'middle',
        rotationDeg,
        halo: true,
        shifts,
      })
      return [hatched, name]
    }),
  )
}
