import {
  DC_ALONE,
  DC_CLEAN,
  DC_COMPARED_RISE,
  DC_CURVE_ALONG,
  DC_CURVE_DULL,
  DC_CURVE_PAST,
  DC_DIRECT,
  DC_DIRECT_IN,
  DC_DRY_BULB,
  DC_DULL,
  DC_FACTOR,
  DC_FULL,
  DC_GHI,
  DC_GROUND,
  DC_GROUND_MODIFIER,
  DC_GROUND_SEEN,
  DC_HOURS,
  DC_KEPT,
  DC_LENGTH,
  DC_LIT,
  DC_MONTH,
  DC_OUT,
  DC_PER_K,
  DC_PLANE,
  DC_PMAX,
  DC_RESISTIVE,
  DC_RISE,
  DC_SECTIONS,
  DC_SKY,
  DC_SKY_MODIFIER,
  DC_SKY_SEEN,
  DC_SLOPE,
  DC_SNOW,
  DC_SUMS,
  DC_SUN,
  DC_THROUGH,
  DC_TIME,
  DC_WIRING,
} from './layout.js'
import { intAt, realAt, setReal, toReal, type Int, type Real } from './memory.js'
import { powerOf } from './module-power.js'
import { shareOfSections } from './series.js'

/** One module through the year: light that arrives, what gets through each loss, and its power; see the layout of `DC_LENGTH`. */
export function moduleDc(job: Int): void {
  const length = intAt(job + DC_LENGTH)
  const hasShade = intAt(job + DC_SECTIONS) !== 0
  const through = intAt(job + DC_THROUGH)
  const lit = intAt(job + DC_LIT)
  const snow = intAt(job + DC_SNOW)
  const alone = intAt(job + DC_ALONE)
  const factors = intAt(job + DC_FACTOR)
  const pmax = realAt(job + DC_PMAX)
  const perK = realAt(job + DC_PER_K)
  const slope = realAt(job + DC_SLOPE)
  const kept = realAt(job + DC_KEPT)
  const wiring = realAt(job + DC_WIRING)
  const isResistive = intAt(job + DC_RESISTIVE) !== 0
  const comparedRise = realAt(job + DC_COMPARED_RISE)
  const skyModifier = realAt(job + DC_SKY_MODIFIER)
  const groundModifier = realAt(job + DC_GROUND_MODIFIER)
  let horizontal: Real = 0
  let plane: Real = 0
  let arriving: Real = 0
  let inside: Real = 0
  let cleaned: Real = 0
  let snowFree: Real = 0
  let bypass: Real = 0
  let dimmed: Real = 0
  let heated: Real = 0
  let wired: Real = 0
  let compared: Real = 0
  for (let step: Int = 0; step < length; step += 1) {
    const at = step << 3
    const month = intAt(intAt(job + DC_MONTH) + (step << 2)) << 3
    const sun = intAt(intAt(job + DC_SUN) + (step << 2))
    const hour = realAt(intAt(job + DC_HOURS) + at)
    const dryBulb = realAt(intAt(job + DC_DRY_BULB) + at)
    const far = hasShade ? realAt(through + (sun << 3)) : 1
    const nearLit = hasShade ? realAt(lit + (sun << 3)) : 1
    let fromSky = realAt(intAt(job + DC_SKY) + at)
    let fromGround = realAt(intAt(job + DC_GROUND) + at)
    if (hasShade) {
      fromSky *= realAt(job + DC_SKY_SEEN + month)
      fromGround *= realAt(job + DC_GROUND_SEEN + month)
    }
    const arrives = realAt(intAt(job + DC_DIRECT) + at) * far * nearLit + fromSky + fromGround
    const diffuseIn = fromSky * skyModifier + fromGround * groundModifier
    const sunIn = realAt(intAt(job + DC_DIRECT_IN) + at) * far
    const inGlass = sunIn * nearLit + diffuseIn
    const clear = realAt(job + DC_CLEAN + month)
    const free = snow === 0 ? clear : clear * (1 - realAt(snow + at))
    const works = inGlass * free
    const cell = dryBulb + arrives * realAt(intAt(job + DC_RISE) + at)
    const heat = 1 + perK * (cell - 25)
    const dim = slope === 0 || works <= 0 ? 1 : Math.max(0, 1 + slope * Math.log(works / 1000))
    let power = works > 0 && heat > 0 ? (pmax * works * dim * heat) / 1000 : 0
    let isUneven = false
    if (nearLit < 1 && power > 0 && intAt(job + DC_CURVE_DULL) !== 0) {
      const best = unevenW(job, sun, (sunIn + diffuseIn) * free, diffuseIn * free, cell)
      if (best < power) {
        power = best
        isUneven = true
      }
    }
    if (alone !== 0) {
      setReal(alone + at, power)
      setReal(intAt(job + DC_FULL) + at, powerOf(pmax, perK, slope, (sunIn + diffuseIn) * free, cell))
      setReal(intAt(job + DC_DULL) + at, powerOf(pmax, perK, slope, diffuseIn * free, cell))
    }
    if (factors !== 0 && realAt(factors + at) < 1) {
      power *= realAt(factors + at)
      isUneven = true
    }
    const beforeWiring = power * kept
    const out = beforeWiring * (1 - (isResistive ? (wiring * beforeWiring) / pmax : wiring))
    setReal(intAt(job + DC_OUT) + at, out)
    horizontal += realAt(intAt(job + DC_GHI) + at) * hour
    plane += realAt(intAt(job + DC_PLANE) + at) * hour
    arriving += arrives * hour
    inside += inGlass * hour
    cleaned += inGlass * clear * hour
    snowFree += works * hour
    wired += out * hour
    if (power > 0) {
      const ideal = isUneven ? (power / (heat * dim)) * hour : pmax * (works / 1000) * hour
      bypass += ideal
      dimmed += ideal * dim
      heated += power * hour
      compared += ideal * dim * (1 + perK * (dryBulb + arrives * comparedRise - 25))
    }
  }
  const sums = job + DC_SUMS
  setReal(sums, horizontal)
  setReal(sums + 8, plane)
  setReal(sums + 16, arriving)
  setReal(sums + 24, inside)
  setReal(sums + 32, cleaned)
  setReal(sums + 40, snowFree)
  setReal(sums + 48, bypass)
  setReal(sums + 56, dimmed)
  setReal(sums + 64, heated)
  setReal(sums + 72, wired)
  setReal(sums + 80, compared)
}

/** Mean power over a step of a module on which shadows of solids fall, W. */
function unevenW(job: Int, sun: Int, sunny: Real, dull: Real, cell: Real): Real {
  const pmax = realAt(job + DC_PMAX)
  const perK = realAt(job + DC_PER_K)
  const slope = realAt(job + DC_SLOPE)
  const sections = intAt(job + DC_SECTIONS)
  const full = powerOf(pmax, perK, slope, sunny, cell)
  const dullShare = full > 0 ? powerOf(pmax, perK, slope, dull, cell) / full : 1
  const from = intAt(job + DC_TIME) + ((sun * (sections + 1)) << 3)
  let share = realAt(from + (sections << 3))
  for (let free: Int = 0; free < sections; free += 1) {
    const weight = realAt(from + (free << 3))
    if (weight <= 0) continue
    share +=
      weight *
      shareOfSections(
        intAt(job + DC_CURVE_DULL),
        intAt(job + DC_CURVE_PAST),
        intAt(job + DC_CURVE_ALONG),
        toReal(free) / toReal(sections),
        dullShare,
      )
  }
  return full * share
}
