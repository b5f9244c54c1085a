import type { Feet, Inches } from '../../values/index.js'

/**
 * A length as drawings write it: `12'-6 1/2"`.
 *
 * @param lengthFt ft, not negative.
 * @param parts Parts of an inch to round to.
 */
export function feetInches(lengthFt: Feet, parts = 8): string {
  const units = Math.round(lengthFt * 12 * parts)
  const feet = Math.floor(units / (12 * parts))
  const over = units - feet * 12 * parts
  // A fraction alone would be read as one of a foot.
  return `${feet}'-${over > 0 && over < parts ? '0 ' : ''}${inchText(over, parts)}`
}

/** A length in inches: `1 1/2"`. */
export function inches(lengthIn: Inches, parts = 16): string {
  return inchText(Math.round(lengthIn * parts), parts)
}

function inchText(units: number, parts: number): string {
  const whole = Math.floor(units / parts)
  let [over, under] = [units - whole * parts, parts]
  if (over === 0) return `${whole}"`
  while (over % 2 === 0) [over, under] = [over / 2, under / 2]
  return whole === 0 ? `${over}/${under}"` : `${whole} ${over}/${under}"`
}

/** A number without needless decimals. */
export function plainNumber(value: number, decimals = 2): string {
  return String(Number(value.toFixed(decimals)))
}

/** A number of things: `1 module`, `8 modules`. */
export function counted(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? '' : 's'}`
}
