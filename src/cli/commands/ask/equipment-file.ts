import { resolve } from 'node:path'
import { LARGEST_YAML_BYTES, readNamedText, readPlainYaml, type StartingHouse } from '../../../project/index.js'

type Chosen = NonNullable<StartingHouse['equipment']>

/**
 * What of a file of data sheets a new project takes: its first module, and its first inverter that stands behind a module.
 *
 * @param file As the project will name it, relative to its folder.
 * @returns Why it cannot be taken, in words, or what was chosen.
 */
export function chooseEquipment(file: string, folder: string): Chosen | string {
  try {
    const data = readPlainYaml(file, readNamedText(resolve(folder, file), LARGEST_YAML_BYTES, undefined))
    const [module] = Object.keys(groupOf(data, 'modules'))
    const inverter = Object.entries(groupOf(data, 'inverters')).find(([, each]) => kindOf(each) === 'module_level')?.[0]
    if (module === undefined) return `${file} has no group 'modules' with a module in it`
    if (inverter === undefined)
      return `${file} has no inverter of kind module_level; write strings and string inverters into the project by hand`
    return { file, module, inverter }
  } catch (error) {
    // What is wrong with the file is a reason to ask again, whatever it is.
    if (!(error instanceof Error)) throw error
    return error.message
  }
}

function groupOf(data: unknown, group: string): Record<string, unknown> {
  const value: unknown =
    typeof data === 'object' && data !== null ? (data as Record<string, unknown>)[group] : undefined
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {}
}

function kindOf(inverter: unknown): unknown {
  return typeof inverter === 'object' && inverter !== null && 'kind' in inverter ? inverter.kind : undefined
}
