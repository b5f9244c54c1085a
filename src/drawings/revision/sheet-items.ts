import { canonicalJson, digestOf } from '../../seal/index.js'
import {
  boundsOf,
  cornersOfMark,
  flattenSheet,
  onPaper,
  type Box,
  type LayerKey,
  type Mark,
  type Primitive,
  type Sheet,
  type Viewport,
  type XY,
} from '../model/index.js'

export const KINDS = ['text', 'figure', 'line'] as const

/** Something on a sheet that can change: what it says, and where it is on paper. */
export interface Item {
  readonly kind: (typeof KINDS)[number]
  readonly key: string
  readonly box: Box
  /** Number of the drawing to scale that it belongs to. */
  readonly view?: number | undefined
}

/** Texts of the body of a sheet, the figures of its drawings to scale, and the lines of its diagrams. */
export function itemsOf(sheet: Sheet): Item[] {
  const { marks } = flattenSheet(sheet.overlay === undefined ? sheet : { ...sheet, overlay: [] })
  return [
    ...textItems(sheet, marks),
    ...sheet.viewports.flatMap((viewport, view) => figureItems(viewport).map((item) => ({ ...item, view }))),
    ...lineItems(marks),
  ]
}

/** Layers of diagrams, which are not to scale. */
const DIAGRAM: ReadonlySet<LayerKey> = new Set(['oneLine', 'oneLineExisting', 'ground'])

/** Lines and symbols of a diagram by form, length and look, so that one that only moves is no change. */
function lineItems(marks: readonly Mark[]): Item[] {
  return marks.flatMap((mark): Item[] => {
    if (mark.kind === 'text' || mark.kind === 'hatch' || mark.view !== undefined || !DIAGRAM.has(mark.layer)) return []
    const corners = cornersOfMark(mark)
    const box = boundsOf(corners)
    const round = (value: number): number => Math.round(value * 10) / 10 + 0
    const form = corners.map(({ x, y }) => [round(x - box.x), round(y - box.y)])
    const { layer, pen, dash, color, fill } = mark
    const key = digestOf([canonicalJson([mark.kind, form, layer, pen ?? '', dash, color, fill ?? ''])]).slice(0, 16)
    return [{ kind: 'line', key, box }]
  })
}

function textItems(sheet: Sheet, marks: readonly Mark[]): Item[] {
  const body = sheet.body ?? sheet.frame
  const blocks = new Map<number, { readonly words: string[]; box: Box; readonly view: number | undefined }>()
  for (const mark of marks) {
    if (mark.kind !== 'text' || mark.at.x > body.x + body.width) continue
    const turned = Math.abs(mark.rotationDeg % 180) > 45
    const size: [number, number] = turned ? [mark.sizePt, mark.widthPt] : [mark.widthPt, mark.sizePt]
    const corner = {
      x: turned ? mark.at.x - mark.sizePt : mark.at.x,
      y: mark.at.y - (turned && mark.rotationDeg < 0 ? 0 : size[1]),
    }
    const box = { ...corner, width: size[0], height: size[1] }
    const known = blocks.get(mark.block)
    if (known === undefined) blocks.set(mark.block, { words: [mark.text], box, view: mark.view })
    else {
      known.words.push(mark.text)
      known.box = union(known.box, box)
    }
  }
  return [...blocks.values()].map(({ words, box, view }) => ({ kind: 'text', key: words.join(' ').trim(), box, view }))
}

/** Figures in the lengths of the thing itself, so that another place on paper is no change. */
function figureItems(viewport: Viewport): Item[] {
  return viewport.primitives.flatMap((primitive): Item[] => {
    const points = pointsOf(primitive)
    if (points.length === 0) return []
    const { pen, dash, color, fill, ...shape } = { pen: '', dash: '', color: '', fill: '', ...primitive }
    const key = digestOf([canonicalJson(JSON.parse(JSON.stringify({ shape, look: [pen, dash, color, fill] })))]).slice(
      0,
      16,
    )
    return [{ kind: 'figure', key, box: boundsOf(points.map((point) => onPaper(viewport, point))) }]
  })
}

/** Corners of a figure; none of a text, which is told as a text. */
function pointsOf(primitive: Primitive): readonly XY[] {
  switch (primitive.kind) {
    case 'path':
      return primitive.points
    case 'rectangle': {
      const { x, y, width, height } = primitive
      return [
        { x, y },
        { x: x + width, y: y + height },
      ]
    }
    case 'circle': {
      const { center, radius = 0 } = primitive
      return [
        { x: center.x - radius, y: center.y - radius },
        { x: center.x + radius, y: center.y + radius },
      ]
    }
    case 'dimension':
      return [primitive.from, primitive.to]
    case 'leader':
      return [primitive.tip]
    case 'text':
      return []
  }
}

export function union(a: Box, b: Box): Box {
  const [x, y] = [Math.min(a.x, b.x), Math.min(a.y, b.y)]
  return {
    x,
    y,
    width: Math.max(a.x + a.width, b.x + b.width) - x,
    height: Math.max(a.y + a.height, b.y + b.height) - y,
  }
}
