/** Factor on the open-circuit voltage for an ambient of `fromC` deg C and above (up to the next row). */
export interface VocCorrectionRow {
  readonly fromC: number
  readonly factor: number
}

/**
 * Open-circuit voltage of crystalline silicon at low ambient. A temperature between two rows belongs to the colder one.
 *
 * @source NEC Table 690.7(A) (2017, 2020, 2023), Table 690.7 (2011, 2014).
 */
export const vocCorrection: readonly VocCorrectionRow[] = [
  { fromC: 25, factor: 1 },
  { fromC: 20, factor: 1.02 },
  { fromC: 15, factor: 1.04 },
  { fromC: 10, factor: 1.06 },
  { fromC: 5, factor: 1.08 },
  { fromC: 0, factor: 1.1 },
  { fromC: -5, factor: 1.12 },
  { fromC: -10, factor: 1.14 },
  { fromC: -15, factor: 1.16 },
  { fromC: -20, factor: 1.18 },
  { fromC: -25, factor: 1.2 },
  { fromC: -30, factor: 1.21 },
  { fromC: -35, factor: 1.23 },
  { fromC: -40, factor: 1.25 },
]
