import type { StepInput } from '../../worksheet/index.js'
import type { Degrees, Feet, PoundsPerSquareFoot } from '../../values/index.js'
import type { DriftingSnow } from './drift-height.js'
import type { SnowCase } from './snow-case.js'
import { flatRoofSnowPsf, snowSlopeFactor, type SnowOnRoof } from './snow-load.js'

/** Where on a plane a wall or higher roof stands. */
export type PlaneEnd = 'top' | 'eave' | 'side'

/** A higher roof beside the plane, as the person states it. */
export interface HigherRoof {
  readonly id: string
  readonly end: PlaneEnd
  readonly stepFt: Feet
  readonly upperLengthFt: Feet
  /** Of the lower roof, at right angles to the step, ft. */
  readonly lowerLengthFt: Feet
  /** Slope of the higher roof towards the plane, degrees; 0 when it does not fall that way. */
  readonly upperSlopeDeg: Degrees
  readonly upperEaveToRidgeFt: Feet
  readonly upperSlippery: boolean
  readonly gapFt: Feet
}

/** A parapet or another wall above the plane. */
export interface Parapet {
  readonly id: string
  readonly end: PlaneEnd
  readonly heightFt: Feet
  readonly lengthFt: Feet
  readonly fetchFt: Feet
}

/** All that decides how snow may lie on one plane. */
export interface SnowOnPlane {
  readonly plane: string
  /** At the level of the ground snow that the person stated. */
  readonly snow: SnowOnRoof
  /** Snow at the level of the edition's maps over snow at the stated level: 1, or 1 / 0.7. */
  readonly mapsOverStated: number
  /** W2; undefined when not stated. */
  readonly winterWind: number | undefined
  /** Eave to ridge, horizontal, ft. */
  readonly depthFt: Feet
  /** Undefined where the plane has no ridge or hip. */
  readonly ridge: { readonly framing: 'rafter' | 'continuous rafter' | 'truss'; readonly windwardFt: Feet } | undefined
  readonly higherRoofs: readonly HigherRoof[]
  readonly parapets: readonly Parapet[]
  readonly overhangFt: Feet
  /** Whether heat from below may make ice dams at the eave. */
  readonly iceDams: boolean
  /** Horizontal spans of the rafters above the overhang, from the wall up, ft. */
  readonly spansFt: readonly Feet[]
}

export type SnowKind =
  | 'balanced'
  | 'minimum'
  | 'rain on snow'
  | 'unbalanced'
  | 'drift'
  | 'sliding'
  | 'ice dam'
  | 'partial'

/** A case with what a worksheet says of it. */
export interface WorkedSnow {
  readonly kind: SnowKind
  /** At the level of the stated ground snow. */
  readonly snowCase: SnowCase
  readonly says: string
  readonly formula: string
  readonly inputs: readonly StepInput[]
  /** Section of the load standard. */
  readonly place: string
  readonly standing?: 'from memory'
  readonly limits?: string
}

/** Balanced snow at the level of the edition's maps. */
export interface BaseSnow extends DriftingSnow {
  /** pf. */
  readonly flatPsf: PoundsPerSquareFoot
  /** ps: Cs pf, or what the authority prescribes at least; without the uniform load of low slopes. */
  readonly balancedPsf: PoundsPerSquareFoot
}

/** Ground, flat-roof and balanced snow of a plane at the level of the edition's maps. */
export function baseSnow({ snow, mapsOverStated, winterWind }: SnowOnPlane): BaseSnow {
  const flatPsf = flatRoofSnowPsf(snow) * mapsOverStated
  const factor = snowSlopeFactor(snow.tiltDeg, { ...snow, surface: 'other' })
  return {
    edition: snow.edition,
    groundPsf: snow.groundPsf * mapsOverStated,
    winterWind: snow.edition === 'ASCE 7-22' ? winterWind : undefined,
    flatPsf,
    balancedPsf: Math.max(factor * flatPsf, snow.minimumPsf * mapsOverStated),
  }
}

/** Ground snow as an input of a step. */
export function groundInput({ groundPsf }: BaseSnow): StepInput {
  return { symbol: 'pg', value: groundPsf, unit: 'psf', from: 'structure.snow.ground_psf' }
}

/** Balanced snow as an input of a step. */
export function balancedInput({ balancedPsf }: BaseSnow, { plane }: SnowOnPlane): StepInput {
  return { symbol: 'ps', value: balancedPsf, unit: 'psf', from: `structure.${plane}.snow-case.balanced` }
}

/** W2 as an input of a step, in the edition that has it. */
export function windInput({ winterWind }: BaseSnow): StepInput[] {
  if (winterWind === undefined) return []
  return [{ symbol: 'W2', value: winterWind, unit: '', from: 'structure.snow.winter_wind_parameter' }]
}
