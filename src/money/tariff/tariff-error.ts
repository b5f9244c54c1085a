import { StageError } from '../../worksheet/index.js'

/** A tariff that cannot be priced; `place` is the path below `tariff`. */
export function tariffError(place: string, message: string, fix: string): StageError {
  return new StageError(place === '' ? 'tariff' : `tariff.${place}`, message, fix)
}

/**
 * Takes the one alternative that is stated.
 *
 * @throws StageError when none or several are stated.
 */
export function theOne<Key extends string>(place: string, stated: Readonly<Record<Key, unknown>>): Key {
  const names = Object.keys(stated) as Key[]
  const found = names.filter((name) => stated[name] !== undefined)
  const only = found[0]
  if (only !== undefined && found.length === 1) return only
  const what = found.length === 0 ? 'states none' : `states ${found.join(' and ')}`
  throw tariffError(
    place,
    `${what}; exactly one of ${names.join(', ')} is needed`,
    'Keep the one that the rate sheet shows.',
  )
}

/** Index of an id in a list of known ids. @throws StageError with the known ids. */
export function indexOfId(place: string, what: string, id: string, known: readonly string[]): number {
  const index = known.indexOf(id)
  if (index >= 0) return index
  throw tariffError(
    place,
    `there is no ${what} '${id}'; known: ${known.join(', ')}`,
    `Write one of the known ids or add the ${what}.`,
  )
}
