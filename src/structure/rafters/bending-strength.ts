import {
  BENDING_PSI,
  BENDING_SIZE_FACTOR,
  LOWEST_USUAL_GRADE,
  REPETITIVE,
  SOUTHERN_PINE_BENDING_PSI,
  WET_BENDING,
  type LumberGrade,
} from '../../tables/nds/index.js'
import type { FramingSpec } from './framing-spec.js'
import type { PoundsPerSquareInch } from '../../values/index.js'

/** Bending strength of a rafter without the load duration factor. */
export interface BendingStrength {
  readonly species: string
  readonly grade: LumberGrade
  /** Why species or grade are not the rafter's own but the lowest usual ones; undefined when they are its own. */
  readonly notStated: string | undefined
  readonly referencePsi: PoundsPerSquareInch
  /** CF of table 4A; 1 for Southern Pine. */
  readonly sizeFactor: number
  readonly repetitiveFactor: number
  readonly wetFactor: number
  readonly temperatureFactor: number
  /** Fb CF Cr CM Ct, psi; times CD it is Fb'. */
  readonly allowablePsi: PoundsPerSquareInch
  /** S, in3. */
  readonly sectionModulusIn3: number
}

type Wood = Pick<
  FramingSpec,
  'nominalSize' | 'species' | 'grade' | 'spacingIn' | 'breadthIn' | 'depthIn' | 'wet' | 'temperatureFactor'
>

/**
 * Bending strength of rafters by species, grade and size.
 *
 * Where the species, its values or the grade are not known, the lowest No. 2 lumber stands in, and `notStated` says so.
 *
 * @source NDS 2018 3.3 and 4.3 with the Supplement's tables 4A and 4B (secondary)
 * @limits CL is 1 (sheathed, ends held): not for hogging over supports of deep rafters, nor for uplift; not incised, loaded on edge.
 */
export function bendingStrength(wood: Wood): BendingStrength {
  const { species, grade, notStated } = lumberOf(wood)
  const isPine = species === 'Southern Pine'
  const values = isPine ? SOUTHERN_PINE_BENDING_PSI[wood.nominalSize] : BENDING_PSI[species]
  const referencePsi = values?.[grade] ?? 0
  const sizeFactor = isPine ? 1 : BENDING_SIZE_FACTOR[wood.nominalSize]
  const repetitiveFactor = wood.spacingIn <= REPETITIVE.mostSpacingIn ? REPETITIVE.factor : 1
  const wetFactor = wood.wet && referencePsi * sizeFactor > WET_BENDING.oneUpToPsi ? WET_BENDING.factor : 1
  return {
    species,
    grade,
    notStated,
    referencePsi,
    sizeFactor,
    repetitiveFactor,
    wetFactor,
    temperatureFactor: wood.temperatureFactor,
    allowablePsi: referencePsi * sizeFactor * repetitiveFactor * wetFactor * wood.temperatureFactor,
    sectionModulusIn3: (wood.breadthIn * wood.depthIn ** 2) / 6,
  }
}

function lumberOf(wood: Wood): Pick<BendingStrength, 'species' | 'grade' | 'notStated'> {
  const { species } = wood
  const isHeld = species === 'Southern Pine' || Object.hasOwn(BENDING_PSI, species ?? '')
  const stated = GRADES.find((grade) => grade === wood.grade)
  const missing = [
    ...(species === undefined ? ['the species is not stated'] : []),
    ...(species !== undefined && !isHeld ? [`no design values are held for ${species}`] : []),
    ...(stated === undefined ? ['the grade is not stated'] : []),
  ]
  const grade = stated ?? LOWEST_USUAL_GRADE
  return {
    species: species !== undefined && isHeld ? species : lowestSpecies(grade),
    grade,
    notStated: missing.length === 0 ? undefined : missing.join(' and '),
  }
}

const GRADES: readonly LumberGrade[] = ['Select Structural', 'No. 1', 'No. 2', 'No. 3']

/** The group with the lowest Fb of a grade. */
function lowestSpecies(grade: LumberGrade): string {
  const ranked = Object.entries(BENDING_PSI).toSorted((a, b) => a[1][grade] - b[1][grade])
  return ranked[0]?.[0] ?? ''
}
