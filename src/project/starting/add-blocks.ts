import { isMap, isScalar, type Pair, type YAMLMap } from 'yaml'
import { parseYaml } from '../parse-yaml.js'

/** Maps whose own entries are keys of the schema: a block is merged into them. All others belong to the person as they are. */
const OPEN = new Set([
  'site',
  'document',
  'parties',
  'codes',
  'roof_access',
  'electrical',
  'structure',
  'equipment',
  'finance',
  'storage',
])
/** Maps of the person that take an entry of this name and no other. */
const TAKES: Readonly<Record<string, string>> = { 'electrical.runs': 'storage' }
const OPEN_INSIDE = new Set([
  'electrical.service',
  'electrical.panel',
  'structure.wind',
  'structure.snow',
  'structure.building',
])
/** A plane that is there may take obstructions. */
const OPEN_PLANE = /^roof_planes(?:\.[^.]+)?$/u

/**
 * Adds to a project file what it does not have of the given blocks; what is there stays, letter for letter. Maps on one
 * line are left as they are.
 *
 * @param text A readable project file.
 * @param lines YAML from the top level on; a key may stand more than once.
 */
export function addBlocks(text: string, lines: readonly string[]): string {
  const blocks: string[][] = []
  for (const line of lines) {
    if (/^[^\s#]/u.test(line)) blocks.push([line])
    else blocks.at(-1)?.push(line)
  }
  return blocks.reduce(addBlock, text)
}

function addBlock(text: string, block: readonly string[]): string {
  const own = mapOf(text)
  const more = mapOf(block.join('\n'))
  if (more === undefined) throw new Error('a part of a new file is no map')
  if (own === undefined) return `${text}${block.join('\n')}\n`
  const additions = missing({ text, own }, more, '', block)
  // From the end of the file to its beginning, so that places stay right; of two at one place the inner stands first.
  return additions
    .toReversed()
    .toSorted((a, b) => b.offset - a.offset)
    .reduce((whole, each) => {
      const end = endOfLine(whole, each.offset)
      const before = whole.slice(0, end)
      const glue = before === '' || before.endsWith('\n') ? '' : '\n'
      return `${before}${glue}${each.lines.join('\n')}\n${whole.slice(end)}`
    }, text)
}

interface Addition {
  /** Some place on the line that the addition follows. */
  readonly offset: number
  readonly lines: readonly string[]
}

interface Taker {
  readonly text: string
  readonly own: YAMLMap
}

function missing({ text, own }: Taker, more: YAMLMap, path: string, block: readonly string[]): Addition[] {
  const items = more.items
  const absent: string[] = []
  const inner: Addition[] = []
  for (const [index, item] of items.entries()) {
    const key = keyOf(item)
    const there = own.items.find((each) => keyOf(each) === key)
    const inside = path === '' ? key : `${path}.${key}`
    const next = items[index + 1]
    if (there === undefined && (TAKES[path] ?? key) === key)
      absent.push(...reindented(linesOf(item, next, more, block), indentOf(item, block), columnOf(text, own)))
    else if (there !== undefined && isOpen(inside) && isBlock(there.value) && isBlock(item.value))
      inner.push(...missing({ text, own: there.value }, item.value, inside, block))
  }
  return absent.length === 0 ? inner : [...inner, { offset: endOf(own), lines: path === '' ? ['', ...absent] : absent }]
}

const isOpen = (path: string): boolean =>
  OPEN.has(path) || OPEN_INSIDE.has(path) || Object.hasOwn(TAKES, path) || OPEN_PLANE.test(path)

function mapOf(text: string): YAMLMap | undefined {
  const contents = parseYaml('', text).document?.contents
  return isMap(contents) ? contents : undefined
}

function isBlock(value: unknown): value is YAMLMap {
  return isMap(value) && value.flow !== true && value.items.length > 0
}

function keyOf({ key }: Pair): string {
  return isScalar(key) ? String(key.value) : ''
}

function startOf({ key }: Pair): number {
  return isScalar(key) ? (key.range?.[0] ?? 0) : 0
}

/** Place of the last character of a map. */
function endOf(map: YAMLMap): number {
  const last = map.items.at(-1)
  if (last === undefined) return map.range?.[1] ?? 0
  const { value } = last
  if (isBlock(value)) return endOf(value)
  const end = (value as { range?: readonly number[] | null } | null)?.range?.[1] ?? startOf(last)
  return Math.max(startOf(last), end - 1)
}

function endOfLine(text: string, offset: number): number {
  const end = text.indexOf('\n', offset)
  return end === -1 ? text.length : end + 1
}

function lineNumber(offset: number, block: readonly string[]): number {
  let left = offset
  for (const [index, line] of block.entries()) {
    if (left <= line.length) return index
    left -= line.length + 1
  }
  return block.length - 1
}

/** Lines of an entry of the block, to the next one or to where its map ends. */
function linesOf(item: Pair, next: Pair | undefined, map: YAMLMap, block: readonly string[]): string[] {
  const from = lineNumber(startOf(item), block)
  const to = next === undefined ? lineNumber(endOf(map), block) + 1 : lineNumber(startOf(next), block)
  return block.slice(from, to)
}

function indentOf(item: Pair, block: readonly string[]): number {
  return /^ */u.exec(block[lineNumber(startOf(item), block)] ?? '')?.[0].length ?? 0
}

function reindented(lines: readonly string[], from: number, to: number): string[] {
  return lines.map((line) => (line.trim() === '' ? '' : ' '.repeat(to) + line.slice(from)))
}

/** Indentation of the entries of a map. */
function columnOf(text: string, map: YAMLMap): number {
  const [first] = map.items
  const start = first === undefined ? 0 : startOf(first)
  return start - (text.lastIndexOf('\n', start - 1) + 1)
}
