import type { ConductorValues, WiringValues } from '../../electrical/index.js'
import type { Project } from '../../project/index.js'
import type { Leaf, PanelPart } from '../tree/tree-parts.js'
import type { Slots, Wire } from './wires.js'

/** Width of the gear of a service right of its panel, and of the words of another feeder, points. */
const RIGHT_PT = 190
const NARROW_RIGHT_PT = 165
/** Below this width a tap has no room for its words beside it, points. */
const NARROW_PT = 600

/** The same for a strip of this width. */
export const rightPtOf = (widthPt: number): number => (widthPt < NARROW_PT ? NARROW_RIGHT_PT : RIGHT_PT)

/** What the drawers of panels share. */
export interface PanelJob {
  readonly project: Project
  readonly wiring: WiringValues
  readonly slots: Slots
  /** Room right of a panel. */
  readonly rightPt: number
}

/** A panel that is drawn by itself: fed by the service, or by the feeder whose tag is on its flag. */
export interface PanelStrip {
  readonly panel: PanelPart
  readonly fedBy: ConductorValues | 'service' | undefined
  /** Whether the conductors of the service, its meter and its electrode stand at it. */
  readonly first: boolean
  readonly supplySide: readonly Leaf[]
}

/** The wires of a panel whose conductors nobody states. */
export const allWires = (phases: 1 | 3, ground: boolean): Wire[] => [
  ...(phases === 3 ? (['L1', 'L2', 'L3'] as const) : (['L1', 'L2'] as const)),
  'N',
  ...(ground ? (['G'] as const) : []),
]
