/** Gravity loads on a roof before and after the array, psf, and the areas they act on, ft2. */
export interface GravityInput {
  readonly roofAreaFt2: number
  readonly arrayAreaFt2: number
  readonly existingDeadPsf: number
  /** Roof live load, left out under the modules. */
  readonly livePsf: number
  readonly snowPsf: number
  readonly arrayDeadPsf: number
}

/**
 * Change of the gravity load of a roof that gets an array, percent of what it was designed for.
 *
 * @returns Positive when the load grows: the larger of live load and snow gives way to array and snow under the modules.
 * @source IEBC 2021 805.2 and IBC 2018 1607.12.5.1 (secondary)
 */
export function gravityChangePct(input: GravityInput): number {
  const variable = Math.max(input.livePsf, input.snowPsf)
  const before = input.roofAreaFt2 * (input.existingDeadPsf + variable)
  const after = before + input.arrayAreaFt2 * (input.arrayDeadPsf + input.snowPsf - variable)
  return (after / before - 1) * 100
}
