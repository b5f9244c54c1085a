/** When daylight saving begins or ends, as an ESPI file states it. */
export interface TimeRule {
  readonly month: number
  /** 1 = Monday to 7 = Sunday; 0 with operator `on day`. */
  readonly weekday: number
  readonly day: number
  readonly operator: 'on day' | 'on or after day' | 'nth' | 'last'
  readonly nth: number
  readonly hour: number
  readonly second: number
}

/**
 * Decodes a rule of LocalTimeParameters.
 *
 * @param hex Eight hexadecimal digits; FFFFFFFF = clocks do not change.
 * @returns Undefined when there is no rule.
 * @source ESPI LocalTimeParameters bit layout, as published sample files decode
 */
export function decodeTimeRule(hex: string): TimeRule | undefined {
  const bits = Number.parseInt(hex, 16)
  if (!/^[0-9a-f]{8}$/i.test(hex) || bits === 0xffffffff) return undefined
  const field = (low: number, width: number): number => Math.floor(bits / 2 ** low) % 2 ** width
  const code = field(25, 3)
  const operator = code === 0 ? 'on day' : code === 1 ? 'on or after day' : code === 7 ? 'last' : 'nth'
  return {
    second: field(0, 12),
    hour: field(12, 5),
    weekday: field(17, 3),
    day: field(20, 5),
    operator,
    nth: operator === 'nth' ? code - 1 : 0,
    month: field(28, 4),
  }
}

/** Whether a pair of rules is the US one: second Sunday of March to first Sunday of November, 02:00. */
export function isUsRule(start: TimeRule | undefined, end: TimeRule | undefined): boolean {
  const is = (rule: TimeRule | undefined, month: number, nth: number): boolean =>
    rule !== undefined &&
    rule.month === month &&
    rule.weekday === 7 &&
    rule.hour === 2 &&
    ((rule.operator === 'nth' && rule.nth === nth) || (rule.operator === 'on or after day' && rule.day === nth * 7 - 6))
  return is(start, 3, 2) && is(end, 11, 1)
}
