/** Factor for an ambient up to `toC`, deg C. */
export interface PvHighTemperatureRow {
  readonly toC: number
  readonly factor105: number | undefined
  readonly factor125: number
}

/**
 * Correction for PV wire rated 105 and 125 deg C. Only helps where the terminals allow it.
 *
 * @source NEC 2020 Table 690.31(A)(a), 2023 Table 690.31(A)(3)(2); one data copy, checked by formula.
 */
export const pvHighTemperature: readonly PvHighTemperatureRow[] = [
  { toC: 30, factor105: 1, factor125: 1 },
  { toC: 35, factor105: 0.97, factor125: 0.97 },
  { toC: 40, factor105: 0.93, factor125: 0.95 },
  { toC: 45, factor105: 0.89, factor125: 0.92 },
  { toC: 50, factor105: 0.86, factor125: 0.89 },
  { toC: 55, factor105: 0.82, factor125: 0.86 },
  { toC: 60, factor105: 0.77, factor125: 0.83 },
  { toC: 65, factor105: 0.73, factor125: 0.79 },
  { toC: 70, factor105: 0.68, factor125: 0.76 },
  { toC: 75, factor105: 0.63, factor125: 0.73 },
  { toC: 80, factor105: 0.58, factor125: 0.69 },
  { toC: 85, factor105: 0.52, factor125: 0.65 },
  { toC: 90, factor105: 0.45, factor125: 0.61 },
  { toC: 95, factor105: 0.37, factor125: 0.56 },
  { toC: 100, factor105: 0.26, factor125: 0.51 },
  { toC: 105, factor105: undefined, factor125: 0.46 },
  { toC: 110, factor105: undefined, factor125: 0.4 },
  { toC: 115, factor105: undefined, factor125: 0.32 },
  { toC: 120, factor105: undefined, factor125: 0.23 },
]

/**
 * Ampacity of such wire, A.
 *
 * @source NEC 2020 Table 690.31(A)(b); one data copy.
 */
export const pvHighTemperatureAmpacity: readonly {
  readonly size: string
  readonly at105A: number
  readonly at125A: number
}[] = [
  { size: '14', at105A: 29, at125A: 31 },
  { size: '12', at105A: 36, at125A: 39 },
  { size: '10', at105A: 46, at125A: 50 },
  { size: '8', at105A: 64, at125A: 69 },
  { size: '6', at105A: 81, at125A: 87 },
  { size: '4', at105A: 109, at125A: 118 },
]
