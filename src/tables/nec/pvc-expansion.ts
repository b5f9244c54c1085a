/**
 * Change of length of PVC conduit, in per 100 ft, by temperature change, deg F.
 *
 * @source NEC Table 352.44 (2023: Table 352.44(A)); 3.38e-5 in/in/F.
 */
export const pvcExpansion: readonly { readonly changeF: number; readonly inPer100Ft: number }[] = [
  { changeF: 5, inPer100Ft: 0.2 },
  { changeF: 10, inPer100Ft: 0.41 },
  { changeF: 15, inPer100Ft: 0.61 },
  { changeF: 20, inPer100Ft: 0.81 },
  { changeF: 25, inPer100Ft: 1.01 },
  { changeF: 30, inPer100Ft: 1.22 },
  { changeF: 35, inPer100Ft: 1.42 },
  { changeF: 40, inPer100Ft: 1.62 },
  { changeF: 45, inPer100Ft: 1.83 },
  { changeF: 50, inPer100Ft: 2.03 },
  { changeF: 55, inPer100Ft: 2.23 },
  { changeF: 60, inPer100Ft: 2.43 },
  { changeF: 65, inPer100Ft: 2.64 },
  { changeF: 70, inPer100Ft: 2.84 },
  { changeF: 75, inPer100Ft: 3.04 },
  { changeF: 80, inPer100Ft: 3.24 },
  { changeF: 85, inPer100Ft: 3.45 },
  { changeF: 90, inPer100Ft: 3.65 },
  { changeF: 95, inPer100Ft: 3.85 },
  { changeF: 100, inPer100Ft: 4.06 },
  { changeF: 105, inPer100Ft: 4.26 },
  { changeF: 110, inPer100Ft: 4.46 },
  { changeF: 115, inPer100Ft: 4.66 },
  { changeF: 120, inPer100Ft: 4.87 },
  { changeF: 125, inPer100Ft: 5.07 },
  { changeF: 130, inPer100Ft: 5.27 },
  { changeF: 135, inPer100Ft: 5.48 },
  { changeF: 140, inPer100Ft: 5.68 },
  { changeF: 145, inPer100Ft: 5.88 },
  { changeF: 150, inPer100Ft: 6.08 },
  { changeF: 155, inPer100Ft: 6.29 },
  { changeF: 160, inPer100Ft: 6.49 },
  { changeF: 165, inPer100Ft: 6.69 },
  { changeF: 170, inPer100Ft: 6.9 },
  { changeF: 175, inPer100Ft: 7.1 },
  { changeF: 180, inPer100Ft: 7.3 },
  { changeF: 185, inPer100Ft: 7.5 },
  { changeF: 190, inPer100Ft: 7.71 },
  { changeF: 195, inPer100Ft: 7.91 },
  { changeF: 200, inPer100Ft: 8.11 },
]

/** Coefficient of PVC conduit, in/in/F. @source NEC Table 352.44. */
export const PVC_COEFFICIENT_PER_F = 3.38e-5

/** Change of length between fixed points at which a fitting is needed, in. @source NEC 352.44. */
export const EXPANSION_FITTING_FROM_IN = 0.25

/** Steel conduit changes this share of PVC. @source NEC 2017 300.7(B) informational note. */
export const STEEL_SHARE_OF_PVC = 0.2
