import type { Source } from '../../worksheet/index.js'
import type { NominalSize } from './lumber.js'

export type LumberGrade = 'Select Structural' | 'No. 1' | 'No. 2' | 'No. 3'

type ByGrade = Readonly<Record<LumberGrade, number>>

const grades = (select: number, no1: number, no2: number, no3: number): ByGrade => ({
  'Select Structural': select,
  'No. 1': no1,
  'No. 2': no2,
  'No. 3': no3,
})

/**
 * Reference design value Fb in bending of dimension lumber, psi, before the size factor.
 *
 * Redwood holds the lower values (open grain), Hem-Fir (North) the smaller of its own and Hem-Fir, as its values were changed
 * in 2025.
 *
 * @source NDS Supplement 2018 table 4A (secondary: two open encodings; Western Cedars Select Structural and No. 3, Douglas
 *   Fir-Larch (North) and Hem-Fir (North) from memory)
 */
export const BENDING_PSI: Readonly<Record<string, ByGrade>> = {
  'Douglas Fir-Larch': grades(1500, 1000, 900, 525),
  'Douglas Fir-Larch (North)': grades(1350, 850, 850, 475),
  'Douglas Fir-South': grades(1350, 925, 850, 500),
  'Hem-Fir': grades(1400, 975, 850, 500),
  'Hem-Fir (North)': grades(1300, 975, 850, 500),
  'Spruce-Pine-Fir': grades(1250, 875, 875, 500),
  'Spruce-Pine-Fir (South)': grades(1300, 875, 775, 450),
  'Eastern Softwoods': grades(1250, 775, 575, 350),
  'Western Woods': grades(900, 675, 675, 375),
  'Western Cedars': grades(1000, 725, 700, 400),
  Redwood: grades(1100, 775, 725, 425),
}

/**
 * Fb of Southern Pine by size, psi; the size factor is in it.
 *
 * @source Southern Pine use guide with the 2013 values, NDS Supplement 2018 table 4B (secondary)
 */
export const SOUTHERN_PINE_BENDING_PSI: Readonly<Record<NominalSize, ByGrade>> = {
  '2x4': grades(2350, 1500, 1100, 650),
  '2x6': grades(2100, 1350, 1000, 575),
  '2x8': grades(1950, 1250, 925, 525),
  '2x10': grades(1700, 1050, 800, 475),
  '2x12': grades(1600, 1000, 750, 450),
}

/** Size factor CF for Fb, 2 in thick, Select Structural to No. 3. @source NDS Supplement 2018 table 4A (secondary) */
export const BENDING_SIZE_FACTOR: Readonly<Record<NominalSize, number>> = {
  '2x4': 1.5,
  '2x6': 1.3,
  '2x8': 1.2,
  '2x10': 1.1,
  '2x12': 1,
}

/** Repetitive members joined by sheathing, at most this far apart, in. @source NDS 2018 4.3.9 (secondary) */
export const REPETITIVE = { factor: 1.15, mostSpacingIn: 24 } as const

/** Wet service factor for Fb, and the Fb CF up to which it is 1, psi. @source NDS Supplement 2018 table 4A (secondary) */
export const WET_BENDING = { factor: 0.85, oneUpToPsi: 1150 } as const

/** The lowest grade that rafters usually have; No. 3, Stud and Utility lie lower still. */
export const LOWEST_USUAL_GRADE: LumberGrade = 'No. 2'

/** How far the source of a group's values was read. */
export function bendingSource(species: string): Source {
  const fromMemory = ['Douglas Fir-Larch (North)', 'Hem-Fir (North)', 'Western Cedars'].includes(species)
  const table = species === 'Southern Pine' ? '4B' : '4A'
  return {
    document: 'NDS 2018 with its Supplement',
    place: `3.3 and table ${table}`,
    standing: fromMemory ? 'from memory' : 'secondary',
  }
}
