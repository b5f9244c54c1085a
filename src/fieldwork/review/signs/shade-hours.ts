import type { LitReadings } from '../hour-model.js'
import { dateText } from '../../../values/index.js'
import type { FoundSign } from './sign.js'

/** Days that are looked at together, and how many such stretches in a row make a sign. */
const STRETCH_DAYS = 30
const STRETCHES = 2
const FIRST_HOUR = 5
const HOURS = 14
/** Only hours in which a clear sky gives this share of the day's most. */
const BRIGHT = 0.3
/** Readings that an hour of a stretch needs, and the share of them that lies below its clear level. */
const LEAST_READINGS = 20
const CLEAR_SHARE = 0.9
/** An hour below this share of the best hours of its stretch is in the shade. Chosen on simulated healthy years. */
const SHADED = 0.6

/**
 * Hours of the day in which even clear weather gives too little beside the other hours of the same days: shade that the project
 * file does not know.
 *
 * @limits Two months of readings; shade over all hours looks like a low level. A clock that is off looks the same.
 */
export function shadeHours(lit: LitReadings): FoundSign[] {
  if (lit.length === 0) return []
  const first = lit.day[0]!
  const stretches = Math.floor((lit.day[lit.length - 1]! - first + 1) / STRETCH_DAYS)
  const held = Array.from({ length: stretches * HOURS }, (): number[] => [])
  const lostIf = new Float64Array(stretches * HOURS)
  for (let at = 0; at < lit.length; at += 1) {
    if (lit.clearKw[at]! < BRIGHT * lit.peakKw[at]!) continue
    const stretch = Math.floor((lit.day[at]! - first) / STRETCH_DAYS)
    const hour = Math.floor(lit.solarH[at]!) - FIRST_HOUR
    if (stretch >= stretches || hour < 0 || hour >= HOURS) continue
    held[stretch * HOURS + hour]!.push(lit.kw[at]! / lit.clearKw[at]!)
    lostIf[stretch * HOURS + hour]! += lit.kw[at]! * lit.hours[at]!
  }
  const shares = sharesOfBest(held, stretches)
  const hits: { stretch: number; hour: number; share: number; lostKwh: number }[] = []
  for (let hour = 0; hour < HOURS; hour += 1) {
    for (let stretch = 0; stretch < stretches; stretch += 1) {
      const run = Array.from({ length: STRETCHES }, (_, add) => shares[(stretch + add) * HOURS + hour] ?? 1)
      const before = Array.from({ length: STRETCHES }, (_, add) => shares[(stretch - add) * HOURS + hour] ?? 1)
      if (Math.max(...run) >= SHADED && Math.max(...before) >= SHADED) continue
      const share = shares[stretch * HOURS + hour]!
      hits.push({ stretch, hour, share, lostKwh: lostIf[stretch * HOURS + hour]! * (1 / Math.max(0.05, share) - 1) })
    }
  }
  if (hits.length === 0) return []
  const hours = hits.map((hit) => hit.hour + FIRST_HOUR)
  const from = first + STRETCH_DAYS * Math.min(...hits.map((hit) => hit.stretch))
  const to = Math.min(
    lit.day[lit.length - 1]!,
    first + STRETCH_DAYS * (Math.max(...hits.map((hit) => hit.stretch)) + 1) - 1,
  )
  const least = Math.min(...hits.map((hit) => hit.share))
  const where = `${Math.min(...hours)} to ${Math.max(...hours) + 1} h of solar time`
  return [
    {
      kind: 'shade',
      fromDay: from,
      toDay: to,
      probability: least < 0.4 ? 0.99 : 0.95,
      lostKwh: hits.reduce((sum, hit) => sum + hit.lostKwh, 0),
      where,
      says: `in clear weather ${where} give down to ${(100 * least).toFixed(0)} % of what the other hours let expect, from ${dateText(from)} to ${dateText(to)}`,
      lookAt:
        'look from the ground, at these hours, what throws shade on the modules: trees that have grown, a new mast or building',
    },
  ]
}

/** Clear level of each hour over that of the best hours of its stretch; 1 where there are too few readings. */
function sharesOfBest(held: readonly number[][], stretches: number): number[] {
  return Array.from({ length: stretches }, (_, stretch) => {
    const levels = Array.from({ length: HOURS }, (__, hour) => {
      const ratios = held[stretch * HOURS + hour]!
      if (ratios.length < LEAST_READINGS) return undefined
      return ratios.toSorted((a, b) => a - b)[Math.floor(CLEAR_SHARE * (ratios.length - 1))]!
    })
    const best = levels.flatMap((level) => level ?? []).toSorted((a, b) => b - a)
    const usual = best[Math.min(2, best.length - 1)] ?? 0
    return levels.map((level) => (level === undefined || usual <= 0 ? 1 : level / usual))
  }).flat()
}
