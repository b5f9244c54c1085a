import type { LabelMarks } from '../labels/label-marks.js'
import type { Box } from '../model/index.js'

/** Width of the box of a panel, and room right of the panels at the service and left of the last ones, points. */
export const PANEL_PT = 64
const RIGHT_PT = 110
const BESIDE_GUTTER_PT = 16
const LEAF_PT = 162
const GAP_PT = { least: 40, most: 150 } as const

/** Columns of the panels from right to left, and what limits the words beside them. */
export interface TreeRoom {
  readonly box: Box
  /** Where the conductors of the service part to the panels that they feed. */
  readonly gutterX: number
  /** Distance between the boxes of two levels, points. */
  readonly gapPt: number
  /** Left side of the box of a panel; 0 is fed by the service. */
  readonly leftOf: (level: number) => number
  /** Letters of the feeders whose panels stand on another sheet, by id. */
  readonly cuts: ReadonlyMap<string, string>
  /** Numbers of the labels at a place. */
  readonly labels: LabelMarks
}

export function treeRoom(box: Box, depth: number, cuts: ReadonlyMap<string, string>, labels: LabelMarks): TreeRoom {
  const gutterX = box.x + box.width - RIGHT_PT
  const free = box.width - RIGHT_PT - BESIDE_GUTTER_PT - depth * PANEL_PT - LEAF_PT
  const gapPt = depth < 2 ? GAP_PT.most : Math.max(GAP_PT.least, Math.min(GAP_PT.most, free / (depth - 1)))
  return {
    box,
    cuts,
    labels,
    gutterX,
    gapPt,
    leftOf: (level) => gutterX - BESIDE_GUTTER_PT - PANEL_PT - level * (PANEL_PT + gapPt),
  }
}

/** Something drawn, and how far down it reaches. */
export interface Drawn<P> {
  readonly drawn: readonly P[]
  readonly bottom: number
}
