import type { Source } from '../../worksheet/index.js'
import type { LumberGrade } from './design-values.js'
import type { NominalSize } from './lumber.js'
import type { SustainedTemperature } from './factors.js'

/** Size factors CF of a nominal size for bending and for compression along the grain. */
export interface SizeFactors {
  readonly bending: number
  readonly compression: number
}

const UPPER: Readonly<Record<NominalSize, SizeFactors>> = {
  '2x4': { bending: 1.5, compression: 1.15 },
  '2x6': { bending: 1.3, compression: 1.1 },
  '2x8': { bending: 1.2, compression: 1.05 },
  '2x10': { bending: 1.1, compression: 1 },
  '2x12': { bending: 1, compression: 1 },
}

const STUD: Readonly<Partial<Record<NominalSize, SizeFactors>>> = {
  '2x4': { bending: 1.1, compression: 1.05 },
  '2x6': { bending: 1, compression: 1 },
}

const NARROW: Readonly<Partial<Record<NominalSize, SizeFactors>>> = { '2x4': { bending: 1, compression: 1 } }

/**
 * CF of 2 in thick lumber by grade; a size that a grade does not come in has none. Stud of 8 in and more is No. 3.
 *
 * @source NDS Supplement 2018 table 4A (secondary: two open encodings; Utility 4 in wide from memory)
 */
export const SIZE_FACTORS: Readonly<Record<LumberGrade, Readonly<Partial<Record<NominalSize, SizeFactors>>>>> = {
  'Select Structural': UPPER,
  'No. 1 & Btr': UPPER,
  'No. 1': UPPER,
  'No. 2': UPPER,
  'No. 3': UPPER,
  Stud: STUD,
  Construction: NARROW,
  Standard: NARROW,
  Utility: NARROW,
}

/** Repetitive members joined by sheathing, at most this far apart, in. @source NDS 2018 4.3.9 (secondary) */
export const REPETITIVE = { factor: 1.15, mostSpacingIn: 24 } as const

/**
 * Wet service factors CM of sawn lumber; the table leaves bending and compression at 1 up to the stated strength with its size factor, psi.
 *
 * @source NDS Supplement 2018 table 4A (secondary: two open encodings)
 */
export const WET_LUMBER = {
  bending: { factor: 0.85, oneUpToPsi: 1150 },
  compression: { factor: 0.8, oneUpToPsi: 750 },
  shear: 0.97,
  bearing: 0.67,
  elasticity: 0.9,
} as const

/** Temperature factor Ct of E and Emin, wet or dry. @source NDS 2018 table 2.3.3 (secondary) */
export const TEMPERATURE_ELASTICITY: Readonly<Record<SustainedTemperature, number>> = {
  up_to_100_f: 1,
  up_to_125_f: 0.9,
  up_to_150_f: 0.9,
}

/** Incising factors Ci. @source NDS 2018 table 4.3.8 (secondary) */
export const INCISED = { strength: 0.8, bearing: 1, elasticity: 0.95 } as const

/**
 * Effective length of a bending member for its unbraced length, by the unbraced length over the depth.
 *
 * @source NDS 2018 table 3.3.3, uniform load on a single span (secondary)
 */
export const UNBRACED_LENGTH = [
  { upToDepths: 7, lengths: 2.06, depths: 0 },
  { upToDepths: 14.3, lengths: 1.63, depths: 3 },
  { upToDepths: Infinity, lengths: 1.84, depths: 0 },
] as const

/** Largest slenderness of a bending member. @source NDS 2018 3.3.3.7 (secondary) */
export const MOST_SLENDERNESS = 50

/** c of the column stability factor for sawn lumber. @source NDS 2018 3.7.1 (secondary) */
export const COLUMN_C = 0.8

/** A notch in the tension side at a support reaches at most this share of the depth. @source NDS 2018 4.4.3, IRC R802.7 (from memory) */
export const DEEPEST_END_NOTCH = 0.25

/**
 * How far the source of a group's values was read.
 *
 * @param chapter Section that the values are used by.
 */
export function lumberSource(species: string, chapter = '3.3 to 3.10'): Source {
  const fromMemory = ['Douglas Fir-Larch (North)', 'Hem-Fir (North)', 'Western Cedars'].includes(species)
  const table = species === 'Southern Pine' ? '4B' : '4A'
  return {
    document: 'NDS 2018 with its Supplement',
    place: `${chapter} and table ${table}`,
    standing: fromMemory ? 'from memory' : 'secondary',
  }
}
