import { INSULATED_ROOF_GROUND_PSF, INSULATED_ROOF_THERMAL, THERMAL_7_22 } from '../../tables/asce7/index.js'
import { at, type PoundsPerSquareFoot } from '../../values/index.js'

/**
 * Thermal factor Ct of a heated, unventilated roof by 7-22, straight between the columns, then between the rows.
 *
 * @param insulationR Thermal resistance of the roof, h ft2 F / Btu.
 * @param groundPsf Ground snow at strength level, psf.
 * @returns Pure number from 1.0 to 1.2.
 * @source ASCE 7-22 table 7.3-3 (secondary)
 * @example insulatedRoofThermal(20, 27.5) is 1.065
 */
export function insulatedRoofThermal(insulationR: number, groundPsf: PoundsPerSquareFoot): number {
  const rows = INSULATED_ROOF_THERMAL
  const last = at(rows, rows.length - 1)
  if (insulationR > last.insulationR) return THERMAL_7_22.over_50
  const upper = rows.findIndex((row) => insulationR <= row.insulationR)
  const high = at(rows, upper)
  const low = at(rows, Math.max(0, upper - 1))
  const share = upper === 0 ? 1 : (insulationR - low.insulationR) / (high.insulationR - low.insulationR)
  const [from, to] = [factorIn(low.factors, groundPsf), factorIn(high.factors, groundPsf)]
  return from + share * (to - from)
}

function factorIn(factors: readonly number[], groundPsf: PoundsPerSquareFoot): number {
  const columns = INSULATED_ROOF_GROUND_PSF
  const next = columns.findIndex((column) => groundPsf <= column)
  if (next === 0) return at(factors, 0)
  if (next < 0) return at(factors, factors.length - 1)
  const [from, to] = [at(columns, next - 1), at(columns, next)]
  const share = (groundPsf - from) / (to - from)
  return at(factors, next - 1) + share * (at(factors, next) - at(factors, next - 1))
}
