import type { LoadEdition } from './edition.js'

/** Figures of the snow cases besides the balanced one that differ from edition to edition. */
export interface SnowRules {
  /** Ground snow of the edition's maps: of 50 years at service level, or at strength level by Risk Category. */
  readonly mapsAre: 'allowable' | 'strength'
  /** Most of the separate uniform load on low slopes, Risk Category II, psf. */
  readonly minimumCapPsf: number
  /** Added for rain on snow, psf. */
  readonly rainPsf: number
  /** Rain counts up to this ground snow, psf. */
  readonly rainUpToPsf: number
  /** Least fetch of a drift on a lower roof or at a parapet, ft. */
  readonly leastFetchFt: number
  /** Least fetch of the drift behind a ridge, ft. */
  readonly leastRidgeFetchFt: number
  /** Width of a windward drift in heights. */
  readonly windwardWidths: number
  /** Whether leeward and windward drift are each a case; otherwise the higher of the two. */
  readonly eachDrift: boolean
  /** Whether a leeward drift need not be higher than 0.6 of the length of the lower roof. */
  readonly capsByLowerRoof: boolean
}

const SERVICE: Omit<SnowRules, 'leastFetchFt' | 'capsByLowerRoof'> = {
  mapsAre: 'allowable',
  minimumCapPsf: 20,
  rainPsf: 5,
  rainUpToPsf: 20,
  leastRidgeFetchFt: 20,
  windwardWidths: 4,
  eachDrift: false,
}

/**
 * @source ASCE 7-10, 7-16 and 7-22 sections 7.3.4, 7.6.1, 7.7.1, 7.8 and 7.10 (secondary: an open calculator specification and two
 *   open snow programs); the fetch of at least 25 ft of 7-10 stands in one of them only, and the larger is the safe side
 */
export const SNOW_RULES: Readonly<Record<LoadEdition, SnowRules>> = {
  'ASCE 7-10': { ...SERVICE, leastFetchFt: 25, capsByLowerRoof: false },
  'ASCE 7-16': { ...SERVICE, leastFetchFt: 20, capsByLowerRoof: true },
  'ASCE 7-22': {
    mapsAre: 'strength',
    minimumCapPsf: 30,
    rainPsf: 8,
    rainUpToPsf: 30,
    leastFetchFt: 0,
    leastRidgeFetchFt: 0,
    windwardWidths: 8,
    eachDrift: true,
    capsByLowerRoof: true,
  },
}

/** Factor of 7-22 from strength to allowable level, on all snow. @source ASCE 7-22 2.4.1 and C7.2 (secondary) */
export const ALLOWABLE_OF_STRENGTH_SNOW = 0.7

/** Most of the separate uniform load on low slopes of 7-22 by Risk Category, psf. @source ASCE 7-22 7.3.4 (secondary) */
export const MINIMUM_SNOW_CAP_7_22_PSF = { I: 25, II: 30, III: 35, IV: 40 } as const

/** Rain counts below a slope in degrees of W / 50, W from eave to ridge in ft. @source ASCE 7-16 7.10 (secondary) */
export const RAIN_SLOPE_DIVISOR = 50

/** Unbalanced snow of gable and hip roofs. @source ASCE 7-16 7.6.1 (secondary, three texts) */
export const UNBALANCED_SNOW = {
  /** Slopes over 1/2 in 12 and up to 7 in 12, degrees. */
  overDeg: 2.38,
  upToPitchIn12: 7,
  /** Rafters that reach from eave to ridge up to this horizontal distance, ft, take the whole ground snow instead. */
  shortFt: 20,
  /** Share of the balanced snow that stays on the windward side. */
  windwardShare: 0.3,
} as const

/** Density of snow, lb/ft3: 0.13 pg + 14, at most 30. @source ASCE 7-16 eq. 7.7-1 (secondary) */
export const SNOW_DENSITY = { perPsf: 0.13, least: 14, most: 30 } as const

/** Height of a drift, ft. @source ASCE 7-16 figure 7.6-1; ASCE 7-22 eq. 7.6-1 (secondary, checked against the commentary examples) */
export const DRIFT_HEIGHT = {
  /** hd = 0.43 lu^(1/3) (pg + 10)^(1/4) - 1.5. */
  service: { factor: 0.43, addedPsf: 10, lessFt: 1.5 },
  /** hd = 1.5 sqrt(pg^0.74 lu^0.70 W2^1.7 / gamma). */
  strength: { factor: 1.5, groundPower: 0.74, fetchPower: 0.7, windPower: 1.7 },
} as const

/** Drifts on lower roofs and at parapets. @source ASCE 7-16 7.7.1, 7.7.2 and 7.8 (secondary) */
export const DRIFT_RULES = {
  /** None where the clear height is less than this share of the balanced snow. */
  leastClearShare: 0.2,
  /** Windward height over leeward height of the same fetch. */
  windwardShare: 0.75,
  /** Width over height of a leeward drift; with the height cut off, h^2 over the clear height. */
  widths: 4,
  /** Most width of a cut-off drift in clear heights. */
  mostClearWidths: 8,
  /** Most of a leeward height over the length of the lower roof. */
  lowerRoofShare: 0.6,
  /** A gap up to this width, ft, and of less than 6 steps lets a leeward drift form. */
  gapFt: 20,
  gapSteps: 6,
  /** Projections and parapets shorter than this make no drift, ft. */
  leastProjectionFt: 15,
} as const

/** No drifts of chapter 7 in 7-22 where ground snow and fetch are both small. @source ASCE 7-22 chapter 7 (secondary, one text) */
export const NO_DRIFTS_7_22: readonly { readonly groundPsf: number; readonly fetchFt: number }[] = [
  { groundPsf: 10, fetchFt: 100 },
  { groundPsf: 5, fetchFt: 300 },
]

/** Snow that slides from a higher roof. @source ASCE 7-16 7.9 (secondary, two texts) */
export const SLIDING_SNOW = {
  /** Slopes over these slide, pitch in 12. */
  slipperyOverPitchIn12: 0.25,
  otherOverPitchIn12: 2,
  /** Share of the flat-roof snow of the higher roof, from eave to ridge. */
  share: 0.4,
  overFt: 15,
} as const

/** Ice dams double the snow on the overhanging eaves of warm roofs. @source ASCE 7-16 7.4.5 (from memory) */
export const ICE_DAM = { factor: 2, coldFromR: { unventilated: 30, ventilated: 20 } } as const

/** A slippery surface counts on a warm roof of 7-10 and 7-16 from this insulation on, h ft2 F / Btu. @source ASCE 7-16 7.4.1 (secondary) */
export const SLIPPERY_FROM_R = { unventilated: 30, ventilated: 20 } as const

/** Snow on the spans of a continuous member: all of it on some, this share on the others. @source ASCE 7-16 7.5.1 (secondary) */
export const PARTIAL_SHARE = 0.5

/** A valley makes intersecting drifts; above this ground snow they are not left out, psf. @source common practice, no source */
export const VALLEY_OVER_PSF = 20

/** Winter wind parameter W2 of the hazard maps of 7-22. @source ASCE 7-22 7.6 (secondary) */
export const WINTER_WIND = { least: 0.25, most: 0.65 } as const
