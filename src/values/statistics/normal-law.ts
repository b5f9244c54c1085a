/**
 * Standard normal probability below z.
 *
 * @source Abramowitz & Stegun 26.2.17, error below 7.5e-8 (from memory; checked in the tests against integration).
 */
export function normalBelow(z: number): number {
  const x = Math.abs(z)
  if (x > 8) return z > 0 ? 1 : 0
  const t = 1 / (1 + 0.2316419 * x)
  const series = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
  const above = normalDensity(x) * series
  return z > 0 ? 1 - above : above
}

/** Density of the standard normal law at z (exact). */
export function normalDensity(z: number): number {
  return 0.3989422804014327 * Math.exp((-z * z) / 2)
}
