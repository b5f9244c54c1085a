/** Supports of a raceway up to trade size `toTradeSize`. */
export interface RacewaySupportRow {
  readonly kind: 'EMT' | 'RMC' | 'PVC' | 'LFNC' | 'LFMC'
  /** Last trade size of the row. */
  readonly toTradeSize: string
  readonly maxSpacingFt: number
  readonly maxFromBoxIn: number
  readonly section: string
}

/**
 * Largest distance between supports, and from a box, fitting or end to the first support.
 *
 * @source NEC 344.30, 350.30, 356.30, 358.30 and Table 352.30 (2023: Table 352.30(B)); 2017 and 2023 read.
 */
export const racewaySupports: readonly RacewaySupportRow[] = [
  { kind: 'EMT', toTradeSize: '4', maxSpacingFt: 10, maxFromBoxIn: 36, section: '358.30(A)' },
  { kind: 'RMC', toTradeSize: '3/4', maxSpacingFt: 10, maxFromBoxIn: 36, section: '344.30, Table 344.30(B)' },
  { kind: 'RMC', toTradeSize: '1', maxSpacingFt: 12, maxFromBoxIn: 36, section: '344.30' },
  { kind: 'RMC', toTradeSize: '1-1/2', maxSpacingFt: 14, maxFromBoxIn: 36, section: '344.30' },
  { kind: 'RMC', toTradeSize: '2-1/2', maxSpacingFt: 16, maxFromBoxIn: 36, section: '344.30' },
  { kind: 'RMC', toTradeSize: '6', maxSpacingFt: 20, maxFromBoxIn: 36, section: '344.30' },
  { kind: 'LFNC', toTradeSize: '4', maxSpacingFt: 3, maxFromBoxIn: 12, section: '356.30(1)' },
  { kind: 'LFMC', toTradeSize: '4', maxSpacingFt: 4.5, maxFromBoxIn: 12, section: '350.30' },
  { kind: 'PVC', toTradeSize: '1', maxSpacingFt: 3, maxFromBoxIn: 36, section: '352.30, Table 352.30' },
  { kind: 'PVC', toTradeSize: '2', maxSpacingFt: 5, maxFromBoxIn: 36, section: '352.30, Table 352.30' },
  { kind: 'PVC', toTradeSize: '3', maxSpacingFt: 6, maxFromBoxIn: 36, section: '352.30, Table 352.30' },
  { kind: 'PVC', toTradeSize: '5', maxSpacingFt: 7, maxFromBoxIn: 36, section: '352.30, Table 352.30' },
  { kind: 'PVC', toTradeSize: '6', maxSpacingFt: 8, maxFromBoxIn: 36, section: '352.30, Table 352.30' },
]

/** Largest distance between supports of exposed wire in an array, in. @source NEC 2020 690.31(C)(1). */
export const ARRAY_CABLE_SUPPORT_IN = 24
