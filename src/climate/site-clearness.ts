import { DAYS_IN_MONTH, monthlyExtraterrestrialWhM2Day } from './extraterrestrial.js'
import type { MonthlyRecord } from './site-table.js'
import type { Degrees } from '../values/index.js'

/** Below this a month has too little sun for its mean day to give a clearness index, Wh/m2 per day. */
const LOW_SUN_WH_M2_DAY = 300
/** Cap of the clearness index in months of low sun, the upper end of what the Bendt distribution was fitted to. */
const LOW_SUN_CLEARNESS = 0.8

/** The parts of a site's sunshine that can be carried to another latitude. */
export interface SiteClearness {
  /** Monthly clearness index; undefined in polar night. January first. */
  readonly clearness: readonly (number | undefined)[]
  /** Diffuse over global, 0 to 1; 1 where there is no sun. January first. */
  readonly diffuseFraction: readonly number[]
  /** Yearly global over yearly extraterrestrial irradiation. */
  readonly annualClearness: number
}

/** Splits a site's global and diffuse irradiation into clearness index and diffuse fraction. */
export function siteClearness(record: MonthlyRecord, latitudeDeg: Degrees): SiteClearness {
  const extraterrestrial = monthlyExtraterrestrialWhM2Day(latitudeDeg)
  return {
    clearness: record.ghiWhM2Day.map((ghi, month) => {
      const h0 = extraterrestrial[month]!
      if (h0 <= 0) return undefined
      return h0 < LOW_SUN_WH_M2_DAY ? Math.min(ghi / h0, LOW_SUN_CLEARNESS) : ghi / h0
    }),
    diffuseFraction: record.ghiWhM2Day.map((ghi, month) =>
      ghi > 0 ? Math.min(1, record.dhiWhM2Day[month]! / ghi) : 1,
    ),
    annualClearness: yearlySum(record.ghiWhM2Day) / yearlySum(extraterrestrial),
  }
}

/**
 * Yearly sum of twelve mean days.
 *
 * @param perDay Twelve means per day, January first.
 * @returns In the unit of `perDay` without the day.
 */
export function yearlySum(perDay: readonly number[]): number {
  return perDay.reduce((sum, value, month) => sum + value * DAYS_IN_MONTH[month]!, 0)
}
