import { parseDocument } from 'yaml'
import { didYouMean } from './did-you-mean.js'
import { newNameOf } from './find-renames.js'
import { splitPath, type Segments } from './path.js'
import { isPlainMap, ownValue, setOwn, valueAt, type PlainMap } from './plain-data.js'
import { FORMAT } from './renames.js'
import { alternatives, childSchemas, projectSchema, typesOf, type Schema } from './schema.js'
import { listWords, showKind, showValue } from './words.js'
import { toData } from './yaml-data.js'

/** One `--set path=value`. */
export interface Override {
  /** As problems name it: `--set roof_planes.south.azimuth_deg=195`. */
  readonly name: string
  readonly segments: Segments
  readonly value: unknown
  /** Whether the key is taken away for this run: `path=null`. */
  readonly removes: boolean
  /** For each step, whether what lies under it is a list by the schema. */
  readonly lists: readonly boolean[]
  /** For each step, whether it is an id of the person's own and not a key of the schema. */
  readonly ids: readonly boolean[]
}

/** An override that cannot be applied, with the reason. */
export interface BadOverride {
  readonly name: string
  readonly path: string
  readonly message: string
}

/** How problems name an override; one that would fill the screen is cut. */
export function nameOfOverride(text: string): string {
  return `--set ${text.length > 200 ? `${text.slice(0, 200)}...` : text}`
}

/** Reads `path=value`; the schema says of what type the value is, so that '724940' stays text where text is wanted. */
export function readOverride(text: string, schema: Schema): Override | BadOverride {
  const name = nameOfOverride(text)
  const equals = text.indexOf('=')
  if (equals < 1) return { name, path: '', message: "not of the form path=value, for example --set title='New roof'" }
  const path = text.slice(0, equals).trim()
  const raw = text.slice(equals + 1)
  const found = followPath(path, schema)
  if ('message' in found) return { name, path, message: found.message }
  const { segments, lists, ids, schemas } = found
  const types = new Set(schemas.flatMap((each) => [...typesOf(each, schema)]))
  const removes = raw.trim() === 'null' && !types.has('null')
  const value = removes ? undefined : readValue(raw, types)
  if (value instanceof UnreadableValue) return { name, path, message: value.message }
  return { name, segments, value, removes, lists, ids }
}

/** What is wrong with a dotted path as the schema sees it; undefined when a value may stand there. */
export function pathTrouble(path: string): string | undefined {
  const found = followPath(path, projectSchema())
  return 'message' in found ? found.message : undefined
}

/** Whether a number, and no text, stands at a path. */
export function takesNumber(path: string): boolean {
  const root = projectSchema()
  const found = followPath(path, root)
  if ('message' in found) return false
  const types = new Set(found.schemas.flatMap((each) => [...typesOf(each, root)]))
  return (types.has('number') || types.has('integer')) && !types.has('string')
}

interface FoundPath extends Pick<Override, 'segments' | 'lists' | 'ids'> {
  readonly schemas: readonly Schema[]
}

function followPath(path: string, schema: Schema): FoundPath | { readonly message: string } {
  const segments = splitPath(path)
  let schemas: Schema[] = [schema]
  const lists: boolean[] = []
  const ids: boolean[] = []
  for (const [i, segment] of segments.entries()) {
    const next = segment === '__proto__' ? [] : schemas.flatMap((each) => childSchemas(each, segment, schema))
    if (next.length === 0) return { message: badPath(segments, i, schemas, schema) }
    ids.push(!keysOf(schemas, schema).includes(segment))
    schemas = next
    const following = segments[i + 1] ?? ''
    lists.push(/^\d+$/.test(following) && next.some((each) => typesOf(each, schema).has('array')))
  }
  return { segments, lists, ids, schemas }
}

function keysOf(schemas: readonly Schema[], root: Schema): string[] {
  const offered = schemas.flatMap((each) => alternatives(each, root))
  return [...new Set(offered.flatMap((each) => Object.keys(each.properties ?? {})))]
}

function badPath(segments: readonly string[], at: number, schemas: readonly Schema[], root: Schema): string {
  const segment = segments[at] ?? ''
  const above = segments.slice(0, at).join('.')
  const where = above === '' ? 'at the top level' : `under ${above}`
  if (segment === '') return 'a step of the path is empty'
  const newName = newNameOf(segments.slice(0, at + 1))
  if (newName !== undefined) return `no key ${showValue(segment)} ${where}: it is called ${newName} since ${FORMAT}`
  const known = keysOf(schemas, root)
  if (known.length > 0) {
    const near = didYouMean(segment, known)
    return `no key ${showValue(segment)} ${where}${near === '' ? `; known there: ${listWords(known)}` : near}`
  }
  if (schemas.flatMap((each) => alternatives(each, root)).some((each) => each.items !== undefined)) {
    return `${above} is a list; after it comes the number of an entry, counted from 0, not ${showValue(segment)}`
  }
  return `nothing can stand under ${above}`
}

class UnreadableValue extends Error {}

const NUMBER = /^[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?$/

function readValue(raw: string, types: ReadonlySet<string>): unknown {
  const text = raw.trim()
  const takesNumber = types.has('number') || types.has('integer')
  if (types.size === 1 && types.has('string')) return raw
  if (takesNumber && NUMBER.test(text)) return Number(text)
  if (types.has('boolean') && (text === 'true' || text === 'false')) return text === 'true'
  if (types.has('array') || types.has('object')) {
    const value = parseFlow(raw)
    const isScalarText = types.has('string') && (typeof value !== 'object' || value === null)
    return isScalarText ? raw : value
  }
  return raw
}

function parseFlow(raw: string): unknown {
  const document = parseDocument(raw, { prettyErrors: false, logLevel: 'error' })
  const [error] = document.errors
  if (error !== undefined) return new UnreadableValue(`the value is not readable as YAML: ${error.message}`)
  const { data, complaints } = toData(document)
  const [complaint] = complaints
  return complaint === undefined ? data : new UnreadableValue(`the value is not usable: ${complaint.message}`)
}

/**
 * Puts the value of an override into the data, making the maps and lists on the way that are not there.
 *
 * @returns What is wrong, or undefined.
 */
export function applyOverride(data: unknown, override: Override): string | undefined {
  const { segments, value, lists } = override
  if (override.removes) return remove(data, segments)
  let holder = data
  for (const [i, segment] of segments.entries()) {
    const above = segments.slice(0, i).join('.')
    if (Array.isArray(holder) && Number(segment) > holder.length) {
      return `${above} has ${holder.length} entries, counted from 0; the next new one is ${holder.length}, not ${segment}`
    }
    if (!isPlainMap(holder) && !Array.isArray(holder)) return `${above} is ${showKind(holder)}, not a map`
    if (i === segments.length - 1) put(holder, segment, value)
    else {
      const inner = ownValue(holder, segment)
      if (!isPlainMap(inner) && !Array.isArray(inner)) put(holder, segment, lists[i] === true ? [] : {})
      holder = ownValue(holder, segment)
    }
  }
  return undefined
}

/** Takes a key of a map away; one that is not there is no error, so that rows of a table may share a column. */
function remove(data: unknown, segments: Segments): string | undefined {
  const holder = valueAt(data, segments.slice(0, -1))
  const key = String(segments.at(-1))
  if (Array.isArray(holder)) {
    return `${segments.slice(0, -1).join('.')} is a list; an entry of it cannot be taken away: state the whole list`
  }
  if (isPlainMap(holder) && Object.hasOwn(holder, key)) delete holder[key]
  return undefined
}

function put(holder: PlainMap | unknown[], segment: string | number, value: unknown): void {
  if (Array.isArray(holder)) holder[Number(segment)] = value
  else setOwn(holder, String(segment), value)
}
