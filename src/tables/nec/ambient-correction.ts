/** Factor for an ambient up to `toC`, deg C; undefined where that insulation is not permitted. */
export interface AmbientCorrectionRow {
  readonly toC: number
  readonly factor60: number | undefined
  readonly factor75: number | undefined
  readonly factor90: number | undefined
}

/**
 * Ambient temperature correction, base 30 deg C. A temperature between two printed rows belongs to the hotter one.
 *
 * @source NEC Table 310.15(B)(1)(1) (2023), 310.15(B)(1) (2020), 310.15(B)(2)(a) (2011 to 2017).
 */
export const ambientCorrection: readonly AmbientCorrectionRow[] = [
  { toC: 10, factor60: 1.29, factor75: 1.2, factor90: 1.15 },
  { toC: 15, factor60: 1.22, factor75: 1.15, factor90: 1.12 },
  { toC: 20, factor60: 1.15, factor75: 1.11, factor90: 1.08 },
  { toC: 25, factor60: 1.08, factor75: 1.05, factor90: 1.04 },
  { toC: 30, factor60: 1, factor75: 1, factor90: 1 },
  { toC: 35, factor60: 0.91, factor75: 0.94, factor90: 0.96 },
  { toC: 40, factor60: 0.82, factor75: 0.88, factor90: 0.91 },
  { toC: 45, factor60: 0.71, factor75: 0.82, factor90: 0.87 },
  { toC: 50, factor60: 0.58, factor75: 0.75, factor90: 0.82 },
  { toC: 55, factor60: 0.41, factor75: 0.67, factor90: 0.76 },
  { toC: 60, factor60: undefined, factor75: 0.58, factor90: 0.71 },
  { toC: 65, factor60: undefined, factor75: 0.47, factor90: 0.65 },
  { toC: 70, factor60: undefined, factor75: 0.33, factor90: 0.58 },
  { toC: 75, factor60: undefined, factor75: undefined, factor90: 0.5 },
  { toC: 80, factor60: undefined, factor75: undefined, factor90: 0.41 },
  { toC: 85, factor60: undefined, factor75: undefined, factor90: 0.29 },
]
