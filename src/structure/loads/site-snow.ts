import type { RoofProject } from '../../project/index.js'
import {
  ALLOWABLE_OF_STRENGTH_SNOW,
  ICE_DAM,
  MAX_GROUND_SNOW_PSF,
  SLIPPERY_FROM_R,
  SLOPE_LINE_THERMAL,
  SNOW_THERMAL,
  THERMAL_7_22,
  type Exposure,
  type LoadEdition,
} from '../../tables/asce7/index.js'
import { StageError } from '../../worksheet/index.js'
import type { Feet, PoundsPerSquareFoot } from '../../values/index.js'
import { need } from '../model/index.js'
import { insulatedRoofThermal, type SnowOnRoof } from '../snow/index.js'

/** Snow at the site, for every plane. */
export interface SiteSnow {
  readonly onRoof: Omit<SnowOnRoof, 'tiltDeg'>
  /** Whether the stated ground snow is at allowable level. */
  readonly isAllowable: boolean
  /** Snow at the level of the edition's maps over snow at the stated level. */
  readonly mapsOverStated: number
  readonly winterWind: number | undefined
  /** Whether heat from below may make ice dams; not knowing the insulation counts as yes. */
  readonly iceDams: boolean
  /** Why smooth glass is not counted as slippery, though it was asked for. */
  readonly notSlippery: string | undefined
  /** Insulation that gave Ct by ASCE 7-22 table 7.3-3; undefined where Ct has another source. */
  readonly thermalByR: number | undefined
  /** As stated; undefined when not. */
  readonly oppositeEaveToRidgeFt: Feet | undefined
}

type Structure = NonNullable<RoofProject['structure']>
type Snow = NonNullable<Structure['snow']>

const DEPARTMENT = 'Ask the building department; it is on its list of climatic and geographic design criteria.'

/**
 * Reads the snow of the site.
 *
 * @throws StageError when a safety input is missing or outside the method.
 */
export function siteSnow(structure: RoofProject['structure'], edition: LoadEdition, exposure: Exposure): SiteSnow {
  const { snow, building } = structure ?? {}
  const at = 'structure.snow'
  const groundPsf = groundSnow(snow)
  const roofExposure = need(
    snow?.roof_exposure,
    `${at}.roof_exposure`,
    'the exposure of the roof to wind that takes snow away',
    'partially_exposed for most houses; sheltered among tall conifers; fully_exposed when nothing shelters it.',
  )
  const isAllowable = snowIsAllowable(snow?.ground_basis, edition)
  const mapsOverStated = isAllowable && edition === 'ASCE 7-22' ? 1 / ALLOWABLE_OF_STRENGTH_SNOW : 1
  const onRoof = {
    edition,
    groundPsf,
    exposure,
    roofExposure,
    thermalFactor: thermalFactor(snow, edition, groundPsf * mapsOverStated),
    minimumPsf: snow?.roof_minimum_psf ?? 0,
  }
  return {
    onRoof,
    isAllowable,
    mapsOverStated,
    winterWind: snow?.winter_wind_parameter,
    iceDams: hasIceDams(snow),
    notSlippery: whyNotSlippery(snow, edition, onRoof.thermalFactor),
    thermalByR: thermalByR(snow, edition),
    oppositeEaveToRidgeFt: building?.opposite_eave_to_ridge_ft,
  }
}

function groundSnow(snow: Snow | undefined): PoundsPerSquareFoot {
  const at = 'structure.snow.ground_psf'
  const groundPsf = need(snow?.ground_psf, at, 'the ground snow load', `${DEPARTMENT} State 0 where none is set.`)
  if (groundPsf > MAX_GROUND_SNOW_PSF) {
    throw new StageError(
      at,
      `outside the method: a ground snow load of ${groundPsf} psf is over the ${MAX_GROUND_SNOW_PSF} psf of prescriptive design`,
      'Ask a structural engineer.',
    )
  }
  return groundPsf
}

/** Ct as stated, or by the warmth under the roof; in 7-22 a heated roof by its insulation. */
function thermalFactor(snow: Snow | undefined, edition: LoadEdition, mapGroundPsf: PoundsPerSquareFoot): number {
  if (snow?.thermal_factor !== undefined) return snow.thermal_factor
  const thermal = need(
    snow?.thermal,
    'structure.snow.thermal',
    'the warmth under the roof',
    'cold_ventilated for a ventilated attic with R 25 or more, heated for an insulated slope above rooms, unheated for a garage.',
  )
  if (edition !== 'ASCE 7-22') return SNOW_THERMAL[thermal]
  switch (thermal) {
    case 'heated':
      // The table is of roofs that are not ventilated; a ventilated one takes the largest factor of it.
      return snow?.roof_ventilated === true ? THERMAL_7_22.cold_ventilated : insulatedThermal(snow, mapGroundPsf)
    case 'greenhouse':
      return need<number>(
        undefined,
        'structure.snow.thermal_factor',
        'the thermal factor Ct of a greenhouse in 7-22, which is not held here,',
        'Read it from ASCE 7-22 table 7.3-2, or ask the building department.',
      )
    case 'cold_ventilated':
    case 'unheated':
    case 'freezer':
      return THERMAL_7_22[thermal]
  }
}

function insulatedThermal(snow: Snow | undefined, mapGroundPsf: PoundsPerSquareFoot): number {
  const insulationR = need(
    snow?.roof_insulation_r,
    'structure.snow.roof_insulation_r',
    'the insulation of the heated roof, by which ASCE 7-22 table 7.3-3 gives Ct,',
    'Add the R of all layers between rooms and roof covering, or state thermal_factor.',
  )
  return insulatedRoofThermal(insulationR, mapGroundPsf)
}

/** Insulation by which table 7.3-3 of 7-22 gives Ct: that of heated roofs without ventilation. */
function thermalByR(snow: Snow | undefined, edition: LoadEdition): number | undefined {
  const byTable = edition === 'ASCE 7-22' && snow?.thermal_factor === undefined && snow?.thermal === 'heated'
  return byTable && snow.roof_ventilated !== true ? snow.roof_insulation_r : undefined
}

function isVentilated(snow: Snow | undefined): boolean {
  return snow?.roof_ventilated ?? snow?.thermal === 'cold_ventilated'
}

function hasIceDams(snow: Snow | undefined): boolean {
  if (snow?.thermal === 'unheated' || snow?.thermal === 'freezer') return false
  const kind = isVentilated(snow) ? 'ventilated' : 'unventilated'
  // A cold ventilated roof has R 25 or more by what the word means.
  const insulationR = snow?.roof_insulation_r ?? (snow?.thermal === 'cold_ventilated' ? 25 : 0)
  return insulationR < ICE_DAM.coldFromR[kind]
}

/** A slippery surface on a warm roof counts in 7-10 and 7-16 only above an insulation. */
function whyNotSlippery(snow: Snow | undefined, edition: LoadEdition, thermal: number): string | undefined {
  if (snow?.slippery_modules !== true || edition === 'ASCE 7-22') return undefined
  if (thermal > SLOPE_LINE_THERMAL[edition].warmUpTo + 1e-9) return undefined
  const kind = isVentilated(snow) ? 'ventilated' : 'unventilated'
  const least = SLIPPERY_FROM_R[kind]
  const insulationR = snow.roof_insulation_r
  if (insulationR === undefined)
    return `on a warm roof that is ${kind} it needs R ${least} or more, and roof_insulation_r is not stated`
  return insulationR < least
    ? `on a warm roof that is ${kind} it needs R ${least} or more, and the roof has R ${insulationR}`
    : undefined
}

function snowIsAllowable(basis: Snow['ground_basis'], edition: LoadEdition): boolean {
  if (edition !== 'ASCE 7-22') {
    if (basis !== 'strength') return true
    throw new StageError(
      'structure.snow.ground_basis',
      `${edition} works with allowable ground snow, and this one is at strength level`,
      'Ask the building department for the ground snow load that belongs to the adopted edition.',
    )
  }
  const stated = need(
    basis,
    'structure.snow.ground_basis',
    'whether the ground snow load is allowable or strength level',
    'The maps of 7-22 are strength level; some residential codes print allowable values. Ask the building department.',
  )
  return stated === 'allowable'
}
