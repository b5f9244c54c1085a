import {
  AC_COUNT,
  AC_EFFICIENCY,
  AC_HOURS,
  AC_INPUT_COUNT,
  AC_INPUTS,
  AC_LENGTH,
  AC_MONTH,
  AC_POINT_COUNT,
  AC_POINTS,
  AC_RATING,
  AC_RESISTIVE,
  AC_TOTAL_AC,
  AC_TOTAL_CLIPPED,
  AC_TOTAL_DC,
  AC_UP,
  AC_WIRING,
  AC_WITHIN_HOUR,
  INPUT_DC,
  INPUT_LOSSES,
  INPUT_MODULES,
  INPUT_SIZE,
  INPUT_SPREAD,
  INPUT_TALLY,
} from './layout.js'
import { meanClippedW, REACH_OF_MEAN, REACH_SPREADS } from './mean-clipped.js'
import { intAt, realAt, setReal, type Int, type Real } from './memory.js'

/**
 * One inverter, or some equal ones, through the year: adds up its inputs, converts, is limited to its rating, and shares out
 * what it loses among its inputs in proportion to the DC energy that they bring; see the layout of `AC_LENGTH`.
 */
export function station(job: Int): void {
  const length = intAt(job + AC_LENGTH)
  const inputs = intAt(job + AC_INPUTS)
  const inputsEnd = inputs + intAt(job + AC_INPUT_COUNT) * INPUT_SIZE
  const rating = realAt(job + AC_RATING)
  const wiring = realAt(job + AC_WIRING)
  const up = realAt(job + AC_UP)
  const count = realAt(job + AC_COUNT)
  const isResistive = intAt(job + AC_RESISTIVE) !== 0
  let withinHour: Real = 0
  for (let step: Int = 0; step < length; step += 1) {
    const at = step << 3
    let together: Real = 0
    for (let input: Int = inputs; input < inputsEnd; input += INPUT_SIZE) {
      together += realAt(intAt(input + INPUT_DC) + at) * realAt(input + INPUT_MODULES)
    }
    const dc = together / count
    if (dc <= 0) continue
    const hours = realAt(intAt(job + AC_HOURS) + at)
    const free = acOf(job, dc)
    let limited = free > rating ? rating : free
    const spread = free * REACH_OF_MEAN > rating ? free * spreadOf(inputs, inputsEnd, at, dc * count) : 0
    if (spread > 0 && free + REACH_SPREADS * spread > rating) {
      const onAverage = free - meanClippedW(free, rating, spread)
      withinHour += ((limited - onAverage) * hours * count) / 1000
      limited = onAverage
    }
    const wired = limited * (1 - (isResistive ? (wiring * limited) / rating : wiring))
    const delivered = wired * up
    const month = intAt(intAt(job + AC_MONTH) + (step << 2)) << 3
    const kwh = (hours * count) / 1000
    add(intAt(job + AC_TOTAL_AC) + at, delivered * count)
    add(intAt(job + AC_TOTAL_DC) + at, dc * count)
    add(intAt(job + AC_TOTAL_CLIPPED) + at, (free - limited) * count)
    for (let input: Int = inputs; input < inputsEnd; input += INPUT_SIZE) {
      const share = (realAt(intAt(input + INPUT_DC) + at) * realAt(input + INPUT_MODULES)) / count / dc
      const energy = kwh * share
      const tally = input + INPUT_TALLY + month
      add(tally, dc * energy)
      add(tally + 96, delivered * energy)
      add(tally + 192, (free - limited) * energy)
      const losses = input + INPUT_LOSSES
      add(losses, free * energy)
      add(losses + 8, limited * energy)
      add(losses + 16, wired * energy)
      add(losses + 24, delivered * energy)
    }
  }
  setReal(job + AC_WITHIN_HOUR, withinHour)
}

function add(address: Int, value: Real): void {
  setReal(address, realAt(address) + value)
}

/** AC power without any limit, W; see `unlimitedAcW`, which asks the same of a model. */
export function acOf(job: Int, dc: Real): Real {
  const points = intAt(job + AC_POINTS)
  const efficiency = intAt(job + AC_EFFICIENCY)
  const last = (intAt(job + AC_POINT_COUNT) - 1) << 3
  if (last === 0 || dc <= realAt(points)) return dc * realAt(efficiency)
  if (dc >= realAt(points + last)) return dc * realAt(efficiency + last)
  let at: Int = 8
  while (dc > realAt(points + at)) at += 8
  const low = realAt(points + at - 8)
  const share = (dc - low) / (realAt(points + at) - low)
  return dc * (realAt(efficiency + at - 8) * (1 - share) + realAt(efficiency + at) * share)
}

/**
 * Spread of an inverter's power within a step over its mean: clouds come over all its inputs at once.
 *
 * @param dc DC power of all its inputs, W.
 */
function spreadOf(inputs: Int, inputsEnd: Int, at: Int, dc: Real): Real {
  let spread: Real = 0
  for (let input: Int = inputs; input < inputsEnd; input += INPUT_SIZE) {
    const column = intAt(input + INPUT_SPREAD)
    if (column === 0) return 0
    spread += (realAt(intAt(input + INPUT_DC) + at) * realAt(input + INPUT_MODULES) * realAt(column + at)) / dc
  }
  return spread
}
