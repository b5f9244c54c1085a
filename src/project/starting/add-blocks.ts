import { isMap, isScalar, type Pair, type YAMLMap } from 'yaml'
import { openFlow } from './open-flow.js'
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
 * Adds to a project file what it does not have of the given blocks; what is there stays, letter for letter. A map on one
 * line that takes an entry is written over several lines first.
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

function addBlock(written: string, block: readonly string[]): string {
  const more = mapOf(block.join('\n'))
  if (more === undefined) throw new Error('a part of a new file is no map')
  const text = opened(written, more)
  const own = mapOf(text)
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

/** Keys at the top of a file that would take parts and stand in braces. */
export function mapsInBraces(text: string): string[] {
  return (mapOf(text)?.items ?? []).flatMap((item) =>
    OPEN.has(keyOf(item)) && isMap(item.value) && item.value.flow === true ? [keyOf(item)] : [],
  )
}

/** The text with those maps on one line opened that take an entry. */
function opened(text: string, more: YAMLMap): string {
  const own = mapOf(text)
  const pair = own === undefined ? undefined : closedTaker(own, more, '', text)
  return pair === undefined ? text : opened(pair, more)
}

/** The text with the first map on one line opened that takes an entry; undefined when there is none. */
function closedTaker(own: YAMLMap, more: YAMLMap, path: string, text: string): string | undefined {
  for (const item of more.items) {
    const key = keyOf(item)
    const inside = path === '' ? key : `${path}.${key}`
    const there = own.items.find((each) => keyOf(each) === key)
    if (there === undefined || !isOpen(inside) || !isBlock(item.value) || !isMap(there.value)) continue
    const takes = item.value.items.some((each) => {
      const name = keyOf(each)
      const isAbsent = !(there.value as YAMLMap).items.some((one) => keyOf(one) === name)
      return isAbsent && (TAKES[inside] ?? name) === name
    })
    const changed =
      there.value.flow === true
        ? takes && there.value.items.length > 0
          ? openFlow(text, there, there.value)
          : undefined
        : closedTaker(there.value, item.value, inside, text)
    if (changed !== undefined) return changed
  }
  return undefined
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
