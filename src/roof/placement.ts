import type { Feet } from '../values/index.js'

/** Where one module lies on its roof plane. Plane coordinates: x along the eave to the right, y up the slope. */
export interface ModulePlacement {
  /** `<array>.r<row>c<column>`, with the block's id between when the array has several blocks: `south.main.r2c3`. */
  readonly id: string
  readonly array: string
  readonly roofPlane: string
  readonly block: string
  /** Row 1 is the lowest. */
  readonly row: number
  /** Column 1 is the leftmost. */
  readonly column: number
  readonly orientation: 'portrait' | 'landscape'
  /** Lower left corner, ft. */
  readonly xFt: number
  readonly yFt: number
  /** Size along the eave, ft. */
  readonly widthFt: Feet
  /** Size up the slope, ft. */
  readonly heightFt: Feet
}

/** How findings name a module to the person: `south r2c3`, or `south main r2c3` when the array has several blocks. */
export function moduleName(module: Pick<ModulePlacement, 'id'>): string {
  return module.id.replaceAll('.', ' ')
}
