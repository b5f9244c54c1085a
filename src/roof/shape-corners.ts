import type { Outline } from '../project/index.js'
import { StageError } from '../worksheet/index.js'
import type { EdgeKind, OutlineCornerFt } from './plane-edge.js'
import type { Feet } from '../values/index.js'

/** Corners of a stated shape, counter-clockwise; throws a StageError for a missing or impossible size. */
export function shapeCorners(outline: Outline, path: string): OutlineCornerFt[] {
  switch (outline.shape) {
    case 'rectangle':
      return trapezoid(outline, path, { ridgeFt: need(outline, 'width_ft', path), offsetFt: 0, side: 'rake' })
    case 'hip': {
      const ridgeFt = need(outline, 'ridge_ft', path)
      const offsetFt = outline.ridge_offset_ft ?? (need(outline, 'width_ft', path) - ridgeFt) / 2
      return trapezoid(outline, path, { ridgeFt, offsetFt, side: 'hip' })
    }
    case 'triangle': {
      const offsetFt = outline.ridge_offset_ft ?? need(outline, 'width_ft', path) / 2
      return trapezoid(outline, path, { ridgeFt: 0, offsetFt, side: 'hip' })
    }
    case 'l_shape':
      return lShape(outline, path)
    case 'polygon':
      break
  }
  if (outline.corners !== undefined) {
    return outline.corners.map((corner) => ({ xFt: corner.x_ft, yFt: corner.y_ft, edge: corner.edge }))
  }
  throw new StageError(`${path}.corners`, 'a polygon needs corners', 'List them counter-clockwise from the eave.')
}

type Length = 'width_ft' | 'depth_ft' | 'ridge_ft' | 'notch_width_ft' | 'notch_depth_ft'

function need(outline: Outline, key: Length, path: string): number {
  const value = outline[key]
  if (value !== undefined) return value
  throw new StageError(
    `${path}.${key}`,
    `a ${outline.shape} outline needs ${key}`,
    'Measure it along the roof surface.',
  )
}

function trapezoid(
  outline: Outline,
  path: string,
  top: { readonly ridgeFt: Feet; readonly offsetFt: Feet; readonly side: 'rake' | 'hip' },
): OutlineCornerFt[] {
  const widthFt = need(outline, 'width_ft', path)
  const depthFt = need(outline, 'depth_ft', path)
  const left = outline.left_edge ?? top.side
  const right = outline.right_edge ?? top.side
  const eave: OutlineCornerFt[] = [
    { xFt: 0, yFt: 0, edge: 'eave' },
    { xFt: widthFt, yFt: 0, edge: right },
  ]
  if (top.ridgeFt === 0) return [...eave, { xFt: top.offsetFt, yFt: depthFt, edge: left }]
  return [
    ...eave,
    { xFt: top.offsetFt + top.ridgeFt, yFt: depthFt, edge: outline.upper_edge ?? 'ridge' },
    { xFt: top.offsetFt, yFt: depthFt, edge: left },
  ]
}

function lShape(outline: Outline, path: string): OutlineCornerFt[] {
  const [w, d] = [need(outline, 'width_ft', path), need(outline, 'depth_ft', path)]
  const [nw, nd] = [need(outline, 'notch_width_ft', path), need(outline, 'notch_depth_ft', path)]
  if (outline.notch_at === undefined) {
    throw new StageError(
      `${path}.notch_at`,
      'an l_shape outline needs notch_at',
      'State the missing corner: lower_left, lower_right, upper_left or upper_right.',
    )
  }
  if (nw >= w || nd >= d) {
    throw new StageError(
      path,
      `the missing corner (${nw} by ${nd} ft) leaves nothing of a plane of ${w} by ${d} ft`,
      'State notch_width_ft below width_ft and notch_depth_ft below depth_ft.',
    )
  }
  const [left, right, upper] = [
    outline.left_edge ?? 'rake',
    outline.right_edge ?? 'rake',
    outline.upper_edge ?? 'ridge',
  ]
  return {
    lower_left: [
      at(nw, 0, 'eave'),
      at(w, 0, right),
      at(w, d, upper),
      at(0, d, left),
      at(0, nd, 'eave'),
      at(nw, nd, left),
    ],
    lower_right: [
      at(0, 0, 'eave'),
      at(w - nw, 0, right),
      at(w - nw, nd, 'eave'),
      at(w, nd, right),
      at(w, d, upper),
      at(0, d, left),
    ],
    upper_right: [
      at(0, 0, 'eave'),
      at(w, 0, right),
      at(w, d - nd, upper),
      at(w - nw, d - nd, right),
      at(w - nw, d, upper),
      at(0, d, left),
    ],
    upper_left: [
      at(0, 0, 'eave'),
      at(w, 0, right),
      at(w, d, upper),
      at(nw, d, left),
      at(nw, d - nd, upper),
      at(0, d - nd, left),
    ],
  }[outline.notch_at]
}

function at(xFt: number, yFt: number, edge: EdgeKind): OutlineCornerFt {
  return { xFt, yFt, edge }
}
