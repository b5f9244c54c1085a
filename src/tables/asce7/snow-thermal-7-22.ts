/** Ground snow of the columns, psf; the first column holds below, the last above. */
export const INSULATED_ROOF_GROUND_PSF = [10, 20, 30, 40, 50, 60, 70] as const

/**
 * Thermal factor Ct of heated, unventilated roofs by insulation (h ft2 F / Btu) and ground snow at strength level.
 *
 * The first row holds below its insulation; above the last the factor is 1.2.
 *
 * @source ASCE 7-22 table 7.3-3 (secondary: an open calculator specification that read an image of the page)
 */
export const INSULATED_ROOF_THERMAL: readonly { readonly insulationR: number; readonly factors: readonly number[] }[] =
  [
    { insulationR: 20, factors: [1.2, 1.11, 1.05, 1.01, 1.0, 1.0, 1.0] },
    { insulationR: 30, factors: [1.2, 1.17, 1.14, 1.13, 1.12, 1.11, 1.1] },
    { insulationR: 40, factors: [1.2, 1.19, 1.17, 1.16, 1.16, 1.15, 1.15] },
    { insulationR: 50, factors: [1.2, 1.2, 1.19, 1.19, 1.19, 1.18, 1.18] },
  ]

/**
 * Thermal factor Ct of the other roofs of 7-22.
 *
 * @source ASCE 7-22 table 7.3-2: ventilated roofs 1.2 (secondary); unheated and freezer as in 7-16 (from memory)
 */
export const THERMAL_7_22 = { over_50: 1.2, cold_ventilated: 1.2, unheated: 1.2, freezer: 1.3 } as const
