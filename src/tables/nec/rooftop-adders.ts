import type { Edition } from './editions.js'
import { withCarried } from './edition-2026.js'

/** Added to the ambient of a raceway in the sun whose height above the roof is below (or at) the limit of the row. */
export interface RooftopAdderRow {
  readonly edition: Edition
  readonly section: string
  /** Upper end of the row, in; Infinity in the last one. */
  readonly toIn: number
  /** Whether `toIn` itself belongs to the row. */
  readonly inclusive: boolean
  readonly adderC: number
  readonly adderF: number
}

const rows: readonly RooftopAdderRow[] = [
  { edition: 'NEC 2011', section: 'Table 310.15(B)(3)(c)', toIn: 0.5, inclusive: true, adderC: 33, adderF: 60 },
  { edition: 'NEC 2011', section: 'Table 310.15(B)(3)(c)', toIn: 3.5, inclusive: true, adderC: 22, adderF: 40 },
  { edition: 'NEC 2011', section: 'Table 310.15(B)(3)(c)', toIn: 12, inclusive: true, adderC: 17, adderF: 30 },
  { edition: 'NEC 2011', section: 'Table 310.15(B)(3)(c)', toIn: 36, inclusive: true, adderC: 14, adderF: 25 },
  { edition: 'NEC 2011', section: 'Table 310.15(B)(3)(c)', toIn: Infinity, inclusive: true, adderC: 0, adderF: 0 },
  { edition: 'NEC 2014', section: 'Table 310.15(B)(3)(c)', toIn: 0.5, inclusive: true, adderC: 33, adderF: 60 },
  { edition: 'NEC 2014', section: 'Table 310.15(B)(3)(c)', toIn: 3.5, inclusive: true, adderC: 22, adderF: 40 },
  { edition: 'NEC 2014', section: 'Table 310.15(B)(3)(c)', toIn: 12, inclusive: true, adderC: 17, adderF: 30 },
  { edition: 'NEC 2014', section: 'Table 310.15(B)(3)(c)', toIn: 36, inclusive: true, adderC: 14, adderF: 25 },
  { edition: 'NEC 2014', section: 'Table 310.15(B)(3)(c)', toIn: Infinity, inclusive: true, adderC: 0, adderF: 0 },
  { edition: 'NEC 2017', section: '310.15(B)(3)(c)', toIn: 0.875, inclusive: false, adderC: 33, adderF: 60 },
  { edition: 'NEC 2017', section: '310.15(B)(3)(c)', toIn: Infinity, inclusive: true, adderC: 0, adderF: 0 },
  { edition: 'NEC 2020', section: '310.15(B)(2)', toIn: 0.875, inclusive: false, adderC: 33, adderF: 60 },
  { edition: 'NEC 2020', section: '310.15(B)(2)', toIn: Infinity, inclusive: true, adderC: 0, adderF: 0 },
  { edition: 'NEC 2023', section: '310.15(B)(2)', toIn: 0.75, inclusive: false, adderC: 33, adderF: 60 },
  { edition: 'NEC 2023', section: '310.15(B)(2)', toIn: Infinity, inclusive: true, adderC: 0, adderF: 0 },
]

/**
 * Temperature added for raceways in sunlight on or above roofs, by edition, lowest raceway first.
 *
 * @source NEC Table 310.15(B)(3)(c) (2011, 2014), 310.15(B)(3)(c) (2017), 310.15(B)(2) (2020, 2023). Often quoted as 7/8 in for 2023 too; the 2023 text says 3/4 in; 2026 as 2023, no source reports a change.
 */
export const rooftopAdders: readonly RooftopAdderRow[] = withCarried(rows, (row) => row)

/** Insulations that need no adder, by edition. @source NEC 2017 310.15(B)(3)(c), 2020 and 2023 310.15(B)(2); 2026 as 2023. */
export const rooftopAdderExempt: Readonly<Record<Edition, readonly string[]>> = {
  'NEC 2011': [],
  'NEC 2014': [],
  'NEC 2017': ['XHHW-2'],
  'NEC 2020': ['XHHW-2'],
  'NEC 2023': ['XHHW-2'],
  'NEC 2026': ['XHHW-2'],
}
