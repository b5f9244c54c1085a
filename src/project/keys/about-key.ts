import { own } from '../../values/index.js'
import { nearest } from '../did-you-mean.js'
import { describeAllowed } from '../explain/describe.js'
import { unitOfPath } from '../key-unit.js'
import { pathTrouble } from '../override.js'
import { splitPath } from '../path.js'
import { projectSchema } from '../schema.js'
import { listKeys, type KnownKey } from './list-keys.js'
import { bestFit } from './match-pattern.js'
import { MOVED_RESULTS, type MovedResult } from './moved-results.js'
import { WHERE_FOUND } from './where-found/index.js'

/** All that is known of a key of the project file. */
export interface KeyFacts {
  /** As the person wrote it, or with `ID` and `N` where an id of a person or a number of a list stands. */
  readonly path: string
  readonly means: string
  /** '' for a pure number, a word or a map. */
  readonly unit: string
  readonly allowed: string
  /** As it stands in a file; undefined for a map. */
  readonly example: string | undefined
  /** Whether the part that it belongs to has to hold it. */
  readonly required: boolean
  /** Where a person finds its value; undefined for a map. */
  readonly where: string | undefined
  /** Results that it can move. */
  readonly moves: readonly MovedResult[]
  /** Keys right below it with what they mean. */
  readonly below: readonly { readonly key: string; readonly means: string }[]
}

/** A key as it is written where no project is at hand: `arrays.ID.strings.N.modules`. */
export function writtenKey({ pattern }: Pick<KnownKey, 'pattern'>): string {
  return pattern.map((segment) => own({ '*': 'ID', '#': 'N' }, segment) ?? segment).join('.')
}

/**
 * Keys that are meant by words: a whole path, with ids of a project or `*` or ID for them, or the end of one.
 *
 * @returns The one key of a path that is whole; all keys that end so otherwise; none when there is no such key.
 */
export function findKeys(words: string): readonly KnownKey[] {
  const asked = splitPath(words.trim())
  if (asked.some((segment) => segment === '')) return []
  const known = listKeys()
  const whole = known.filter(({ pattern }) => pattern.length === asked.length && fits(pattern, asked))
  if (whole.length > 0) return whole.toSorted((a, b) => named(b, asked) - named(a, asked)).slice(0, 1)
  return known.filter(({ pattern }) => {
    const end = pattern.slice(-asked.length)
    // What a person calls an id says nothing by itself.
    return pattern.length > asked.length && fits(end, asked) && end[0] === asked[0] && end.at(-1) === asked.at(-1)
  })
}

function fits(pattern: readonly string[], asked: readonly string[]): boolean {
  return pattern.every((segment, i) => {
    const given = asked[i] ?? ''
    if (segment === '#') return /^(?:\d+|[#*]|N)$/u.test(given)
    return segment === given || (segment === '*' && (/^[A-Za-z][\w-]*$/u.test(given) || given === '*'))
  })
}

function named({ pattern }: KnownKey, asked: readonly string[]): number {
  return pattern.filter((segment, i) => segment === asked[i]).length
}

/** @param path As the person wrote it, when it is whole. */
export function aboutKey(key: KnownKey, path = writtenKey(key)): KeyFacts {
  const { pattern, schemas, required, isLeaf } = key
  const root = projectSchema()
  const [schema = {}] = schemas
  const example: unknown = schemas.find(({ examples }) => examples !== undefined)?.examples?.[0]
  // Numbers of a list are those of its own key.
  const named = isLeaf && pattern.at(-1) === '#' ? pattern.slice(0, -1) : pattern
  return {
    path,
    means: meaningOf(key),
    unit: isLeaf ? unitOfPath(named.filter((segment) => segment !== '*' && segment !== '#')) : '',
    allowed: describeAllowed(schema, named, root),
    example: isLeaf && example !== undefined ? written(named, example) : undefined,
    required,
    where: isLeaf ? bestFit(WHERE_FOUND, named)?.[1] : undefined,
    moves: [...(bestFit(MOVED_RESULTS, named)?.[1] ?? [])],
    below: isLeaf ? [] : keysBelow(pattern),
  }
}

/** What the schema says; of an entry of a map that says nothing, what it says of the map. */
function meaningOf({ pattern, schemas }: Pick<KnownKey, 'pattern' | 'schemas'>): string {
  const own = schemas.find(({ description }) => description !== undefined)?.description
  const above = pattern.slice(0, -1).join('.')
  const map = own === undefined ? listKeys().find((key) => key.pattern.join('.') === above) : undefined
  return own ?? (map === undefined ? '' : meaningOf(map))
}

/** Keys right below; where these are ids of a person, those below the ids. */
function keysBelow(pattern: readonly string[]): KeyFacts['below'] {
  const inner = listKeys().filter(
    ({ pattern: other }) => other.length === pattern.length + 1 && pattern.every((one, i) => one === other[i]),
  )
  return inner.flatMap(({ pattern: one, schemas, isLeaf }) => {
    const key = writtenKey({ pattern: one.slice(pattern.length) })
    const means = meaningOf({ pattern: one, schemas })
    const isId = inner.length === 1 && (key === 'ID' || key === 'N') && !isLeaf
    return isId ? keysBelow(one).map((each) => ({ key: `${key}.${each.key}`, means: each.means })) : [{ key, means }]
  })
}

function written(pattern: readonly string[], example: unknown): string {
  const key = pattern.findLast((segment) => segment !== '*' && segment !== '#') ?? ''
  const text = typeof example === 'string' && !/^[\d.-]+$/u.test(example) ? example : JSON.stringify(example)
  return `${key}: ${text}`
}

/** Why words are no key, with the nearest one; undefined when nothing is near. */
export function keyHint(words: string): string | undefined {
  const segments = splitPath(words.trim())
  const known = listKeys()
  const isTop = known.some(({ pattern }) => pattern.length === 1 && pattern[0] === segments[0])
  if (segments.length > 1 && isTop) return pathTrouble(words.trim())
  const ends = [...new Set(known.flatMap(({ pattern }) => pattern.filter((one) => one !== '*' && one !== '#')))]
  const near = nearest(segments.at(-1) ?? '', ends)
  return near === undefined ? undefined : `did you mean the key ${near}?`
}
