const [SPACE, TAB, PLUS, MINUS, POINT, ZERO, NINE] = [32, 9, 43, 45, 46, 48, 57] as const
const POWERS = [1, 10, 100, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15] as const
const DECIMAL = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/

/**
 * Reads a decimal number out of a long text without cutting the text up.
 *
 * @param text The whole file.
 * @param from Index of the first character of the field.
 * @param to Index after its last character.
 * @returns The number, correctly rounded; NaN when the field is empty or no number.
 */
export function readNumber(text: string, from: number, to: number): number {
  let at = from
  let end = to
  while (at < end && isBlank(text.charCodeAt(at))) at++
  while (end > at && isBlank(text.charCodeAt(end - 1))) end--
  const start = at
  const sign = text.charCodeAt(at)
  if (at < end && (sign === MINUS || sign === PLUS)) at++
  let digits = 0
  let decimals = -1
  let mantissa = 0
  for (; at < end; at++) {
    const code = text.charCodeAt(at)
    if (code >= ZERO && code <= NINE) {
      mantissa = mantissa * 10 + (code - ZERO)
      digits++
      if (decimals >= 0) decimals++
    } else if (code === POINT && decimals < 0) {
      decimals = 0
    } else {
      return readSlowly(text.slice(start, end))
    }
  }
  if (digits === 0) return NaN
  // Up to 15 digits the quotient of two exact numbers is the correctly rounded decimal.
  if (digits > 15) return readSlowly(text.slice(start, end))
  const value = decimals > 0 ? mantissa / POWERS[decimals]! : mantissa
  return sign === MINUS ? -value : value
}

function isBlank(code: number): boolean {
  return code === SPACE || code === TAB
}

function readSlowly(field: string): number {
  return DECIMAL.test(field) ? Number(field) : NaN
}
