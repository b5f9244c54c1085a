import { normalBelow, normalDensity } from '../../values/index.js'
import { lifeOutput, meanOutput, outputOfYear } from '../degradation-law.js'
import { realAt, setReal, toInt, toReal, type Int, type Real } from './memory.js'

/**
 * The middles of equally likely parts of a standard normal, upwards.
 *
 * @param into Room for `count` numbers, an odd number. @param lowest The first of them.
 */
export function normalParts(into: Int, count: Int, lowest: Real): void {
  let z = lowest
  const half = (count - 1) >> 1
  for (let index: Int = 0; index < half; index += 1) {
    const share = (toReal(index) + 0.5) / toReal(count)
    // From its neighbour two or three steps of Newton are enough.
    for (let round: Int = 0; round < 4; round += 1) z -= (normalBelow(z) - share) / normalDensity(z)
    setReal(into + (index << 3), z)
    setReal(into + ((count - 1 - index) << 3), -z)
  }
  setReal(into + (half << 3), 0)
}

/**
 * Multiplies every draw of an energy by what one cause makes of it: 1 + relative z, not below 0 and not above `most`.
 *
 * @param parts The parts of a standard normal, taken from `start` on in strides.
 */
export function scaleDraws(
  energy: Int,
  parts: Int,
  count: Int,
  start: Int,
  stride: Int,
  relative: Real,
  most: Real,
): void {
  let place = start
  for (let draw: Int = 0; draw < count; draw += 1) {
    const at = energy + (draw << 3)
    const times = 1 + relative * realAt(parts + (place << 3))
    setReal(at, realAt(at) * Math.min(most, Math.max(0, times)))
    place += stride
    if (place >= count) place -= count
  }
}

/** Adds the draws of one energy to those of another. */
export function addDraws(sum: Int, energy: Int, count: Int): void {
  for (let at: Int = 0; at < count << 3; at += 8) setReal(sum + at, realAt(sum + at) + realAt(energy + at))
}

/**
 * Energies of every draw: of the first year, of any year of the life, as the mean of the first years, and of the life.
 *
 * @param courses Start and stride, as numbers, of the age, the loss with age, and the weather of one year, of the first years and
 *   of the life.
 * @param into Four columns, one after the other.
 */
export function yearDraws(
  energy: Int,
  parts: Int,
  count: Int,
  courses: Int,
  rate: Real,
  rateSpread: Real,
  yearly: Real,
  years: Real,
  meanYears: Real,
  into: Int,
): void {
  const ofMean = yearly / Math.sqrt(meanYears)
  const ofLife = yearly / Math.sqrt(years)
  const column = count << 3
  for (let draw: Int = 0; draw < count; draw += 1) {
    const at = draw << 3
    const kwh = realAt(energy + at)
    const age = 1 + Math.floor((toReal(placeOf(courses, draw, count)) / toReal(count)) * years)
    const loss = Math.max(0, rate + rateSpread * part(parts, courses + 16, draw, count))
    const year = Math.max(0, 1 + yearly * part(parts, courses + 32, draw, count))
    const mean = Math.max(0, 1 + ofMean * part(parts, courses + 48, draw, count))
    const life = Math.max(0, 1 + ofLife * part(parts, courses + 64, draw, count))
    setReal(into + at, kwh * year)
    setReal(into + column + at, kwh * outputOfYear(loss, age) * year)
    setReal(into + 2 * column + at, kwh * meanOutput(loss, meanYears) * mean)
    setReal(into + 3 * column + at, kwh * lifeOutput(loss, years) * life)
  }
}

function part(parts: Int, course: Int, draw: Int, count: Int): Real {
  return realAt(parts + (placeOf(course, draw, count) << 3))
}

/** Place of a draw on a course: strides round all places. */
function placeOf(course: Int, draw: Int, count: Int): Int {
  const start = toInt(realAt(course))
  const stride = toInt(realAt(course + 8))
  return (start + draw * stride) % count
}
