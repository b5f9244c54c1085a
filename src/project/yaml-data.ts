import { isAlias, isMap, isScalar, isSeq, type Alias, type Document, type Node, type Pair } from 'yaml'
import { setOwn, type PlainMap } from './plain-data.js'
import { shorten } from './words.js'

/** Values in a project with all aliases written out; a file that means more is a trap, not a project. */
const MOST_VALUES = 100_000
const DEEPEST = 100

interface Complaint {
  readonly offset: number
  readonly length: number
  readonly path: string
  readonly message: string
}

class TooMuch extends Error {}

/** Plain data of a document, aliases copied out, with what YAML allows and a project file does not. */
export function toData(document: Document.Parsed): { data: unknown; complaints: readonly Complaint[] } {
  const complaints: Complaint[] = []
  const anchors = new Map<string, Node>()
  const open = new Set<Node>()
  let values = 0
  let outermost: { readonly node: Node; readonly path: string } | undefined

  function complain(node: Node | null, path: string, message: string): void {
    const [start, end] = node?.range ?? [0, 1]
    complaints.push({ offset: start, length: end - start, path, message })
  }

  function convert(node: Node | null, path: string, depth: number): unknown {
    values += 1
    if (node === null) return null
    if (values > MOST_VALUES || depth > DEEPEST) {
      const message =
        outermost === undefined
          ? `holds more than ${MOST_VALUES} values; a project has a few hundred`
          : 'aliases (*name) make this file stand for far more than it holds; write the values out'
      complain(outermost?.node ?? node, outermost?.path ?? path, message)
      throw new TooMuch()
    }
    if (isAlias(node)) return convertAlias(node, path, depth)
    if (isScalar(node)) {
      if (node.anchor !== undefined) anchors.set(node.anchor, node)
      return node.value
    }
    if (!isMap(node) && !isSeq(node)) return null
    if (node.anchor !== undefined) anchors.set(node.anchor, node)
    open.add(node)
    const result = isMap(node)
      ? convertMap(node.items as Pair<Node, Node | null>[], path, depth)
      : node.items.map((item, i) => convert(item as Node, join(path, String(i)), depth + 1))
    open.delete(node)
    return result
  }

  function convertAlias(node: Alias, path: string, depth: number): unknown {
    const target = anchors.get(node.source)
    if (target === undefined || open.has(target)) {
      const name = shorten(node.source)
      const why =
        target === undefined ? `no anchor &${name} stands before this alias` : `alias *${name} lies inside itself`
      complain(node, path, why)
      return null
    }
    const isOutermost = outermost === undefined
    if (isOutermost) outermost = { node, path }
    const value = convert(target, path, depth + 1)
    if (isOutermost) outermost = undefined
    return value
  }

  function convertMap(items: readonly Pair<Node | null, Node | null>[], path: string, depth: number): PlainMap {
    const result: PlainMap = {}
    for (const { key, value } of items) {
      const name = isScalar(key) && key.value !== null ? keyText(key.value, key.source) : undefined
      if (name === undefined) {
        complain(key ?? value, path, 'a key must be plain text')
        continue
      }
      const inner = join(path, name)
      if (Object.hasOwn(result, name)) complain(key, inner, 'this key stands twice in the same map; keep one of them')
      setOwn(result, name, convert(value, inner, depth + 1))
    }
    return result
  }

  try {
    return { data: convert(document.contents, '', 0), complaints }
  } catch (error) {
    if (error instanceof TooMuch) return { data: undefined, complaints }
    throw error
  }
}

/** A key as written: `0123` stays `0123`. */
function keyText(value: unknown, source: string | undefined): string {
  return typeof value === 'string' ? value : (source ?? String(value))
}

function join(path: string, segment: string): string {
  return path === '' ? segment : `${path}.${segment}`
}
