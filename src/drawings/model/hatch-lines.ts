import type { XY } from './geometry.js'
import type { Hatch } from './primitive.js'
import { radiansOf, type Degrees } from '../../values/index.js'

/** Lines of a hatch inside a polygon on paper, cut at its outline (even-odd rule). */
export function hatchLines(polygon: readonly XY[], hatch: Hatch): [XY, XY][] {
  const lines = linesAt(polygon, hatch.angleDeg, hatch.gapPt)
  return hatch.cross === true ? [...lines, ...linesAt(polygon, hatch.angleDeg + 90, hatch.gapPt)] : lines
}

function linesAt(polygon: readonly XY[], angleDeg: Degrees, gapPt: number): [XY, XY][] {
  const turn = radiansOf(-angleDeg)
  const [ux, uy] = [Math.cos(turn), Math.sin(turn)]
  const across = polygon.map((point) => point.y * ux - point.x * uy)
  const along = polygon.map((point) => point.x * ux + point.y * uy)
  const found: [XY, XY][] = []
  const first = Math.ceil(Math.min(...across) / gapPt) * gapPt
  for (let level = first; level < Math.max(...across); level += gapPt) {
    const cuts: number[] = []
    for (const [index, here] of across.entries()) {
      const next = (index + 1) % polygon.length
      const there = across[next] ?? here
      if (here > level === there > level) continue
      const share = (level - here) / (there - here)
      cuts.push((along[index] ?? 0) + share * ((along[next] ?? 0) - (along[index] ?? 0)))
    }
    cuts.sort((a, b) => a - b)
    for (let index = 0; index + 1 < cuts.length; index += 2) {
      const point = (distance: number): XY => ({ x: distance * ux - level * uy, y: distance * uy + level * ux })
      found.push([point(cuts[index] ?? 0), point(cuts[index + 1] ?? 0)])
    }
  }
  return found
}
