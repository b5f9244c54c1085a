import { isScalar, Schema, type CollectionTag, type Node, type Scalar, type ScalarTag } from 'yaml'

/** Stands before a value that somebody made up: `basic_speed_mph: !made_up 115`. Taking it away confirms the value. */
export const MADE_UP = '!made_up'

const CORE = new Schema({ schema: 'core' }).tags.filter((tag): tag is ScalarTag => tag.collection === undefined)

/** Lets the reader take the marker before a value, a list or a map; all other unknown tags stay errors. */
export const MADE_UP_TAGS: (ScalarTag | CollectionTag)[] = [
  // Of what kind the text is can be said only once it is known whether it stands in quotes: `valueBehindTag`.
  { tag: MADE_UP, resolve: (text) => text },
  { tag: MADE_UP, collection: 'map' },
  { tag: MADE_UP, collection: 'seq' },
]

export function isMadeUp(node: Node): boolean {
  return node.tag === MADE_UP
}

/** What a marked scalar would be without its marker: a number stays one, what stands in quotes stays text. */
export function valueBehindTag(node: Scalar): unknown {
  const { value, type } = node
  if (!isMadeUp(node) || typeof value !== 'string' || type !== 'PLAIN') return value
  const tag = CORE.find((each) => each.default === true && each.test?.test(value) === true)
  const resolved = tag?.resolve(value, () => undefined, {}) ?? value
  return isScalar(resolved) ? resolved.value : resolved
}
