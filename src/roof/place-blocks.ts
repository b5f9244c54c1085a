import type { Block, RoofProject } from '../project/index.js'
import { StageError, type Worksheet } from '../worksheet/index.js'
import { feetOf, own } from '../values/index.js'
import { moduleGapFt } from './module-gap.js'
import { moduleSize, sizeOnPlane } from './module-size.js'
import type { ModulePlacement } from './placement.js'

/**
 * Lays out the blocks that the person placed in one array, row by row from the eave.
 *
 * @param project The project.
 * @param arrayId Id of an array whose arrangement has `blocks`.
 * @param worksheet Takes the assumed gaps.
 * @throws StageError when the module has no dimensions, or `omit` names a module that the block does not have.
 */
export function placeBlocks(project: RoofProject, arrayId: string, worksheet: Worksheet): ModulePlacement[] {
  const array = own(project.arrays, arrayId)
  const arrangement = array?.arrangement
  if (array === undefined || typeof arrangement !== 'object' || !('blocks' in arrangement)) return []
  const size = moduleSize(project, arrayId)
  const blocks = Object.entries(arrangement.blocks)
  return blocks.flatMap(([blockId, block]) => {
    const path = `arrays.${arrayId}.arrangement.blocks.${blockId}`
    const gapFt = moduleGapFt(block.gap_in, `${path}.gap_in`, worksheet)
    const rowGapFt = block.row_gap_in === undefined ? gapFt : feetOf(block.row_gap_in)
    const { widthFt, heightFt } = sizeOnPlane(size, block.orientation)
    const prefix = blocks.length === 1 ? arrayId : `${arrayId}.${blockId}`
    return cellsOf(block, path).map(([row, column]) => ({
      id: `${prefix}.r${row}c${column}`,
      array: arrayId,
      roofPlane: array.roof_plane,
      block: blockId,
      row,
      column,
      orientation: block.orientation,
      xFt: block.x_ft + (column - 1) * (widthFt + gapFt),
      yFt: block.y_ft + (row - 1) * (heightFt + rowGapFt),
      widthFt,
      heightFt,
    }))
  })
}

function cellsOf(block: Block, path: string): [row: number, column: number][] {
  const omitted = new Set<string>()
  for (const [index, cell] of (block.omit ?? []).entries()) {
    const [row = 0, column = 0] = (cell.match(/\d+/g) ?? []).map(Number)
    if (row < 1 || row > block.rows || column < 1 || column > block.columns) {
      throw new StageError(
        `${path}.omit.${index}`,
        `'${cell}' is not in a block of ${block.rows} rows and ${block.columns} columns`,
        'Rows count from the eave and columns from the left, both from 1.',
      )
    }
    omitted.add(`${row},${column}`)
  }
  const cells: [number, number][] = []
  for (let row = 1; row <= block.rows; row++) {
    for (let column = 1; column <= block.columns; column++) {
      if (!omitted.has(`${row},${column}`)) cells.push([row, column])
    }
  }
  if (cells.length === 0) {
    throw new StageError(`${path}.omit`, 'every module of the block is left out', 'Delete the block, or omit fewer.')
  }
  return cells
}
