import { INSTALLED_NOCT } from '../tables/modules/index.js'
import type { Celsius, Inches, Kelvins } from '../values/index.js'

/**
 * Temperature rise of the cell as a linear function of irradiance at a given wind: all three published models have the
 * form Tc = Ta + E * rise(wind).
 */
export type CellTemperatureModel =
  | { readonly kind: 'by_mounting'; readonly a: number; readonly b: number; readonly deltaC: Kelvins }
  | { readonly kind: 'noct'; readonly installedNoctC: Celsius }
  | { readonly kind: 'faiman'; readonly u0: number; readonly u1: number; readonly windShare: number }

/**
 * Cell temperature above air per irradiance.
 *
 * @param wind10mMs Wind at 10 m, m/s.
 * @returns K per W/m2.
 * @source by_mounting: King et al. 2004, SAND2004-3535; noct: definition of NOCT (800 W/m2, 20 deg C, 1 m/s);
 *   faiman: Faiman 2008 / IEC 61853-2.
 * @example cellRiseKPerWM2({ kind: 'faiman', u0: 25, u1: 6.84, windShare: 1 }, 1) * 1000 // 31.41
 */
export function cellRiseKPerWM2(model: CellTemperatureModel, wind10mMs: number): number {
  switch (model.kind) {
    case 'by_mounting':
      return Math.exp(model.a + model.b * wind10mMs) + model.deltaC / 1000
    case 'noct':
      return (model.installedNoctC - 20) / 800
    case 'faiman':
      return 1 / (model.u0 + model.u1 * model.windShare * wind10mMs)
  }
}

/**
 * Nominal operating cell temperature as installed.
 *
 * @param noctC NOCT of the data sheet, deg C.
 * @param mounting How the modules are held.
 * @param standoffIn Clear height between roof and frame, in; 6 in and more count as 6.
 * @source Fuentes 1987, SAND85-0330 (values from memory, unverified); straight lines between the standoffs.
 */
export function installedNoctC(
  noctC: Celsius,
  mounting: 'free_rack' | 'near_roof' | 'laid_on_roof',
  standoffIn: Inches,
): Celsius {
  if (mounting === 'free_rack') return noctC + INSTALLED_NOCT.rackK
  const standoff = mounting === 'laid_on_roof' ? 0 : standoffIn
  const rows = INSTALLED_NOCT.byStandoff
  for (let index = 1; index < rows.length; index += 1) {
    const low = rows[index - 1] as (typeof rows)[number]
    const high = rows[index] as (typeof rows)[number]
    if (standoff <= high.standoffIn) {
      const share = (standoff - low.standoffIn) / (high.standoffIn - low.standoffIn)
      return noctC + low.aboveK + share * (high.aboveK - low.aboveK)
    }
  }
  return noctC + (rows.at(-1) as (typeof rows)[number]).aboveK
}
