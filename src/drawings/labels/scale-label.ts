import type { Primitive, XY } from '../model/index.js'

/**
 * A drawn label at a share of its size, its upper left corner where it was.
 *
 * @param drawn Rectangles, paths and texts of a label.
 */
export function scaleLabel(drawn: readonly Primitive[], corner: XY, share: number): Primitive[] {
  const at = ({ x, y }: XY): XY => ({ x: corner.x + (x - corner.x) * share, y: corner.y + (y - corner.y) * share })
  return drawn.map((each): Primitive => {
    switch (each.kind) {
      case 'text':
        return { ...each, at: at(each.at), sizePt: each.sizePt * share }
      case 'rectangle':
        return { ...each, ...at(each), width: each.width * share, height: each.height * share }
      case 'path':
        return { ...each, points: each.points.map(at) }
      case 'circle':
      case 'dimension':
      case 'leader':
        throw new Error(`a label has no ${each.kind}`)
    }
  })
}
