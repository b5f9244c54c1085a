import { byteAt, floatAt, intAt, realAt, setReal, type Int, type Real } from './memory.js'

/**
 * Shade by step, from the shadows at the places of the sun that each step passes over.
 *
 * @param suns Number of positions of the sun; `from` holds one more.
 * @param from First of the places of each. @param place Its places. @param share Shares of the time of the step.
 * @param month Month of each position, 0 to 11.
 * @param size Places of the sun in all. @param transmittance Twelve shares for each of the `things`.
 * @param through Share that things which let some light through leave. @param arriving Share of it that nothing solid takes.
 * @param time Shares of the time of the step with 0, 1, ... all sections free.
 */
export function beamSteps(
  suns: Int,
  from: Int,
  place: Int,
  share: Int,
  month: Int,
  sections: Int,
  size: Int,
  lit: Int,
  free: Int,
  touched: Int,
  behind: Int,
  things: Int,
  transmittance: Int,
  through: Int,
  arriving: Int,
  time: Int,
): void {
  const width = sections + 1
  for (let sun: Int = 0; sun < suns; sun += 1) {
    const times = time + ((sun * width) << 3)
    for (let each: Int = 0; each < sections; each += 1) setReal(times + (each << 3), 0)
    setReal(times + (sections << 3), 1)
    setReal(through + (sun << 3), 1)
    setReal(arriving + (sun << 3), 1)
    const first = intAt(from + (sun << 2))
    const end = intAt(from + ((sun + 1) << 2))
    if (isTouched(touched, place, first, end) === 0) continue
    setReal(times + (sections << 3), 0)
    const ofMonth = intAt(month + (sun << 2)) << 3
    let passes: Real = 0
    let arrives: Real = 0
    for (let at: Int = first; at < end; at += 1) {
      const here = intAt(place + (at << 2))
      let porous: Real = 1
      for (let thing: Int = 0; thing < things; thing += 1) {
        const hidden = floatAt(behind + ((thing * size + here) << 2))
        if (hidden > 0) porous *= 1 - hidden * (1 - realAt(transmittance + thing * 96 + ofMonth))
      }
      const weight = realAt(share + (at << 3))
      passes += weight * porous
      arrives += weight * porous * floatAt(lit + (here << 2))
      const timesHere = times + (byteAt(free + here) << 3)
      setReal(timesHere, realAt(timesHere) + weight)
    }
    setReal(through + (sun << 3), passes)
    setReal(arriving + (sun << 3), passes > 0 ? arrives / passes : 0)
  }
}

/** 1 where anything shades any of some places. */
function isTouched(touched: Int, place: Int, from: Int, to: Int): Int {
  for (let at: Int = from; at < to; at += 1) if (byteAt(touched + intAt(place + (at << 2))) !== 0) return 1
  return 0
}
