// Corners of the outlines of roof planes.
import type { Corner } from './bodies.ts'
import type { OutlineInput } from './house-input.ts'

/** Corners of an outline in coordinates of the plane, counter-clockwise. */
export function cornersOf(outline: OutlineInput): Corner[] {
  const [w, d] = [outline.width_ft ?? 0, outline.depth_ft ?? 0]
  switch (outline.shape) {
    case 'rectangle':
      return [
        [0, 0],
        [w, 0],
        [w, d],
        [0, d],
      ]
    case 'hip': {
      const ridge = outline.ridge_ft ?? 0
      const from = outline.ridge_offset_ft ?? (w - ridge) / 2
      return [
        [0, 0],
        [w, 0],
        [from + ridge, d],
        [from, d],
      ]
    }
    case 'triangle':
      return [
        [0, 0],
        [w, 0],
        [outline.ridge_offset_ft ?? w / 2, d],
      ]
    case 'l_shape': {
      const [nw, nd] = [outline.notch_width_ft ?? 0, outline.notch_depth_ft ?? 0]
      switch (outline.notch_at ?? 'upper_right') {
        case 'lower_left':
          return [
            [nw, 0],
            [w, 0],
            [w, d],
            [0, d],
            [0, nd],
            [nw, nd],
          ]
        case 'lower_right':
          return [
            [0, 0],
            [w - nw, 0],
            [w - nw, nd],
            [w, nd],
            [w, d],
            [0, d],
          ]
        case 'upper_left':
          return [
            [0, 0],
            [w, 0],
            [w, d],
            [nw, d],
            [nw, d - nd],
            [0, d - nd],
          ]
        case 'upper_right':
          return [
            [0, 0],
            [w, 0],
            [w, d - nd],
            [w - nw, d - nd],
            [w - nw, d],
            [0, d],
          ]
      }
    }
    case 'polygon':
      return (outline.corners ?? []).map(({ x_ft, y_ft }) => [x_ft, y_ft])
  }
}
