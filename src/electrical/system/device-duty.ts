import { EDITION_NOT_READ } from '../../tables/nec/index.js'
import type { Amperes } from '../../values/index.js'
import type { Job } from './job.js'

/**
 * Current without a fraction below half an ampere.
 *
 * @source NEC 2026 690.4, fractions (secondary): a permission, after all calculations
 */
export function withoutFraction(currentA: Amperes): Amperes {
  const whole = Math.floor(currentA)
  return currentA - whole < 0.5 ? whole : currentA
}

/** Whether the edition permits to drop fractions and the project asks for it. */
export const dropsFractions = ({ edition, electrical }: Job): boolean =>
  edition === EDITION_NOT_READ && electrical.drop_fractions === true

/**
 * Current that the rating of an overcurrent device is held against. Conductors, disconnects and busbars are held against
 * the whole current in any case.
 *
 * @param requiredA 125 percent of the maximum current, A.
 */
export function deviceDutyA(job: Job, requiredA: Amperes): Amperes {
  return dropsFractions(job) ? withoutFraction(requiredA) : requiredA
}
