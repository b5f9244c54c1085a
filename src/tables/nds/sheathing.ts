import type { Source } from '../../worksheet/index.js'

export type SheathingKind = 'osb' | 'plywood' | 'boards'
export type WoodScrewSize = '#10' | '#12' | '#14'
export type SheathingNail = '8d_common' | '8d_box' | '10d_common'

/**
 * Specific gravity of sheathing for withdrawal through its thickness; plywood not all of Douglas fir, boards of spruce-pine-fir.
 *
 * @source NDS table 12.3.3B (from memory)
 */
export const SHEATHING_GRAVITY: Readonly<Record<SheathingKind, number>> = { osb: 0.5, plywood: 0.42, boards: 0.42 }

/** Outer diameter of wood screws, in. @source NDS appendix L, table L3 (secondary) */
export const WOOD_SCREW_DIAMETER_IN: Readonly<Record<WoodScrewSize, number>> = {
  '#10': 0.19,
  '#12': 0.216,
  '#14': 0.242,
}

/** Smooth nails of sheathing: diameter and length, in. @source NDS appendix L, table L4 (secondary) */
export const SHEATHING_NAILS: Readonly<
  Record<SheathingNail, { readonly diameterIn: number; readonly lengthIn: number }>
> = {
  '8d_common': { diameterIn: 0.131, lengthIn: 2.5 },
  '8d_box': { diameterIn: 0.113, lengthIn: 2.5 },
  '10d_common': { diameterIn: 0.148, lengthIn: 3 },
}

/**
 * CM of smooth nails in withdrawal: wood that was over 19 % moist when nailed and dried later, or gets wet in turn, keeps a
 * quarter.
 *
 * @source NDS table 11.3.3 (secondary)
 */
export const NAIL_WITHDRAWAL_WET = { dry: 1, wetted: 0.25 } as const

/** Withdrawal of wood screws through sheathing. */
export const WOOD_SCREW_WITHDRAWAL: Source = {
  document: 'NDS 2018',
  place: 'eq. 12.2-2 through the thickness; gravity of panels, table 12.3.3B, from memory',
  standing: 'secondary',
}

/** Withdrawal of smooth nails from the rafter. */
export const NAIL_WITHDRAWAL: Source = {
  document: 'NDS 2018',
  place: 'eq. 12.2-3, table 11.3.3',
  standing: 'secondary',
}

/** Concentrated load that roof sheathing on its rafters is rated for, lb. @source from memory */
export const SHEATHING_POINT_LOAD_LB = 200

/** Yield over allowable stress of a bent piece of steel. @source AISC 360, chapter F, ASD (from memory) */
export const STEEL_BENDING_FACTOR = 1.67
