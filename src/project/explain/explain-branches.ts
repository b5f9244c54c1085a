import { own } from '../../values/index.js'
import { didYouMean } from '../did-you-mean.js'
import type { Segments } from '../path.js'
import { isPlainMap, type PlainMap } from '../plain-data.js'
import { alternatives, dereference, type Schema } from '../schema.js'
import { listWords, showKind } from '../words.js'
import type { Complaint, Explain, ExplainContext } from './complaint.js'
import { describeAllowed } from './describe.js'
import { explainType, typeFits } from './explain-type.js'

/**
 * `anyOf` and `oneOf`: the complaints of the one branch that the person meant, or one sentence with all that is allowed.
 * Branches of another type are not meant; among maps, the one that knows most of the keys is.
 */
export function explainBranches(
  schema: Schema,
  value: unknown,
  segments: Segments,
  context: ExplainContext,
  explain: Explain,
): Complaint[] {
  const { root } = context
  const branches = (schema.anyOf ?? schema.oneOf ?? []).map((branch) => dereference(branch, root))
  const complaintsOf = branches.map((branch) => explain(branch, value, segments, context))
  const fitting = complaintsOf.filter((complaints) => complaints.length === 0).length
  if (fitting === 1 || (fitting > 1 && schema.anyOf !== undefined)) return []
  if (fitting > 1)
    return [
      {
        segments,
        at: 'value',
        message: `fits several of: ${allowedWords(branches, segments, root)}; give one of them`,
      },
    ]

  const wrongType = explainType(schema, value, segments, context)
  if (wrongType.length > 0) return wrongType
  const sameType = branches.filter((branch) => typeFits(branch, value, root))
  if (isPlainMap(value)) {
    const byKind = explainKind(sameType, value, segments, root)
    if (byKind !== undefined) return byKind
    const best = bestMap(sameType, value, root)
    if (best !== undefined) return complaintsOf[branches.indexOf(best)] ?? []
  } else {
    const [only] = sameType
    if (sameType.length === 1 && only !== undefined && !isChoice(only))
      return complaintsOf[branches.indexOf(only)] ?? []
  }
  return [{ segments, at: 'value', message: oneOf(schema, branches, value, segments, root) }]
}

function isChoice(branch: Schema): boolean {
  return 'const' in branch || branch.enum !== undefined
}

/** The one sentence. */
function oneOf(schema: Schema, branches: readonly Schema[], value: unknown, segments: Segments, root: Schema): string {
  const words = branches.flatMap((branch) => alternatives(branch, root)).flatMap(choices)
  const near = typeof value === 'string' ? didYouMean(value, words) : ''
  const keys = isPlainMap(value) ? ` with ${listWords(Object.keys(value)) || 'no keys'}` : ''
  return `found ${showKind(value)}${keys}; expected one of: ${allowedWords(schema.anyOf ?? schema.oneOf ?? [], segments, root)}${near}`
}

function allowedWords(branches: readonly Schema[], segments: Segments, root: Schema): string {
  return branches.map((branch) => describeAllowed(branch, segments, root)).join('; ')
}

function choices(schema: Schema): string[] {
  return 'const' in schema ? [String(schema.const)] : (schema.enum ?? []).map(String)
}

/** Maps that tell themselves apart by a fixed word under one key, such as `kind`: a wrong word is the complaint. */
function explainKind(
  maps: readonly Schema[],
  value: PlainMap,
  segments: Segments,
  root: Schema,
): Complaint[] | undefined {
  const [first] = maps
  if (maps.length < 2) return undefined
  const key = Object.keys(first?.properties ?? {}).find((name) =>
    maps.every((map) => wordsOf(map, name, root).length > 0),
  )
  if (key === undefined) return undefined
  const words = maps.flatMap((map) => wordsOf(map, key, root))
  const given = own(value, key)
  if (typeof given === 'string' && words.includes(given)) return undefined
  const allowed = `expected one of: ${listWords(words)}`
  const path = [...segments, key]
  if (given === undefined) return [{ segments: path, at: 'parent', message: `missing; ${allowed}` }]
  const near = typeof given === 'string' ? didYouMean(given, words) : ''
  return [{ segments: path, at: 'value', message: `found ${showKind(given)}; ${allowed}${near}` }]
}

function wordsOf(schema: Schema, key: string, root: Schema): string[] {
  const property = own(schema.properties, key)
  return property === undefined ? [] : choices(dereference(property, root))
}

/** The map that knows most of the keys, when one stands out. */
function bestMap(maps: readonly Schema[], value: PlainMap, root: Schema): Schema | undefined {
  const scored = maps.map((map) => ({ map, score: score(map, value, root) })).toSorted((a, b) => b.score - a.score)
  const [best, second] = scored
  return best !== undefined && best.score > (second?.score ?? (maps.length === 1 ? -Infinity : 0))
    ? best.map
    : undefined
}

function score(map: Schema, value: PlainMap, root: Schema): number {
  return Object.entries(value).reduce((sum, [key, inner]) => {
    if (!Object.hasOwn(map.properties ?? {}, key)) return sum
    return sum + (typeof inner === 'string' && wordsOf(map, key, root).includes(inner) ? 100 : 1)
  }, 0)
}
