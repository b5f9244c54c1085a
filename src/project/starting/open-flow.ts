import { isScalar, type Pair, type YAMLMap } from 'yaml'

/**
 * A map on one line written over several, each entry letter for letter; undefined where that cannot be done without touching
 * more: a map over several lines, one with a tag or an anchor, or one with a remark within.
 *
 * @param text The file.
 * @param pair The key with its map in braces.
 */
export function openFlow(text: string, { key }: Pair, map: YAMLMap): string | undefined {
  const [start, end] = map.range ?? []
  const keyRange = isScalar(key) ? key.range : undefined
  if (start === undefined || end === undefined || keyRange === null || keyRange === undefined) return undefined
  const braces = text.slice(start, end)
  const lineEnd = text.indexOf('\n', end)
  const rest = text.slice(end, lineEnd === -1 ? text.length : lineEnd).trim()
  const isPlain =
    !/[\n#]/u.test(braces) &&
    braces.startsWith('{') &&
    /^\s*:\s*$/u.test(text.slice(keyRange[1], start)) &&
    (rest === '' || rest.startsWith('#'))
  if (!isPlain) return undefined
  const column = keyRange[0] - (text.lastIndexOf('\n', keyRange[0] - 1) + 1)
  const entries = map.items.map((item) => `${' '.repeat(column + 2)}${entryText(text, item)}`)
  const remark = rest === '' ? '' : `  ${rest}`
  const head = `${text.slice(0, start).trimEnd()}${remark}`
  return `${[head, ...entries].join('\n')}${lineEnd === -1 ? '\n' : text.slice(lineEnd)}`
}

function entryText(text: string, { key, value }: Pair): string {
  const keyRange = (key as { range?: readonly number[] } | null)?.range ?? []
  const valueRange = (value as { range?: readonly number[] } | null)?.range ?? []
  return text.slice(keyRange[0], Math.max(keyRange[1] ?? 0, valueRange[1] ?? 0)).trimEnd()
}
