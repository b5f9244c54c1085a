/**
 * Declination and equation of time of a day.
 *
 * @source Spencer 1971, Search 2:172 (from memory); within 0.4 deg and 0.6 min of an ephemeris
 */
export function spencerSun(dayOfYear: number): {
  readonly sinDeclination: number
  readonly cosDeclination: number
  readonly equationOfTimeH: number
} {
  const B = (2 * Math.PI * (dayOfYear - 1)) / 365
  const [c1, s1, c2, s2] = [Math.cos(B), Math.sin(B), Math.cos(2 * B), Math.sin(2 * B)]
  const [c3, s3] = [Math.cos(3 * B), Math.sin(3 * B)]
  const E = 229.2 * (0.000075 + 0.001868 * c1 - 0.032077 * s1 - 0.014615 * c2 - 0.04089 * s2) // min
  const delta = 0.006918 - 0.399912 * c1 + 0.070257 * s1 - 0.006758 * c2 + 0.000907 * s2 - 0.002697 * c3 + 0.00148 * s3 // rad
  return { sinDeclination: Math.sin(delta), cosDeclination: Math.cos(delta), equationOfTimeH: E / 60 }
}
