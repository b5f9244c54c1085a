import type { BillingCalendar } from '../calendar/index.js'

/** Use of the house through a typical year, and the calendar that its hours belong to. */
export interface UsageYear {
  /** 8760 hours of local standard time, kWh, whole millionths. */
  readonly usageKwh: Float64Array
  /** The same by the 35,040 quarters of its hours, where readings tell them; four of them add up to their hour exactly. */
  readonly quarterKwh?: Float64Array
  readonly calendar: BillingCalendar
  readonly values: UsageValues
}

export interface UsageValues {
  readonly from: 'monthly_kwh' | 'annual_kwh' | 'green_button' | 'interval_csv'
  /** Name of the load shape; null for meter data. */
  readonly load_shape: string | null
  /** First real date of the year, `YYYY-MM-DD`; its weekdays are used. */
  readonly first_date: string
  readonly daylight_saving: boolean
  readonly annual_kwh: number
  /** By month of clock time, January first. */
  readonly monthly_kwh: readonly number[]
  readonly meter: MeterReport | null
}

/** What was found in meter data and what was done about it. */
export interface MeterReport {
  readonly readings: number
  readonly first_reading: string
  readonly last_reading: string
  readonly duplicates_dropped: number
  readonly conflicts_settled: number
  readonly estimated_readings: number
  readonly filled_hours: number
  readonly longest_gap_hours: number
  readonly filled_kwh: number
  readonly export_kwh: number
}

/** Monthly totals by clock time, kWh, exact to a millionth. */
export function monthlyTotals(usageKwh: Float64Array, calendar: BillingCalendar): number[] {
  const micro = Array.from<number>({ length: 12 }).fill(0)
  for (let h = 0; h < usageKwh.length; h++) {
    const month = (calendar.month[calendar.clockDay[h] ?? 0] ?? 1) - 1
    micro[month] = (micro[month] ?? 0) + Math.round((usageKwh[h] ?? 0) * 1e6)
  }
  return micro.map((kwh) => kwh / 1e6)
}
