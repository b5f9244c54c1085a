import type { Percent, PoundsPerSquareFoot, SquareFeet } from '../../values/index.js'

/** Gravity loads on a roof before and after the array, psf, and the areas they act on, ft2. */
export interface GravityInput {
  readonly roofAreaFt2: SquareFeet
  readonly arrayAreaFt2: SquareFeet
  readonly existingDeadPsf: PoundsPerSquareFoot
  /** Roof live load, left out under the modules. */
  readonly livePsf: PoundsPerSquareFoot
  readonly snowPsf: PoundsPerSquareFoot
  readonly arrayDeadPsf: PoundsPerSquareFoot
}

/**
 * Change of the gravity load of a roof that gets an array, percent of what it was designed for.
 *
 * @returns Positive when the load grows: the larger of live load and snow gives way to array and snow under the modules.
 * @source IEBC 2021 805.2 and IBC 2018 1607.12.5.1 (secondary)
 */
export function gravityChangePct(input: GravityInput): Percent {
  const variable = Math.max(input.livePsf, input.snowPsf)
  const before = input.roofAreaFt2 * (input.existingDeadPsf + variable)
  const after = before + input.arrayAreaFt2 * (input.arrayDeadPsf + input.snowPsf - variable)
  return (after / before - 1) * 100
}
