import type { ArrayOfModules, Block } from './project-types.generated.js'

/** Number of modules of an array: from its blocks, else as stated, else the sum of its strings. */
export function moduleCountOf(array: ArrayOfModules): number {
  const blocks = arrangementBlocks(array)
  if (blocks !== undefined) return Object.values(blocks).reduce((sum, block) => sum + modulesInBlock(block), 0)
  const number = statedModuleCount(array)
  if (number === undefined) throw new Error('an array without a number of modules has passed the check')
  return number
}

/** Number of modules that the person states, or that the strings add up to; undefined when the program may choose. */
export function statedModuleCount(array: ArrayOfModules): number | undefined {
  return array.modules ?? stringModuleCount(array)
}

/** Number of modules in a block, without those left out. */
export function modulesInBlock(block: Block): number {
  const places = (block.omit ?? []).map((module) => module.slice(1).split('c').map(Number))
  const inside = places.filter(
    ([row = 0, column = 0]) => row >= 1 && row <= block.rows && column >= 1 && column <= block.columns,
  )
  return block.rows * block.columns - new Set(inside.map(String)).size
}

/** The blocks that the person placed, or undefined when the program is to place the modules. */
export function arrangementBlocks(array: ArrayOfModules): Readonly<Record<string, Block>> | undefined {
  const { arrangement } = array
  return typeof arrangement === 'object' && 'blocks' in arrangement ? arrangement.blocks : undefined
}

/** Sum of the modules of the strings, or undefined without strings. */
export function stringModuleCount(array: ArrayOfModules): number | undefined {
  return array.strings?.reduce((sum, { modules }) => sum + modules, 0)
}
