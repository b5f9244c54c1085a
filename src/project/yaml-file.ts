import { isAlias, isMap, isScalar, isSeq, type Document, type LineCounter, type Node } from 'yaml'
import type { Segments } from './path.js'

/** A YAML file with what is needed to say where something stands in it. */
export interface YamlFile {
  readonly file: string
  readonly text: string
  readonly document: Document.Parsed | undefined
  readonly lineCounter: LineCounter
  readonly data: unknown
  /** Dotted paths of the values that bear the marker of made-up ones. */
  readonly madeUp: readonly string[]
}

/** A stretch of a file. */
export interface Span {
  readonly line: number
  readonly column: number
  readonly length: number
}

export function positionOf(file: YamlFile, offset: number): { readonly line: number; readonly column: number } {
  const { line, col } = file.lineCounter.linePos(Math.max(0, offset))
  return { line: Math.max(1, line), column: Math.max(1, col) }
}

/** Where the key at a path stands (the entry itself in a list), or undefined when the file has no such path. */
export function findKey(file: YamlFile, segments: Segments): Span | undefined {
  const found = find(file, segments)
  return found && spanOf(file, found.key ?? found.value)
}

/** Where the value at a path stands, or undefined. An empty value is shown at its key. */
export function findValue(file: YamlFile, segments: Segments): Span | undefined {
  const found = find(file, segments)
  if (found === undefined) return undefined
  const { value, key } = found
  const isEmpty =
    value === null || (value.range !== undefined && value.range !== null && value.range[0] === value.range[1])
  return spanOf(file, isEmpty ? (key ?? value) : value)
}

/** First character of the key or value at a path and the one after its last, or undefined. */
export function rangeOf(
  file: YamlFile,
  segments: Segments,
  at: 'key' | 'value',
): [start: number, end: number] | undefined {
  const range = find(file, segments)?.[at]?.range
  return range === undefined || range === null ? undefined : [range[0], range[1]]
}

/** The text of a scalar as written and whether it is quoted. */
export function findSource(
  file: YamlFile,
  segments: Segments,
): { readonly text: string; readonly quoted: boolean } | undefined {
  const node = find(file, segments)?.value
  if (!isScalar(node)) return undefined
  return { text: node.source ?? '', quoted: node.type === 'QUOTE_SINGLE' || node.type === 'QUOTE_DOUBLE' }
}

interface Found {
  readonly key: Node | null
  readonly value: Node | null
}

function find(file: YamlFile, segments: Segments): Found | undefined {
  const { document } = file
  if (document === undefined) return undefined
  let found: Found = { key: null, value: document.contents }
  for (const segment of segments) {
    const node = isAlias(found.value) ? (found.value.resolve(document) ?? null) : found.value
    if (isSeq(node)) {
      const index = Number(segment)
      if (!(index in node.items)) return undefined
      found = { key: null, value: node.items[index] as Node | null }
    } else if (isMap(node)) {
      const pair = node.items.find(({ key }) => isScalar(key) && keyMatches(key.value, key.source, String(segment)))
      if (pair === undefined) return undefined
      found = { key: pair.key as Node, value: pair.value as Node | null }
    } else return undefined
  }
  return found
}

function keyMatches(value: unknown, source: string | undefined, segment: string): boolean {
  return typeof value === 'string' ? value === segment : source === segment
}

function spanOf(file: YamlFile, node: Node | null): Span | undefined {
  if (node?.range === undefined || node.range === null) return undefined
  const [start, end] = node.range
  return { ...positionOf(file, start), length: Math.max(1, end - start) }
}
