import type { OrientedGrid } from './fit-on-rafters.js'
import type { ModulePlacement } from './placement.js'

/** An array and the plane it lies on, by id. */
export interface ArrayPlace {
  readonly arrayId: string
  readonly roofPlane: string
}

/**
 * Modules of one fitted row.
 *
 * @param row Its number, 1 the lowest, and the height of its lower edge, ft.
 * @param leftsFt Left edges, ascending, ft.
 */
export function modulesOfRow(
  { arrayId, roofPlane }: ArrayPlace,
  { orientation, widthFt, heightFt }: OrientedGrid,
  row: { readonly number: number; readonly yFt: number },
  leftsFt: readonly number[],
): ModulePlacement[] {
  return leftsFt.map((xFt, column) => ({
    id: `${arrayId}.r${row.number}c${column + 1}`,
    array: arrayId,
    roofPlane,
    block: 'fit',
    row: row.number,
    column: column + 1,
    orientation,
    xFt,
    yFt: row.yFt,
    widthFt,
    heightFt,
  }))
}
