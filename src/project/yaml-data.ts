import { isAlias, isMap, isScalar, isSeq, type Alias, type Document, type Node, type Pair } from 'yaml'
import { MOST_YAML_VALUES } from './budgets.js'
import { isMadeUp, valueBehindTag } from './made-up-tag.js'
import { setOwn, type PlainMap } from './plain-data.js'
import { shorten } from './words.js'

const DEEPEST = 100

interface Complaint {
  readonly offset: number
  readonly length: number
  readonly path: string
  readonly message: string
}

class TooMuch extends Error {}

/** What a document says. */
export interface YamlData {
  readonly data: unknown
  readonly complaints: readonly Complaint[]
  /** Dotted paths of the values that bear the marker of made-up ones, in the order of the file. */
  readonly madeUp: readonly string[]
}

/** Plain data of a document, aliases copied out, with what YAML allows and a project file does not. */
export function toData(document: Document.Parsed): YamlData {
  const copy = new DataCopy()
  const { complaints, madeUp } = copy
  try {
    return { data: copy.of(document.contents, '', 0), complaints, madeUp }
  } catch (error) {
    if (error instanceof TooMuch) return { data: undefined, complaints, madeUp }
    throw error
  }
}

/** The copy of a document on its way: what it means so far, and which nodes and aliases it is inside of. */
class DataCopy {
  readonly complaints: Complaint[] = []
  readonly madeUp: string[] = []
  private readonly anchors = new Map<string, Node>()
  private readonly open = new Set<Node>()
  private values = 0
  private outermost: { readonly node: Node; readonly path: string } | undefined

  /** @throws TooMuch, with a complaint, for a document that means more than a project does. */
  of(node: Node | null, path: string, depth: number): unknown {
    this.values += 1
    if (node === null) return null
    if (this.values > MOST_YAML_VALUES || depth > DEEPEST) this.giveUp(node, path)
    if (isAlias(node)) return this.ofAlias(node, path, depth)
    if (isMadeUp(node)) this.madeUp.push(path)
    if (isScalar(node)) {
      if (node.anchor !== undefined) this.anchors.set(node.anchor, node)
      return valueBehindTag(node)
    }
    if (!isMap(node) && !isSeq(node)) return null
    if (node.anchor !== undefined) this.anchors.set(node.anchor, node)
    this.open.add(node)
    const result = isMap(node)
      ? this.ofPairs(node.items as Pair<Node, Node | null>[], path, depth)
      : node.items.map((item, i) => this.of(item as Node, join(path, String(i)), depth + 1))
    this.open.delete(node)
    return result
  }

  private ofAlias(node: Alias, path: string, depth: number): unknown {
    const target = this.anchors.get(node.source)
    if (target === undefined || this.open.has(target)) {
      const name = shorten(node.source)
      const why =
        target === undefined ? `no anchor &${name} stands before this alias` : `alias *${name} lies inside itself`
      this.complain(node, path, why)
      return null
    }
    const isOutermost = this.outermost === undefined
    if (isOutermost) this.outermost = { node, path }
    const value = this.of(target, path, depth + 1)
    if (isOutermost) this.outermost = undefined
    return value
  }

  private ofPairs(items: readonly Pair<Node | null, Node | null>[], path: string, depth: number): PlainMap {
    const result: PlainMap = {}
    for (const { key, value } of items) {
      const name = isScalar(key) && key.value !== null ? keyText(key.value, key.source) : undefined
      if (name === undefined) {
        this.complain(key ?? value, path, 'a key must be plain text')
        continue
      }
      const inner = join(path, name)
      if (Object.hasOwn(result, name)) {
        this.complain(key, inner, 'this key stands twice in the same map; keep one of them')
      }
      setOwn(result, name, this.of(value, inner, depth + 1))
    }
    return result
  }

  private giveUp(node: Node, path: string): never {
    const { outermost } = this
    const message =
      outermost === undefined
        ? `holds more than ${MOST_YAML_VALUES} values; a project has a few hundred`
        : 'aliases (*name) make this file stand for far more than it holds; write the values out'
    this.complain(outermost?.node ?? node, outermost?.path ?? path, message)
    throw new TooMuch()
  }

  private complain(node: Node | null, path: string, message: string): void {
    const [start, end] = node?.range ?? [0, 1]
    this.complaints.push({ offset: start, length: end - start, path, message })
  }
}

/** A key as written: `0123` stays `0123`. */
function keyText(value: unknown, source: string | undefined): string {
  return typeof value === 'string' ? value : (source ?? String(value))
}

function join(path: string, segment: string): string {
  return path === '' ? segment : `${path}.${segment}`
}
