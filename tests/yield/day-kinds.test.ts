import { describe, expect, it } from 'vitest'
import { climateSites, MEAN_DAY_OF_YEAR, siteQuality, siteRecord } from '../../src/climate/index.js'
import {
  dailyExtraterrestrialWhM2,
  eccentricityFactor,
  globalShareOfDay,
  SOLAR_CONSTANT_W_M2,
  sunsetHourAngleDeg,
} from '../../src/sun/index.js'
import { dayKinds, type DayInstant, type DayKinds } from '../../src/yield/day-kinds.js'

const RADIANS = Math.PI / 180

/** Spencer's declination, degrees, which the printed values were made with. */
function spencerDeg(dayOfYear: number): number {
  const B = (2 * Math.PI * (dayOfYear - 1)) / 365
  return (
    (0.006918 -
      0.399912 * Math.cos(B) +
      0.070257 * Math.sin(B) -
      0.006758 * Math.cos(2 * B) +
      0.000907 * Math.sin(2 * B) -
      0.002697 * Math.cos(3 * B) +
      0.00148 * Math.sin(3 * B)) /
    RADIANS
  )
}

interface MeanDay {
  readonly sunsetDeg: number
  readonly clearness: number
  readonly instants: readonly DayInstant[]
  readonly stepH: number
  readonly days: DayKinds
}

/** The mean day of a station's month, month 1 to 12, on 24 instants. */
function meanDay(wmo: string, month: number): MeanDay {
  const site = climateSites().find((one) => one.wmo === wmo)!
  const record = siteRecord(site)
  const quality = siteQuality(site)
  const dayOfYear = MEAN_DAY_OF_YEAR[month - 1]!
  const declinationDeg = spencerDeg(dayOfYear)
  const normalWM2 = SOLAR_CONSTANT_W_M2 * eccentricityFactor(dayOfYear)
  const sunsetDeg = sunsetHourAngleDeg(site.latitudeDeg, declinationDeg)
  const outsideWhM2 = dailyExtraterrestrialWhM2(site.latitudeDeg, declinationDeg, normalWM2)
  const ghiWhM2 = record.ghiWhM2Day[month - 1]!
  const stepH = (2 * sunsetDeg) / 15 / 24
  const [phi, delta] = [site.latitudeDeg * RADIANS, declinationDeg * RADIANS]
  const instants = Array.from({ length: 24 }, (_, index) => {
    const hourAngleDeg = (index + 0.5) * stepH * 15 - sunsetDeg
    const up = Math.sin(phi) * Math.sin(delta) + Math.cos(phi) * Math.cos(delta) * Math.cos(hourAngleDeg * RADIANS)
    return { hourAngleDeg, share: globalShareOfDay(hourAngleDeg, sunsetDeg), outsideWM2: normalWM2 * up }
  })
  const days = dayKinds(
    instants,
    {
      ghiWhM2,
      outsideWhM2,
      stepH,
      dhiWhM2: record.dhiWhM2Day[month - 1]!,
      morning: { ghi: quality.morningGhi[month - 1]!, dhi: quality.morningDhi[month - 1]! },
    },
    10,
  )
  return { sunsetDeg, clearness: ghiWhM2 / outsideWhM2, instants, stepH, days }
}

// An independent reader's figures for these months, ten kinds of day as conditional means.
type Printed = [string, string, number, number, number, number, number, number, number, number, number]
const PRINTED: Printed[] = [
  ['Los Angeles in January', '722950', 1, 75.11, 0.5184, 0.59844, 0.504, -0.01337, 1255, 1.076, 1.145],
  ['Los Angeles in June', '722950', 6, 106.626, 0.6216, 0.68878, 0.445, 0.1597, 2566, 1.051, 0.747],
  ['Boston in January', '725090', 1, 69.613, 0.4694, 0.57742, 0.512, -0.04156, 928, 1.107, 1.099],
  ['Boston in June', '725090', 6, 112.822, 0.4991, 0.70187, 0.479, 0.05984, 2787, 1.29, 1.042],
  ['Phoenix in January', '722780', 1, 75.385, 0.617, 0.59945, 0.474, 0.08675, 1175, 1.441, 1.022],
]

describe('the kinds of day of a month', () => {
  it.each(PRINTED)(
    'are those of an independent reader to the printed digits: %s',
    (_, wmo, month, sunsetDeg, clearness, meanTanh, morning, lean, erbs, before, after) => {
      const day = meanDay(wmo, month)
      expect(day.sunsetDeg).toBeCloseTo(sunsetDeg, 3)
      expect(day.clearness).toBeCloseTo(clearness, 4)
      expect(siteQuality(climateSites().find((one) => one.wmo === wmo)!).morningGhi[month - 1]).toBe(morning)
      expect(day.days.meanTanh).toBeCloseTo(meanTanh, 5)
      expect(day.days.lean).toBeCloseTo(lean, 5)
      expect(Math.round(day.days.correlationDhiWhM2)).toBe(erbs)
      expect(day.days.exponents[0]).toBeCloseTo(before, 3)
      expect(day.days.exponents[1]).toBeCloseTo(after, 3)
    },
  )

  it.each(PRINTED)('have the light of the table, morning and afternoon: %s', (_, wmo, month) => {
    const { days, instants, stepH } = meanDay(wmo, month)
    const site = climateSites().find((one) => one.wmo === wmo)!
    const [record, quality] = [siteRecord(site), siteQuality(site)]
    const sum = (key: 'ghiWM2' | 'dhiWM2', belongs: (hourAngleDeg: number) => boolean): number =>
      days.kinds.reduce(
        (total, kind) =>
          total +
          kind.share *
            stepH *
            kind[key].reduce((part, watts, at) => part + (belongs(instants[at]!.hourAngleDeg) ? watts : 0), 0),
        0,
      )
    const [ghi, dhi] = [record.ghiWhM2Day[month - 1]!, record.dhiWhM2Day[month - 1]!]
    expect(sum('ghiWM2', () => true)).toBeCloseTo(ghi, 6)
    expect(sum('ghiWM2', (angle) => angle < 0)).toBeCloseTo(ghi * quality.morningGhi[month - 1]!, 6)
    expect(sum('dhiWM2', (angle) => angle < 0)).toBeCloseTo(dhi * quality.morningDhi[month - 1]!, 2)
    expect(sum('dhiWM2', (angle) => angle > 0)).toBeCloseTo(dhi * (1 - quality.morningDhi[month - 1]!), 2)
  })
})
