import {
  INCISED,
  isLumberGrade,
  lumberValues,
  REPETITIVE,
  SIZE_FACTORS,
  TEMPERATURE_ELASTICITY,
  WET_LUMBER,
  type DesignValues,
  type LumberGrade,
  type SizeFactors,
} from '../../tables/nds/index.js'
import { type Inches, type PoundsPerSquareInch } from '../../values/index.js'
import type { FramingSpec } from './framing-spec.js'

/** What the strength of a rafter depends on. */
export type Wood = Pick<
  FramingSpec,
  | 'nominalSize'
  | 'species'
  | 'grade'
  | 'spacingIn'
  | 'breadthIn'
  | 'depthIn'
  | 'wet'
  | 'temperature'
  | 'temperatureFactor'
  | 'incised'
  | 'loadSharing'
>

/** Adjusted design values of a rafter, without load duration and without the stability factors. */
export interface WoodStrength {
  readonly species: string
  readonly grade: LumberGrade
  readonly reference: DesignValues
  readonly factors: {
    /** CF of bending; 1 for Southern Pine. */
    readonly size: number
    readonly repetitive: number
    readonly wetBending: number
    readonly wetShear: number
    readonly wetBearing: number
    readonly temperature: number
    readonly incised: number
  }
  /** Fb CF Cr CM Ct Ci. */
  readonly bendingPsi: PoundsPerSquareInch
  /** Fv CM Ct Ci. */
  readonly shearPsi: PoundsPerSquareInch
  /** Fc-perp CM Ct; no load duration belongs to it. */
  readonly bearingPsi: PoundsPerSquareInch
  /** Fc CF CM Ct Ci. */
  readonly compressionPsi: PoundsPerSquareInch
  /** E CM Ct Ci. */
  readonly elasticityPsi: PoundsPerSquareInch
  /** Emin CM Ct Ci. */
  readonly stabilityPsi: PoundsPerSquareInch
  readonly breadthIn: Inches
  readonly depthIn: Inches
  readonly areaIn2: number
  readonly sectionModulusIn3: number
  readonly momentOfInertiaIn4: number
}

/** A rafter whose design values are held, or why they are not. */
export type Lumber =
  | { readonly values: DesignValues; readonly size: SizeFactors; readonly species: string; readonly grade: LumberGrade }
  | { readonly missing: string }

/**
 * Design values of a species, grade and size; Stud lumber of 8 in and more is taken as No. 3.
 *
 * @returns The reason in words where species, grade or their values are not known.
 * @source NDS Supplement 2018 tables 4A and 4B (secondary)
 */
export function lumberOf({ species, grade, nominalSize }: Pick<Wood, 'nominalSize' | 'species' | 'grade'>): Lumber {
  const held = species === undefined ? undefined : lumberValues(species, nominalSize)
  const missing = [
    ...(species === undefined ? ['the species is not stated'] : []),
    ...(species !== undefined && held === undefined ? [`no design values are held for ${species}`] : []),
    ...(grade === undefined ? ['the grade is not stated'] : []),
  ]
  if (species === undefined || grade === undefined || held === undefined) return { missing: missing.join(' and ') }
  const taken = grade === 'Stud' && SIZE_FACTORS.Stud[nominalSize] === undefined ? 'No. 3' : grade
  const values = isLumberGrade(taken) ? held[taken] : undefined
  const size = isLumberGrade(taken) ? SIZE_FACTORS[taken][nominalSize] : undefined
  if (values === undefined || size === undefined || !isLumberGrade(taken)) {
    return { missing: `${species} of ${nominalSize} does not come in grade ${grade}` }
  }
  // The size factor of Southern Pine is in its values.
  return { values, size: species === 'Southern Pine' ? { bending: 1, compression: 1 } : size, species, grade: taken }
}

/**
 * CM of bending and compression. The standard leaves strengths up to a bound as they are; here those just below it are held at what
 * the bound itself keeps, so that wet wood of a weaker grade never counts for more than that of a stronger one (safe side).
 */
function wetFactor(psi: number, { factor, oneUpToPsi }: { factor: number; oneUpToPsi: number }): number {
  return Math.max(factor * psi, Math.min(psi, factor * oneUpToPsi)) / psi
}

/**
 * Adjusted design values of a rafter on edge.
 *
 * @returns Undefined when species, grade or their values are not known; `lumberOf` says why.
 * @source NDS 2018 chapters 3 and 4 with the Supplement (secondary)
 */
export function woodStrength(wood: Wood): WoodStrength | undefined {
  const lumber = lumberOf(wood)
  if ('missing' in lumber) return undefined
  const { values, size, species, grade } = lumber
  const { breadthIn: b, depthIn: d, temperatureFactor: temperature } = wood
  // Either the repetitive factor speaks of neighbours that help, or a stated share does.
  const isRepetitive = wood.spacingIn <= REPETITIVE.mostSpacingIn && wood.loadSharing === undefined
  const repetitive = isRepetitive ? REPETITIVE.factor : 1
  const wetBelow = (psi: number, rule: { factor: number; oneUpToPsi: number }): number =>
    wood.wet ? wetFactor(psi, rule) : 1
  const wetBending = wetBelow(values.bendingPsi * size.bending, WET_LUMBER.bending)
  const wetCompression = wetBelow(values.compressionPsi * size.compression, WET_LUMBER.compression)
  const [wetShear, wetBearing, wetStiff] = wood.wet
    ? [WET_LUMBER.shear, WET_LUMBER.bearing, WET_LUMBER.elasticity]
    : [1, 1, 1]
  const incised = wood.incised ? INCISED.strength : 1
  const stiff = wetStiff * TEMPERATURE_ELASTICITY[wood.temperature] * (wood.incised ? INCISED.elasticity : 1)
  return {
    species,
    grade,
    reference: values,
    factors: { size: size.bending, repetitive, wetBending, wetShear, wetBearing, temperature, incised },
    bendingPsi: values.bendingPsi * size.bending * repetitive * wetBending * temperature * incised,
    shearPsi: values.shearPsi * wetShear * temperature * incised,
    bearingPsi: values.bearingPsi * wetBearing * temperature,
    compressionPsi: values.compressionPsi * size.compression * wetCompression * temperature * incised,
    elasticityPsi: values.elasticityPsi * stiff,
    stabilityPsi: values.stabilityPsi * stiff,
    breadthIn: b,
    depthIn: d,
    areaIn2: b * d,
    sectionModulusIn3: (b * d ** 2) / 6,
    momentOfInertiaIn4: (b * d ** 3) / 12,
  }
}
