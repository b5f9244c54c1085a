import { dirname, resolve } from 'node:path'
import { mergeUnder } from '../merge-under.js'
import { parseYaml } from '../parse-yaml.js'
import { isPlainMap, ownValue, valueAt, type PlainMap } from '../plain-data.js'
import { LARGEST_YAML_BYTES } from '../budgets.js'
import { decodeText, FileTrouble, readBytes } from '../read-file.js'

/**
 * What a project file holds, its equipment file too, as far as it can be read; nothing is checked.
 *
 * @returns undefined when it cannot be read, or is no project.
 */
export function dataAtHand(path: string): PlainMap | undefined {
  const data = readLoosely(path)
  if (data === undefined || !Object.hasOwn(data, 'format')) return undefined
  const file = valueAt(data, ['equipment', 'file'])
  const equipment = ownValue(data, 'equipment')
  const other = typeof file === 'string' ? readLoosely(resolve(dirname(path), file)) : undefined
  if (other !== undefined && isPlainMap(equipment)) mergeUnder(equipment, other)
  return data
}

function readLoosely(path: string): PlainMap | undefined {
  try {
    const { data } = parseYaml(path, decodeText(readBytes(path, LARGEST_YAML_BYTES)))
    return isPlainMap(data) ? data : undefined
  } catch (error) {
    if (error instanceof FileTrouble) return undefined
    throw error
  }
}
