import type { Point } from '../values/index.js'
import type { Pathway } from './pathways.js'
import type { RailGround } from './rail-ground.js'

/** Where the modules of one array may lie. */
export interface FitArea {
  /** Outline of the plane, ft. */
  readonly corners: readonly Point[]
  /** Convex figures that stay free, pathways left out, ft. */
  readonly keepOuts: readonly (readonly Point[])[]
  /** Sets of pathways of which one must stay free; the first that leaves room for the most modules is taken. */
  readonly choices: readonly (readonly Pathway[])[]
  /** Most modules to place. */
  readonly atMost: number
  /** Rafters and rail rules, where the project states them. */
  readonly ground: RailGround | undefined
}
