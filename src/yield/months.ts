/** Twelve values of a setting that may be one number or twelve. */
export function monthlyValues(setting: number | readonly number[]): readonly number[] {
  return typeof setting === 'number' ? Array.from({ length: 12 }, () => setting) : setting
}
