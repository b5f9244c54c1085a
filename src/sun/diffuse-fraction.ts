/**
 * Diffuse share of the global horizontal irradiation of an hour or less.
 *
 * @param clearness Hourly clearness index kt, 0 and more.
 * @returns Diffuse over global, 0.165 to 1.
 * @source Erbs, Klein & Duffie 1982, hourly correlation.
 * @example erbsHourly(0.5) // 0.6591
 */
export function erbsHourly(clearness: number): number {
  const k = clearness
  if (k <= 0.22) return 1 - 0.09 * Math.max(0, k)
  if (k <= 0.8) return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)))
  return 0.165
}
