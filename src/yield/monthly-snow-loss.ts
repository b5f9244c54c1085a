import { radiansOf, type Celsius, type Degrees, type Inches } from '../values/index.js'

/** What the monthly snow-loss method wants to know of a month. */
export interface SnowMonth {
  /** Fresh snow of the month, and of the month before, in. */
  readonly snowfallIn: Inches
  readonly snowfallBeforeIn: Inches
  /** Number of snowfalls of an inch or more. */
  readonly events: number
  readonly eventsBefore: number
  readonly meanC: Celsius
  /** Light on the plane, kWh/m2 a month. */
  readonly planeKwhM2: number
}

/** The array, as snow slides off it. */
export interface SnowSlope {
  readonly tiltDeg: Degrees
  /** Slant height of the modules, in. */
  readonly slantIn: Inches
  /** Drop from the lower edge to where the snow comes to rest, in. */
  readonly dropIn: Inches
}

/** Mean relative humidity of a winter month that the method is run with, percent (common practice, no source). */
const RELATIVE_HUMIDITY_PCT = 75
/** Angle at which snow piles up, degrees. */
const PILE_ANGLE_DEG = 40

/** Six-week effective snowfall, in. */
function effectiveSnowIn(snowfallIn: Inches, events: number): Inches {
  return events > 0 ? 0.5 * snowfallIn * (1 + 1 / events) : 0.5 * snowfallIn
}

/**
 * Share of a month's energy that snow takes.
 *
 * @returns 0 to 1.
 * @source Townsend & Powers 2011, 37th IEEE PVSC: monthly regression with constants 5.7e4 and 0.51 (from memory,
 *   unverified).
 * @limits Fitted in the Sierra Nevada; tilts up to 40 degrees.
 */
export function monthlySnowLoss(month: SnowMonth, slope: SnowSlope): number {
  const now = effectiveSnowIn(month.snowfallIn, month.events)
  const before = effectiveSnowIn(month.snowfallBeforeIn, month.eventsBefore)
  const snowIn = (2 / 3) * now + (1 / 3) * before
  if (snowIn <= 0 || month.planeKwhM2 <= 0) return 0
  const tilt = radiansOf(slope.tiltDeg)
  const cosTilt = Math.cos(tilt)
  const clear = Math.max(0.01, slope.dropIn ** 2 - snowIn ** 2)
  const interference = ((slope.slantIn * snowIn * cosTilt) / clear) * 2 * Math.tan(radiansOf(PILE_ANGLE_DEG))
  const ground = 1 - 0.51 * Math.exp(-interference)
  const kelvin = month.meanC + 273.15
  const pct =
    (5.7e4 * snowIn * cosTilt * cosTilt * ground * RELATIVE_HUMIDITY_PCT) / (kelvin * kelvin * month.planeKwhM2 ** 0.67)
  return Math.min(1, Math.max(0, pct / 100))
}
