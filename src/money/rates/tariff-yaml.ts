import type { Tariff } from '../../project/index.js'
import { cleanJson, cleanLine } from '../../report/index.js'

/** Widest line of a comment. */
const WIDTH = 100

/**
 * A tariff as the block `tariff` of a project file.
 *
 * @param head Lines of the comment above it.
 * @param beside What is said above a key, by its dotted path below `tariff`.
 */
export function tariffYaml(tariff: Tariff, head: readonly string[], beside: Readonly<Record<string, string>>): string {
  const lines = [...head.flatMap((text) => comment(text, 0)), 'tariff:']
  writeMap(tariff, [], lines, beside)
  return `${lines.join('\n')}\n`
}

function comment(text: string, indent: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of cleanLine(text).replaceAll(/\s+/gu, ' ').trim().split(' ')) {
    if (line !== '' && indent + 2 + line.length + 1 + word.length > WIDTH) {
      lines.push(line)
      line = ''
    }
    line = line === '' ? word : `${line} ${word}`
  }
  return [...lines, line].map((one) => `${' '.repeat(indent)}# ${one}`)
}

function writeMap(
  map: object,
  path: readonly string[],
  lines: string[],
  beside: Readonly<Record<string, string>>,
): void {
  const indent = 2 * (path.length + 1)
  for (const [key, value] of Object.entries(map)) {
    if (value === undefined) continue
    const own = [...path, key]
    const said = beside[own.join('.')]
    if (said !== undefined) lines.push(...comment(said, indent))
    const start = `${' '.repeat(indent)}${key}:`
    const flat = `${start} ${inline(value)}`
    const isMap = typeof value === 'object' && value !== null && !Array.isArray(value)
    if (isMap && (path.length === 0 || flat.length > WIDTH)) {
      lines.push(start)
      writeMap(value as object, own, lines, beside)
    } else if (Array.isArray(value) && flat.length > WIDTH && typeof value[0] === 'object') {
      lines.push(start, ...value.map((item) => `${' '.repeat(indent + 2)}- ${inline(item)}`))
    } else lines.push(flat)
  }
}

function inline(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inline).join(', ')}]`
  if (typeof value === 'object' && value !== null) {
    const pairs = Object.entries(value).filter(([, inner]) => inner !== undefined)
    return pairs.length === 0 ? '{}' : `{ ${pairs.map(([key, inner]) => `${key}: ${inline(inner)}`).join(', ')} }`
  }
  if (typeof value === 'string')
    return /^[a-z][a-z0-9_]*$/u.test(value) && !/^(?:y|n|yes|no|on|off|true|false|null)$/u.test(value)
      ? value
      : quoted(value)
  return String(value)
}

/** JSON is YAML, but for characters that could end a line or steer a terminal. */
function quoted(text: string): string {
  return cleanJson(JSON.stringify(cleanLine(text)))
}
