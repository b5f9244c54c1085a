import type { LoadEdition } from './edition.js'

/** Seismic design categories of the load standard and, with a figure, of the residential code. */
export type DesignCategory = 'A' | 'B' | 'C' | 'D0' | 'D1' | 'D2' | 'D' | 'E' | 'F'

/** Houses of one or two families below this mapped Ss, g, need no check. @source ASCE 7-16 11.1.2, IBC 1613.1 (secondary, two texts) */
export const EXEMPT_BELOW_SS_G = 0.4

/** From this SDS, g, a house is of category D or more. @source ASCE 7-16 table 11.6-1 (from memory) */
export const CATEGORY_D_FROM_SDS_G = 0.5

/** Least Fa of a site whose class nobody determined. @source ASCE 7-16 11.4.4 (from memory) */
export const LEAST_FA_UNKNOWN_SITE: Readonly<Partial<Record<LoadEdition, number>>> = { 'ASCE 7-16': 1.2 }

/** SDS = 2/3 Fa Ss. @source ASCE 7-16 eq. 11.4-1 and 11.4-3 (secondary) */
export const DESIGN_SHARE = 2 / 3

/** Force on a component over SDS Ip Wp: factor, least and most. @source ASCE 7 eq. 13.3-1 to 13.3-3 (secondary, four texts) */
export const COMPONENT_FORCE = { factor: 0.4, least: 0.3, most: 1.6 } as const

/** Importance factor Ip of what a house has. @source ASCE 7 13.1.3 (secondary) */
export const COMPONENT_IMPORTANCE = 1.0

/**
 * Row of attached modules up to 7-16, "other mechanical or electrical components".
 *
 * @source ASCE 7-16 table 13.6-1 (secondary: two permit calculations that use it)
 */
export const COMPONENT_ROW = { ap: 1.0, rp: 1.5, perHeight: 2 } as const

/** Heights and the building in 7-22. @source ASCE 7-22 13.3.1 (secondary: an open component-force program) */
export const COMPONENT_7_22 = { perHeight: 2.5, leastRmu: 1.3, rmuFactor: 1.1 } as const

/** Vertical earthquake over SDS Wp, together with the horizontal one. @source ASCE 7 13.3.1.2 (secondary) */
export const VERTICAL_SHARE = 0.2

/** Factors of allowable stress design with earthquake. @source ASCE 7 2.4.5 (secondary: two open encodings) */
export const EARTHQUAKE_COMBINATIONS: Readonly<
  Record<LoadEdition, { readonly alone: number; readonly withSnow: number; readonly snow: number }>
> = {
  'ASCE 7-10': { alone: 0.7, withSnow: 0.525, snow: 0.75 },
  'ASCE 7-16': { alone: 0.7, withSnow: 0.525, snow: 0.75 },
  'ASCE 7-22': { alone: 0.7, withSnow: 0.525, snow: 0.1 },
}

/** Dead load that holds against earthquake. @source ASCE 7 2.4.5 (secondary) */
export const DEAD_AGAINST_EARTHQUAKE = 0.6

/** Flat-roof snow above `overPsf` adds a share of itself to the weight of a building. @source ASCE 7 12.7.2 (secondary, one text) */
export const SNOW_IN_WEIGHT: Readonly<Record<LoadEdition, { readonly overPsf: number; readonly share: number }>> = {
  'ASCE 7-10': { overPsf: 30, share: 0.2 },
  'ASCE 7-16': { overPsf: 30, share: 0.2 },
  'ASCE 7-22': { overPsf: 45, share: 0.15 },
}

/** A component of this share of the building's weight is a structure of its own. @source ASCE 7-05 13.1.5 (read); 7-22 (secondary) */
export const NONBUILDING_SHARE: Readonly<Record<LoadEdition, number>> = {
  'ASCE 7-10': 0.25,
  'ASCE 7-16': 0.25,
  'ASCE 7-22': 0.2,
}
