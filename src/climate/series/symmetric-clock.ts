import type { SeriesYear } from './series-file.js'
import { atDay, ephemeris } from '../../sun/index.js'
import type { Degrees } from '../../values/index.js'

/** Clearest days that speak. */
const DAYS = 10
/** Shifts that are tried, h, and how finely. */
const WIDEST_H = 3
const FINEST_H = 0.02

/**
 * Clock error of a file that has global radiation only: the shift of its stamps that makes mornings and afternoons of its
 * clearest days alike. The clearest are those with the most light for the sun above the air; each tells the middle about
 * which it is symmetric, and the median of ten counts.
 *
 * @param levelWM2 Extraterrestrial irradiance on the level by row, W/m2.
 * @param inMonths Which months count, 1 to 12.
 * @returns Hours to add to the stamps; undefined with fewer than three whole days of sun.
 * @limits Haze or fog at one end of every day moves the middle; so does a sensor that is shaded or stands askew.
 */
export function symmetricClockShiftH(
  ghi: Float64Array,
  levelWM2: Float64Array,
  year: Pick<SeriesYear, 'stepH' | 'dayOfYear' | 'middleH' | 'month' | 'isLeap'>,
  place: { readonly longitudeDeg: Degrees; readonly utcOffsetH: number },
  inMonths: (month: number) => boolean = () => true,
): number | undefined {
  const rowsPerDay = Math.round(24 / year.stepH)
  const days: { readonly from: number; readonly clearness: number }[] = []
  for (let from = 0; from < ghi.length; from += rowsPerDay) {
    if (!inMonths(year.month[from]!)) continue
    let [light, above] = [0, 0]
    for (let row = from; row < from + rowsPerDay; row++) {
      light += ghi[row]!
      above += levelWM2[row]!
    }
    if (light > 0 && above > 0) days.push({ from, clearness: light / above })
  }
  const shifts = days
    .toSorted((a, b) => b.clearness - a.clearness)
    .slice(0, DAYS)
    .map(({ from }) => {
      const dayOfYear = year.dayOfYear[from]! - 1 - (year.isLeap && year.dayOfYear[from]! > 59 ? 1 : 0)
      const equationH = atDay(ephemeris().equationOfTimeMin, dayOfYear + 0.5) / 60
      const noonH = 12 + place.utcOffsetH - place.longitudeDeg / 15 - equationH
      return noonH - middleOf(ghi.subarray(from, from + rowsPerDay), year.middleH[from]!, year.stepH, noonH)
    })
    .toSorted((a, b) => a - b)
  return shifts.length < 3 ? undefined : shifts[Math.floor(shifts.length / 2)]
}

/** The hour about which the light of a day is most nearly symmetric. */
function middleOf(light: Float64Array, firstH: number, stepH: number, noonH: number): number {
  const at = (hour: number): number => {
    const place = (hour - firstH) / stepH
    const low = Math.floor(place)
    const share = place - low
    return (light[low] ?? 0) * (1 - share) + (light[low + 1] ?? 0) * share
  }
  const askew = (middle: number): number => {
    let sum = 0
    for (let away = 0.5; away <= 7; away += 0.5) sum += (at(middle + away) - at(middle - away)) ** 2
    return sum
  }
  let best = { middle: noonH, askew: Infinity }
  const coarse = Array.from({ length: 2 * 10 * WIDEST_H + 1 }, (_, index) => noonH - WIDEST_H + index / 10)
  const tryAll = (middles: readonly number[]): void => {
    for (const middle of middles) {
      const found = askew(middle)
      if (found < best.askew) best = { middle, askew: found }
    }
  }
  tryAll(coarse)
  const { middle } = best
  tryAll(Array.from({ length: 11 }, (_, index) => middle + (index - 5) * FINEST_H))
  return best.middle
}
