import {
  COMPONENT_7_22,
  COMPONENT_FORCE,
  COMPONENT_IMPORTANCE,
  COMPONENT_ROW,
  type LoadEdition,
} from '../../tables/asce7/index.js'

/** What the force on the array depends on besides its weight. */
export interface ComponentInput {
  readonly edition: LoadEdition
  /** SDS, g. */
  readonly sdsG: number
  /** z/h, 0 to 1. */
  readonly heightRatio: number
  /** CAR and Rpo of 7-22; without both the cap is taken. */
  readonly car?: number | undefined
  readonly rpo?: number | undefined
  /** Rmu of the building in 7-22; that of an unknown one when missing, which is the safe side. */
  readonly buildingRmu?: number
}

/** Horizontal force over weight, strength level. */
export interface ComponentForce {
  readonly perWeight: number
  readonly least: number
  readonly most: number
  readonly formula: string
}

/**
 * Force on the array over its weight, Fp / Wp, in any horizontal direction, strength level.
 *
 * @source ASCE 7-10 and 7-16 eq. 13.3-1 with ap 1.0 and Rp 1.5, at least 0.3 and at most 1.6 SDS Ip; ASCE 7-22 eq. 13.3-1 (secondary)
 * @limits Ip 1.0, modules attached to the roof; period of the building unknown.
 * @example componentForce({ edition: 'ASCE 7-16', sdsG: 1.05, heightRatio: 1 }).perWeight is 0.84
 */
export function componentForce(input: ComponentInput): ComponentForce {
  const { edition, sdsG, heightRatio, car, rpo } = input
  const unit = sdsG * COMPONENT_IMPORTANCE
  const least = COMPONENT_FORCE.least * unit
  const most = COMPONENT_FORCE.most * unit
  const within = (value: number): number => Math.min(most, Math.max(least, value))
  if (edition !== 'ASCE 7-22') {
    const { ap, rp, perHeight } = COMPONENT_ROW
    const perWeight = within((COMPONENT_FORCE.factor * ap * unit * (1 + perHeight * heightRatio)) / rp)
    return { perWeight, least, most, formula: 'Fp / Wp = 0.4 ap SDS Ip (1 + 2 z/h) / Rp, ap 1.0, Rp 1.5' }
  }
  if (car === undefined || rpo === undefined)
    return { perWeight: most, least, most, formula: 'Fp / Wp = 1.6 SDS Ip, the cap, as CAR and Rpo are not stated' }
  const height = 1 + COMPONENT_7_22.perHeight * heightRatio
  const building = Math.max(COMPONENT_7_22.leastRmu, input.buildingRmu ?? 0)
  return {
    perWeight: within(COMPONENT_FORCE.factor * unit * (height / building) * (car / rpo)),
    least,
    most,
    formula: 'Fp / Wp = 0.4 SDS Ip (Hf / Rmu)(CAR / Rpo), Hf = 1 + 2.5 z/h, Rmu 1.3',
  }
}

/**
 * Rmu of a building whose lateral system is known: sqrt(1.1 R / (Ie Omega0)), at least 1.3.
 *
 * @source ASCE 7-22 13.3.1.2 (secondary)
 */
export function buildingDuctility(responseR: number, overstrength: number, importance = 1): number {
  return Math.max(
    COMPONENT_7_22.leastRmu,
    Math.sqrt((COMPONENT_7_22.rmuFactor * responseR) / (importance * overstrength)),
  )
}
