import type { Exposure, LoadEdition } from './edition.js'

export type RoofExposure = 'fully_exposed' | 'partially_exposed' | 'sheltered'

/** Exposure factor Ce. @source ASCE 7-16 table 7.3-1 (secondary) */
export const SNOW_EXPOSURE: Readonly<Record<Exposure, Readonly<Record<RoofExposure, number>>>> = {
  B: { fully_exposed: 0.9, partially_exposed: 1.0, sheltered: 1.2 },
  C: { fully_exposed: 0.9, partially_exposed: 1.0, sheltered: 1.1 },
  D: { fully_exposed: 0.8, partially_exposed: 0.9, sheltered: 1.0 },
}

export type ThermalCondition = 'heated' | 'cold_ventilated' | 'unheated' | 'freezer' | 'greenhouse'

/** Thermal factor Ct of 7-10 and 7-16. @source ASCE 7-16 table 7.3-2 (secondary) */
export const SNOW_THERMAL: Readonly<Record<ThermalCondition, number>> = {
  heated: 1.0,
  cold_ventilated: 1.1,
  unheated: 1.2,
  freezer: 1.3,
  greenhouse: 0.85,
}

/** Slope factor: 1 up to `fullToDeg`, 0 from `noneFromDeg`, straight between. */
export interface SlopeFactorLine {
  readonly surface: 'slippery' | 'other'
  readonly roof: 'warm' | 'between' | 'cold'
  readonly fullToDeg: number
  readonly noneFromDeg: number
}

/** @source ASCE 7-16 figure 7.4-1 (secondary) */
export const SNOW_SLOPE_LINES: readonly SlopeFactorLine[] = [
  { surface: 'slippery', roof: 'warm', fullToDeg: 5, noneFromDeg: 70 },
  { surface: 'slippery', roof: 'between', fullToDeg: 10, noneFromDeg: 70 },
  { surface: 'slippery', roof: 'cold', fullToDeg: 15, noneFromDeg: 70 },
  { surface: 'other', roof: 'warm', fullToDeg: 30, noneFromDeg: 70 },
  { surface: 'other', roof: 'between', fullToDeg: 37.5, noneFromDeg: 70 },
  { surface: 'other', roof: 'cold', fullToDeg: 45, noneFromDeg: 70 },
]

/**
 * Most Ct of a warm roof and of one between; a factor between two lines takes that of the colder roof, which is more snow. In 7-22
 * every factor below 1.2 is between.
 *
 * @source ASCE 7-10 and 7-16 figure 7.4-1 and ASCE 7-22 figure 7.4-1 (secondary)
 */
export const SLOPE_LINE_THERMAL: Readonly<
  Record<LoadEdition, { readonly warmUpTo: number; readonly betweenUpTo: number; readonly betweenIncluded: boolean }>
> = {
  'ASCE 7-10': { warmUpTo: 1.0, betweenUpTo: 1.1, betweenIncluded: true },
  'ASCE 7-16': { warmUpTo: 1.0, betweenUpTo: 1.1, betweenIncluded: true },
  'ASCE 7-22': { warmUpTo: 1.1, betweenUpTo: 1.2, betweenIncluded: false },
}

/** Flat-roof snow over ground snow. @source ASCE 7-16 eq. 7.3-1 (secondary) */
export const FLAT_ROOF_SNOW = 0.7

/** Importance factor Is of Risk Category II; none in 7-22. @source ASCE 7-16 table 1.5-2 (secondary) */
export const SNOW_IMPORTANCE = 1.0

/** Least snow load of gable and hip roofs below this slope, capped. @source ASCE 7-16 7.3.4 (secondary) */
export const LOW_SLOPE_SNOW = { belowDeg: 15, capPsf: 20 } as const

/** Ground snow beyond which the residential code wants engineering, psf. @source IRC 2018 R301.2.3 (from memory) */
export const MAX_GROUND_SNOW_PSF = 70
