import type { Amperes, Feet, Volts } from '../../values/index.js'

/**
 * Voltage lost on (or raised over) both conductors of a two-wire circuit.
 *
 * @param lengthFt One way, ft.
 * @param currentA Rated current, A, without 125 percent.
 * @param ohmPerKft Resistance or effective impedance of one conductor.
 * @returns V.
 * @source V = 2 L I R / 1000 (NEC Chapter 9 Table 8 and 9)
 */
export function twoWireRiseV(lengthFt: Feet, currentA: Amperes, ohmPerKft: number): Volts {
  return (2 * lengthFt * currentA * ohmPerKft) / 1000
}

/** Inverters on the longer half of a trunk. */
export function invertersOnLongerHalf(inverters: number, feed: 'end' | 'centre'): number {
  return feed === 'end' ? inverters : Math.ceil(inverters / 2)
}

/**
 * Voltage rise to the last of evenly spaced inverters: every piece carries what is beyond it.
 *
 * @param inverters Inverters in a row from the feed.
 * @param spacingFt Cable from one to the next, and from the feed to the first, ft.
 * @param currentA Rated output of one inverter, A.
 * @returns V, 2 R I N (N + 1) / 2.
 * @limits All inverters equal and at full output.
 */
export function trunkRiseV(inverters: number, spacingFt: Feet, currentA: Amperes, ohmPerKft: number): Volts {
  return (twoWireRiseV(spacingFt, currentA, ohmPerKft) * inverters * (inverters + 1)) / 2
}
