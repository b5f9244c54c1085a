export const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const

/** Day of the year whose extraterrestrial irradiation is nearest the month's mean (Klein 1977; Duffie & Beckman, table 1.6.1). */
export const KLEIN_MEAN_DAYS = [17, 47, 75, 105, 135, 162, 198, 228, 258, 288, 318, 344] as const

/** Twelve values of a setting that may be one number or twelve. */
export function monthlyValues(setting: number | readonly number[]): readonly number[] {
  return typeof setting === 'number' ? Array.from({ length: 12 }, () => setting) : setting
}
