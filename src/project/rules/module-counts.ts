import { arrangementBlocks, modulesInBlock, stringModuleCount } from '../module-count.js'
import type { ArrayOfModules, Block } from '../project-types.generated.js'
import { count } from '../words.js'
import type { Report, Rule } from './rule.js'

/** Three places can say how many modules an array has; those that are given agree. */
export const checkModuleCounts: Rule = (project, report) => {
  for (const [id, array] of Object.entries(project.arrays)) {
    const blocks = arrangementBlocks(array)
    for (const [name, block] of Object.entries(blocks ?? {})) checkOmitted(id, name, block, report)
    const inBlocks = blocks && Object.values(blocks).reduce((sum, block) => sum + modulesInBlock(block), 0)
    const inStrings = stringModuleCount(array)
    const { modules } = array
    if (modules === undefined && inBlocks === undefined && inStrings === undefined && !isFitted(array)) {
      report(
        ['arrays', id, 'modules'],
        "missing; give their number, for example 'modules: 12', or arrangement: fit, or arrangement.blocks",
        'parent',
      )
    }
    if (inBlocks !== undefined && modules !== undefined && inBlocks !== modules) {
      const message = `${count(modules, 'module')}, but arrangement.blocks holds ${inBlocks}; make them equal or leave modules out`
      report(['arrays', id, 'modules'], message)
    }
    const stated = inBlocks ?? modules
    if (inStrings !== undefined && stated !== undefined && inStrings !== stated) {
      const message = `the strings hold ${count(inStrings, 'module')}, the array has ${stated}; make them equal`
      report(['arrays', id, 'strings'], message, 'key')
    }
  }
}

/** Whether the program places the modules: without a number, as many as the roof takes. */
function isFitted({ arrangement }: ArrayOfModules): boolean {
  return arrangement === 'fit' || (typeof arrangement === 'object' && 'fit' in arrangement)
}

function checkOmitted(array: string, name: string, block: Block, report: Report): void {
  const seen = new Set<string>()
  block.omit?.forEach((omitted, i) => {
    const path = ['arrays', array, 'arrangement', 'blocks', name, 'omit', i]
    const [row = 0, column = 0] = omitted.slice(1).split('c').map(Number)
    const module = `r${row}c${column}`
    if (row < 1 || row > block.rows || column < 1 || column > block.columns) {
      report(
        path,
        `${omitted} is not in the block, which has rows 1 to ${block.rows} and columns 1 to ${block.columns}`,
      )
    } else if (seen.has(module)) report(path, `${omitted} is left out twice`)
    seen.add(module)
  })
  if (modulesInBlock(block) === 0) {
    report(
      ['arrays', array, 'arrangement', 'blocks', name, 'omit'],
      'every module of the block is left out; delete the block',
    )
  }
}
