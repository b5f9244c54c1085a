import { ambientCorrection } from '../../tables/nec/index.js'
import type { Celsius } from '../../values/index.js'

/**
 * Correction of ampacity for the temperature round the conductor.
 *
 * @param temperatureC Ambient with the rooftop adder, deg C. Between two printed rows the hotter one counts.
 * @param insulationC Temperature rating of the insulation, deg C.
 * @returns Factor, or undefined when that insulation is not permitted so hot.
 * @source NEC Table 310.15(B)(1)(1) (2023) and its forerunners
 */
export function ambientFactor(temperatureC: Celsius, insulationC: 60 | 75 | 90): number | undefined {
  const row = ambientCorrection.find((candidate) => temperatureC <= candidate.toC)
  if (row === undefined) return undefined
  return { 60: row.factor60, 75: row.factor75, 90: row.factor90 }[insulationC]
}

/** The row of the table that holds a temperature, in words: `31 to 35 deg C`. */
export function ambientRowWords(temperatureC: Celsius): string {
  const at = ambientCorrection.findIndex((row) => temperatureC <= row.toC)
  const [before, row] = [ambientCorrection[at - 1], ambientCorrection[at]]
  return before === undefined ? `up to ${row?.toC ?? ''} deg C` : `${before.toC + 1} to ${row?.toC ?? ''} deg C`
}
