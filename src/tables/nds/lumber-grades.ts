import { LUMBER_VALUES, SOUTHERN_PINE_VALUES, type DesignValues, type LumberGrade } from './design-values.js'
import type { NominalSize } from './lumber.js'
import { SIZE_FACTORS } from './wood-factors.js'

/** Values of a species at a size by grade, or undefined when none are held for the species. */
export function lumberValues(
  species: string,
  size: NominalSize,
): Readonly<Partial<Record<LumberGrade, DesignValues>>> | undefined {
  if (species === 'Southern Pine') return SOUTHERN_PINE_VALUES[size]
  return Object.hasOwn(LUMBER_VALUES, species) ? LUMBER_VALUES[species] : undefined
}

export const isLumberGrade = (grade: string): grade is LumberGrade => Object.hasOwn(SIZE_FACTORS, grade)

/** Grades that a species comes in at a size; none when no values are held for it. Stud of 8 in and more is No. 3. */
export function lumberGrades(species: string, size: NominalSize): LumberGrade[] {
  return Object.keys(lumberValues(species, size) ?? {}).filter((grade): grade is LumberGrade => {
    return isLumberGrade(grade) && (grade === 'Stud' || SIZE_FACTORS[grade][size] !== undefined)
  })
}
