// A year by formula: use and output of an invented house, 8760 hours without a change of clocks, 1 January a Wednesday.
// The formulas and their check sums were worked out outside the project, with a general solver for the optimum.

const hours = 8760

/** Use, kWh by hour, times `a`. */
export function loadOf(a: number): Float64Array {
  return Float64Array.from({ length: hours }, (_, h) => {
    const day = Math.floor(h / 24)
    const hod = h % 24
    const evening = 0.85 * Math.max(0, Math.cos((Math.PI * (hod - 19)) / 12)) ** 2
    const morning = hod >= 4 && hod <= 10 ? 0.35 * Math.max(0, Math.cos((Math.PI * (hod - 7)) / 6)) ** 2 : 0
    const season = 1 + 0.25 * Math.cos((4 * Math.PI * (day - 15)) / 365)
    return a * (0.45 + evening + morning) * season * (1 + 0.3 * Math.sin(1.7 * day))
  })
}

/** Output, kWh by hour, of `kw`. */
export function pvOf(kw: number): Float64Array {
  return Float64Array.from({ length: hours }, (_, h) => {
    const day = Math.floor(h / 24)
    const len = 12 - 3 * Math.cos((2 * Math.PI * (day + 10)) / 365)
    const x = ((h % 24) + 0.5 - (12 - len / 2)) / len
    if (x <= 0 || x >= 1) return 0
    return kw * 0.8 * Math.sin(Math.PI * x) * (0.6 + 0.4 * Math.abs(Math.sin(2.3 * day)))
  })
}

/** Marks of hours, by day of the week (0 = Monday) and hour of the day. */
export function marksOf(is: (weekday: number, hod: number) => boolean): Uint8Array {
  return Uint8Array.from({ length: hours }, (_, h) => (is((Math.floor(h / 24) + 2) % 7, h % 24) ? 1 : 0))
}

export const PEAK = marksOf((weekday, hod) => weekday < 5 && hod >= 16 && hod < 21)
export const NIGHT = marksOf((_, hod) => hod < 6)

export const sum = (values: ArrayLike<number>): number => {
  let all = 0
  for (let i = 0; i < values.length; i++) all += values[i] ?? 0
  return all
}
