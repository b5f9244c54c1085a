import { voltageAt, type SectionCurve } from './section-curve.js'

/** Least width of current in which a top is looked for. */
const NARROW = 1e-4
const GOLDEN = (Math.sqrt(5) - 1) / 2

/**
 * Best power of sections in series of which a share is lit and the rest is dull, relative to all lit.
 *
 * @param lit Share of the sections in full light, 0 to 1.
 * @param light Light of the others, 0 to 1.
 * @param way `past`: the dull sections are passed by at their diodes; `along`: all carry what the dull ones can.
 */
export function bestPower(curve: SectionCurve, lit: number, light: number, way: 'past' | 'along'): number {
  const edge = light * curve.short
  const [from, to] = way === 'past' ? [edge, curve.short] : [0, edge]
  return Math.max(
    0,
    top(from, to, (current) => powerAt(curve, current, lit, light)),
  )
}

function powerAt(curve: SectionCurve, current: number, lit: number, light: number): number {
  return current * (lit * voltageAt(curve, current, 1) + (1 - lit) * voltageAt(curve, current, light))
}

/**
 * Power of a string that is held at a voltage, relative to the best point of all lit.
 *
 * @param voltage Relative to that of the best point of all lit.
 */
export function powerAtVoltage(curve: SectionCurve, lit: number, light: number, voltage: number): number {
  let low = 0
  let high = curve.short
  // The voltage of the string falls with its current.
  for (let round = 0; round < 24; round += 1) {
    const middle = (low + high) / 2
    if (lit * voltageAt(curve, middle, 1) + (1 - lit) * voltageAt(curve, middle, light) > voltage) low = middle
    else high = middle
  }
  return low * voltage
}

/** Highest value of a function with one top. */
function top(from: number, to: number, value: (at: number) => number): number {
  let [low, high] = [from, to]
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)]
  let [atLeft, atRight] = [value(left), value(right)]
  while (high - low > NARROW) {
    if (atLeft < atRight) {
      low = left
      left = right
      atLeft = atRight
      right = low + GOLDEN * (high - low)
      atRight = value(right)
    } else {
      high = right
      right = left
      atRight = atLeft
      left = high - GOLDEN * (high - low)
      atLeft = value(left)
    }
  }
  return Math.max(atLeft, atRight)
}
