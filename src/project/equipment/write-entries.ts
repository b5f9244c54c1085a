import { Document, isMap, isNode, isPair, isScalar, isSeq, type Node, type Pair, type YAMLMap } from 'yaml'
import { parseYaml } from '../parse-yaml.js'
import { isPlainMap, setOwn, valueAt, type PlainMap } from '../plain-data.js'
import { sortProblems } from '../problem.js'
import { ProjectError } from '../project-error.js'
import { showKind } from '../words.js'
import type { YamlFile } from '../yaml-file.js'
import type { EquipmentEntry } from './entry.js'
import { EQUIPMENT_GROUPS, EQUIPMENT_KINDS } from './groups.js'
import { endOfNode, isBlank, placeForEntries } from './yaml-places.js'

/** An equipment file as it stands, or nothing yet. A project file holds its equipment one level further in. */
export interface EquipmentText {
  readonly yaml: YamlFile
  /** Keys above the groups: none, or `equipment` in a project file. */
  readonly base: readonly string[]
  readonly equipment: PlainMap
}

/**
 * Reads a file that entries are to be written into.
 *
 * @throws ProjectError when it is not YAML, or no map.
 */
export function readEquipmentText(file: string, text: string): EquipmentText {
  if (isBlank(text)) return { yaml: { ...parseYaml(file, '{}'), text }, base: [], equipment: {} }
  const yaml = parseYaml(file, text)
  if (yaml.problems.length > 0) throw new ProjectError(sortProblems(yaml.problems, [file]), 2, new Map([[file, text]]))
  const base = isPlainMap(yaml.data) && Object.hasOwn(yaml.data, 'format') ? ['equipment'] : []
  const found = base.length === 0 ? yaml.data : (valueAt(yaml.data, base) ?? {})
  if (isPlainMap(found)) return { yaml, base, equipment: found }
  const message = `equipment is a map of modules, inverters, ...; found ${showKind(found)}`
  throw new ProjectError([{ file, line: 1, column: 1, path: base.join('.'), message }], 2, new Map([[file, text]]))
}

/**
 * The file with the entries; every character that has nothing to do with them stays, comments and order too.
 *
 * @param entries Each id of a kind once; one that stands in the file is replaced, its comments kept where its keys are.
 */
export function writeEntries(read: EquipmentText, entries: readonly EquipmentEntry[]): string {
  let { yaml } = read
  const { base } = read
  for (const kind of EQUIPMENT_KINDS) {
    const path = [...base, EQUIPMENT_GROUPS[kind]]
    const ofKind = entries.filter((entry) => entry.kind === kind)
    const isThere = (entry: EquipmentEntry) => valueAt(yaml.data, [...path, entry.id]) !== undefined
    const added = ofKind.filter((entry) => !isThere(entry))
    for (const entry of ofKind.filter(isThere)) yaml = parseYaml(yaml.file, replaceEntry(yaml, path, entry))
    if (added.length > 0) yaml = parseYaml(yaml.file, addEntries(yaml, path, added))
  }
  if (JSON.stringify(valueAt(yaml.data, base)) !== JSON.stringify(expected(read, entries)))
    throw new Error('the written equipment does not read as it was meant')
  return yaml.text
}

function expected({ equipment }: EquipmentText, entries: readonly EquipmentEntry[]): PlainMap {
  const result = structuredClone(equipment)
  for (const kind of EQUIPMENT_KINDS)
    for (const { id, values } of entries.filter((entry) => entry.kind === kind)) {
      const present = result[EQUIPMENT_GROUPS[kind]]
      const group = isPlainMap(present) ? present : {}
      setOwn(group, id, values)
      result[EQUIPMENT_GROUPS[kind]] = group
    }
  return result
}

function addEntries(yaml: YamlFile, path: readonly string[], entries: readonly EquipmentEntry[]): string {
  const place = placeForEntries(yaml, path)
  if (place !== undefined) {
    const lines = entries.map((entry) => indented(printPairs(pairOf(entry)), place.column)).join('')
    return splice(yaml.text, place.at, place.at, `${place.heading}${lines}`)
  }
  // Flow maps and aliases: the library writes the whole file anew, with its comments.
  const { document } = yaml
  if (document === undefined) throw new Error('a file without a document')
  const empty: unknown = document.getIn(path, true)
  if (isScalar(empty)) document.setIn(path, Object.assign(document.createNode({}), { comment: empty.comment ?? null }))
  for (const entry of entries) document.setIn([...path, entry.id], document.createNode(entry.values))
  return document.toString({ lineWidth: 0 })
}

function replaceEntry(yaml: YamlFile, path: readonly string[], entry: EquipmentEntry): string {
  const { document, text } = yaml
  const group: unknown = document?.getIn(path, true)
  const pair = isMap(group) ? group.items.find(({ key }) => isScalar(key) && String(key.value) === entry.id) : undefined
  const old = pair?.value
  const isBlock = isMap(group) && group.flow !== true && isMap(old) && old.flow !== true && old.anchor === undefined
  if (document === undefined) throw new Error('a file without a document')
  if (!isBlock || pair === undefined || !isNode(pair.key) || pair.key.range === null || pair.key.range === undefined) {
    document.setIn([...path, entry.id], document.createNode(entry.values))
    return document.toString({ lineWidth: 0 })
  }
  const start = pair.key.range[0]
  const column = start - (text.lastIndexOf('\n', start - 1) + 1)
  const end = endOfNode(text, pair.value as Node, column)
  const fresh = (pairOf(entry).value as YAMLMap).items
  old.items = fresh.map((one) => {
    const kept = old.items.find((each) => String(each.key) === String(one.key))
    return kept !== undefined && sameValue(kept, one) ? kept : withComments(one, kept)
  })
  return splice(text, start - column, end, indented(printPairs(pair), column))
}

function sameValue(a: Pair, b: Pair): boolean {
  const json = (pair: Pair): string => JSON.stringify(isNode(pair.value) ? pair.value.toJS(new Document()) : pair.value)
  return json(a) === json(b)
}

/** A comment above a key stays with the key; one beside the old value would speak of that value. */
function withComments(one: Pair, kept: Pair | undefined): Pair {
  if (kept !== undefined && isNode(kept.key) && isNode(one.key)) one.key.commentBefore = kept.key.commentBefore ?? null
  return one
}

/** An entry as nodes: short lists on one line, and what the sheet says behind a value in another unit. */
function pairOf({ id, values, sheetWords }: EquipmentEntry): Pair {
  const document = new Document({ [id]: values })
  const [pair] = (document.contents as unknown as YAMLMap).items
  if (!isPair(pair)) throw new Error('an entry without a pair')
  for (const [key, words] of sheetWords) {
    const node: unknown = document.getIn([id, ...key.split('.')], true)
    if (isScalar(node)) node.comment = ` ${words} on the sheet`
  }
  flowLists(pair.value)
  return pair
}

function flowLists(node: unknown): void {
  if (isMap(node)) for (const { value } of node.items) flowLists(value)
  if (!isSeq(node)) return
  if (node.items.every((item) => isScalar(item))) node.flow = true
  for (const item of node.items) if (isMap(item)) item.flow = true
}

function printPairs(pair: Pair): string {
  const document = new Document({})
  const map = document.contents as unknown as YAMLMap
  map.flow = false
  map.items = [pair]
  return `${document.toString({ lineWidth: 0, singleQuote: true }).trimEnd()}\n`
}

function indented(text: string, column: number): string {
  const blanks = ' '.repeat(column)
  return text.replaceAll(/^(?=.)/gmu, blanks)
}

/** Puts lines in place of a stretch, with the line ends of the file. */
function splice(text: string, start: number, end: number, lines: string): string {
  const isCrlf = text.includes('\r\n')
  return text.slice(0, start) + (isCrlf ? lines.replaceAll('\n', '\r\n') : lines) + text.slice(end)
}
