import type { Box, DrawnSymbol, Primitive, Viewport, XY } from '../model/index.js'

/** Height of the text of dimensions and leaders that state none, in units of the layout. */
const NOTE_SIZE = 7

const point = ({ x, y }: XY, by: number): XY => ({ x: x * by, y: y * by })

/** A box in units of the layout as a box on paper, points. */
export function enlargedBox(box: Box, by: number): Box {
  return { x: box.x * by, y: box.y * by, width: box.width * by, height: box.height * by }
}

/** A drawing to scale, laid out in units of the layout, on paper; what it draws keeps its size in feet. */
export function enlargedViewport(viewport: Viewport, by: number): Viewport {
  return {
    ...viewport,
    scalePtPerFt: viewport.scalePtPerFt * by,
    originPt: point(viewport.originPt, by),
    box: enlargedBox(viewport.box, by),
    primitives: viewport.primitives.map((each) => sized(each, by)),
  }
}

/** Figures laid out on the paper, as they lie there. Pens, dashes and hatches keep their width; a symbol stays one object. */
export function enlargedPaper(primitives: readonly Primitive[], by: number): Primitive[] {
  const symbols = new Map<DrawnSymbol, DrawnSymbol>()
  return primitives.map((primitive) => {
    const each = enlarged(primitive, by)
    if (each.symbol === undefined) return each
    const symbol = symbols.get(each.symbol) ?? { ...each.symbol, at: point(each.symbol.at, by) }
    symbols.set(each.symbol, symbol)
    return { ...each, symbol }
  })
}

/** A figure laid out on the paper, as it lies there; symbols keep the place that they had. */
export function enlarged(primitive: Primitive, by: number): Primitive {
  const each = sized(primitive, by)
  switch (each.kind) {
    case 'path':
      return { ...each, points: each.points.map((at) => point(at, by)) }
    case 'rectangle':
      return { ...each, ...enlargedBox(each, by) }
    case 'circle':
      return {
        ...each,
        center: point(each.center, by),
        ...(each.radius === undefined ? {} : { radius: each.radius * by }),
      }
    case 'text':
      return { ...each, at: point(each.at, by) }
    case 'dimension':
      return {
        ...each,
        from: point(each.from, by),
        to: point(each.to, by),
        ...(each.between === undefined ? {} : { between: each.between.map((at) => point(at, by)) }),
      }
    case 'leader':
      return { ...each, tip: point(each.tip, by) }
  }
}

/** Everything of a figure that is stated in points of paper, whatever its place. */
function sized(each: Primitive, by: number): Primitive {
  switch (each.kind) {
    case 'path':
    case 'rectangle':
      return each
    case 'circle':
      return each.radiusPt === undefined ? each : { ...each, radiusPt: each.radiusPt * by }
    case 'text':
      return {
        ...each,
        sizePt: each.sizePt * by,
        ...(each.maxWidthPt === undefined ? {} : { maxWidthPt: each.maxWidthPt * by }),
        ...(each.shifts === undefined ? {} : { shifts: each.shifts.map((shift) => point(shift, by)) }),
      }
    case 'dimension':
      return { ...each, offsetPt: each.offsetPt * by, sizePt: (each.sizePt ?? NOTE_SIZE) * by }
    case 'leader':
      return {
        ...each,
        reachPt: point(each.reachPt, by),
        sizePt: (each.sizePt ?? NOTE_SIZE) * by,
        ...(each.maxWidthPt === undefined ? {} : { maxWidthPt: each.maxWidthPt * by }),
      }
  }
}
