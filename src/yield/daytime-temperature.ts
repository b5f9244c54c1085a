import type { Celsius, Kelvins } from '../values/index.js'

/** Amplitude and phase of the daily temperature course (Erbs, Klein & Beckman 1983, ASHRAE Journal; from memory, unverified). */
const HARMONICS = [
  [0.4632, 3.805],
  [0.0984, 0.36],
  [0.0168, 0.822],
  [0.0138, 3.513],
] as const

/**
 * Dry-bulb temperature at a time of the mean day, since modules work by day, when it is warmer than the mean.
 *
 * @param meanC Monthly mean, deg C.
 * @param swingC Mean daily maximum less mean daily minimum, K.
 * @param solarHour Solar time, h.
 * @source Erbs, Klein & Beckman 1983 (from memory, unverified); the swing is the table's own.
 */
export function daytimeTemperatureC(meanC: Celsius, swingC: Kelvins, solarHour: number): Celsius {
  const t = (2 * Math.PI * (solarHour - 1)) / 24
  let sum = 0
  HARMONICS.forEach(([amplitude, phase], index) => {
    sum += amplitude * Math.cos((index + 1) * t - phase)
  })
  return meanC + swingC * sum
}
