import { Big } from 'big.js'

/** Arithmetic of numbers that whole 64-bit floats cannot hold: quotients are rounded half up at 20 places. */
const Large = Big()
Large.DP = 20
Large.RM = 1

/** Powers of ten that binary numbers hold exactly. */
const POWERS = Float64Array.from({ length: 23 }, (_, i) => Number(`1e${String(i)}`))
const MOST_PLACES = POWERS.length - 1
const MOST_UNITS = Number.MAX_SAFE_INTEGER
/** Digits that always make a safe whole number. */
const SAFE_DIGITS = 15

/**
 * Exact decimal: sums and products are exact, quotients are rounded half up at 20 places.
 *
 * Nearly every amount of a bill is a safe whole number of small units, which binary numbers add and multiply exactly; what
 * would leave that range is worked out digit by digit.
 */
export class Decimal {
  /** The value is `units / 10^places`, unless `large` is there. */
  readonly units: number
  readonly places: number
  readonly large: Big | undefined

  constructor(units: number, places: number, large?: Big) {
    this.units = units
    this.places = places
    this.large = large
  }

  plus(other: Decimal): Decimal {
    if (this.large === undefined && other.large === undefined) {
      const places = this.places > other.places ? this.places : other.places
      const a = this.places === places ? this.units : this.units * powerOf(places - this.places)
      const b = other.places === places ? other.units : other.units * powerOf(places - other.places)
      const units = a + b
      if (isSafe(a) && isSafe(b) && isSafe(units)) return new Decimal(units, places)
    }
    return fromLarge(toLarge(this).plus(toLarge(other)))
  }

  minus(other: Decimal): Decimal {
    return this.plus(
      other.large === undefined ? new Decimal(-other.units, other.places) : fromLarge(other.large.times(-1)),
    )
  }

  times(factor: Decimal | number): Decimal {
    const other = typeof factor === 'number' ? decimal(factor) : factor
    if (this.large === undefined && other.large === undefined) {
      const units = this.units * other.units
      const places = this.places + other.places
      if (isSafe(units) && places <= MOST_PLACES) return new Decimal(units, places)
    }
    return fromLarge(toLarge(this).times(toLarge(other)))
  }

  div(divisor: Decimal | number): Decimal {
    const other = typeof divisor === 'number' ? decimal(divisor) : divisor
    return fromLarge(toLarge(this).div(toLarge(other)))
  }

  /** Below, at or above zero when this is below, equal to or above the other. */
  compare(other: Decimal | number): number {
    if (typeof other === 'number') {
      if (other === 0) return this.large === undefined ? this.units : this.large.cmp(0)
      return this.compare(decimal(other))
    }
    if (this.large === undefined && other.large === undefined) {
      const places = this.places > other.places ? this.places : other.places
      const a = this.units * powerOf(places - this.places)
      const b = other.units * powerOf(places - other.places)
      if (isSafe(a) && isSafe(b)) return a - b
    }
    return toLarge(this).cmp(toLarge(other))
  }

  eq(other: Decimal | number): boolean {
    return this.compare(other) === 0
  }

  lt(other: Decimal | number): boolean {
    return this.compare(other) < 0
  }

  lte(other: Decimal | number): boolean {
    return this.compare(other) <= 0
  }

  gt(other: Decimal | number): boolean {
    return this.compare(other) > 0
  }

  gte(other: Decimal | number): boolean {
    return this.compare(other) >= 0
  }

  /** Half up to the given places, away from zero for values below it. */
  roundedTo(places: number): Decimal {
    if (this.large !== undefined) return fromLarge(this.large.round(places, 1))
    if (this.places <= places) return this
    const divisor = powerOf(this.places - places)
    const size = Math.abs(this.units)
    const rest = size % divisor
    const whole = (size - rest) / divisor + (2 * rest >= divisor ? 1 : 0)
    return new Decimal(this.units < 0 ? 0 - whole : whole, places)
  }

  /** All digits, never with an exponent. */
  toFixed(): string {
    return this.large === undefined && this.places === 0 ? String(this.units + 0) : toLarge(this).toFixed()
  }

  /** The nearest binary number: both parts of the quotient are exact, so that it is rounded once. */
  toNumber(): number {
    return this.large === undefined ? this.units / powerOf(this.places) + 0 : Number(this.large.toFixed())
  }
}

export const ZERO: Decimal = new Decimal(0, 0)

/** The decimal that a person typed: 0.0475 becomes 0.0475, not the nearest binary number. */
export function decimal(typed: number): Decimal {
  return Number.isSafeInteger(typed) ? new Decimal(typed, 0) : fromLarge(new Large(typed))
}

export function sum(amounts: Iterable<Decimal>): Decimal {
  let total = ZERO
  for (const amount of amounts) total = total.plus(amount)
  return total
}

export function smaller(a: Decimal, b: Decimal): Decimal {
  return a.lt(b) ? a : b
}

/** Half up to the cent, away from zero for credits: 26.125 becomes 26.13. */
export function toCents(usd: Decimal): Decimal {
  return usd.roundedTo(2)
}

function powerOf(places: number): number {
  return POWERS[places] ?? Infinity
}

/** Whether a whole number was worked out without rounding. */
function isSafe(units: number): boolean {
  return units <= MOST_UNITS && units >= -MOST_UNITS
}

function toLarge(value: Decimal): Big {
  return value.large ?? new Large(`${String(value.units)}e-${String(value.places)}`)
}

function fromLarge(large: Big): Decimal {
  const digits = large.c.length
  const places = digits - 1 - large.e
  if (places > MOST_PLACES || Math.max(digits, large.e + 1) > SAFE_DIGITS) return new Decimal(0, 0, large)
  if (places <= 0) return new Decimal(Number(large.toFixed()), 0)
  return new Decimal(large.s * Number(large.c.join('')), places)
}
