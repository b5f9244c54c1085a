import { isCollection, isMap, isNode, isPair, isScalar, type Node, type Pair } from 'yaml'
import type { YamlFile } from '../yaml-file.js'

/** Where new entries of a group go. */
export interface PlaceForEntries {
  readonly at: number
  /** Blanks before their ids. */
  readonly column: number
  /** Lines that have to stand before them: the end of an unfinished line, the name of a new group. */
  readonly heading: string
}

const STEP = 2

/** Whether a file holds nothing but comments. */
export function isBlank(text: string): boolean {
  return text.split('\n').every((line) => /^\s*(?:#|$)/u.test(line))
}

/** Behind the last entry of a group, or a group of its own; undefined when the file is not written in blocks there. */
export function placeForEntries(yaml: YamlFile, path: readonly string[]): PlaceForEntries | undefined {
  const { text, document } = yaml
  const group: unknown = document?.getIn(path, true)
  if (isMap(group)) return behindLast(text, group)
  const name = path.at(-1) ?? ''
  if (group !== undefined && group !== null && !(isScalar(group) && group.value === null)) return undefined
  const above: unknown = path.length === 1 ? document?.contents : document?.getIn(path.slice(0, -1), true)
  const empty = isMap(above) ? above.items.find(({ key }) => isScalar(key) && key.value === name) : undefined
  if (empty !== undefined) return belowEmpty(text, empty)
  if (isBlank(text)) {
    const heading = text === '' || text.endsWith('\n') ? '' : '\n'
    return { at: text.length, column: STEP, heading: `${heading}${name}:\n` }
  }
  if (!isMap(above)) return undefined
  const place = behindLast(text, above)
  if (place === undefined) return undefined
  const heading = `${place.heading}${' '.repeat(place.column)}${name}:\n`
  return { at: place.at, column: place.column + STEP, heading }
}

/** Below a key that has nothing behind it; undefined when it says `null` or `~`. */
function belowEmpty(text: string, { key, value }: Pair): PlaceForEntries | undefined {
  const range = isNode(key) ? key.range : undefined
  const isWritten = isScalar(value) && (value.source ?? '') !== ''
  if (range === undefined || range === null || isWritten) return undefined
  const at = lineEnd(text, range[1])
  const column = range[0] - (text.lastIndexOf('\n', range[0] - 1) + 1)
  return { at, column: column + STEP, heading: text[at - 1] === '\n' ? '' : '\n' }
}

function behindLast(text: string, map: Node): PlaceForEntries | undefined {
  if (!isMap(map) || map.flow === true) return undefined
  const [first] = map.items
  const last = map.items.at(-1)
  if (first === undefined || last === undefined || !isNode(first.key) || !isNode(last.key)) return undefined
  const [start] = first.key.range ?? []
  if (start === undefined) return undefined
  const column = start - (text.lastIndexOf('\n', start - 1) + 1)
  const at = endOfNode(text, isNode(last.value) ? last.value : last.key, column)
  return { at, column, heading: at > 0 && text[at - 1] !== '\n' ? '\n' : '' }
}

/**
 * Where the lines of a value end: behind its last line, and behind comments that stand further in than its key.
 *
 * @param column Blanks before the key.
 */
export function endOfNode(text: string, node: Node, column: number): number {
  let at = lineEnd(text, deepestEnd(node))
  for (;;) {
    const [comment] = /^[ \t]*#[^\n]*(?:\n|$)/u.exec(text.slice(at)) ?? []
    if (comment === undefined || comment.search(/#/u) <= column) return at
    at += comment.length
  }
}

function deepestEnd(node: Node): number {
  if (isCollection(node) && node.flow !== true) {
    const item: unknown = node.items.at(-1)
    const inner = isPair(item) ? (isNode(item.value) ? item.value : item.key) : item
    if (isNode(inner)) return deepestEnd(inner)
  }
  return node.range?.[1] ?? 0
}

/** The place behind the line feed that ends a line; a block of text ends with its own. */
function lineEnd(text: string, from: number): number {
  if (from > 0 && text[from - 1] === '\n') return from
  const end = text.indexOf('\n', from)
  return end < 0 ? text.length : end + 1
}
