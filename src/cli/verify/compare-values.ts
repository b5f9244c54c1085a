import { own } from '../../values/index.js'

/** A value that is not the same in the file and worked out anew. */
export interface Difference {
  /** Dotted path of the value. */
  readonly path: string
  /** As text; undefined where it is not there. */
  readonly inFile: string | undefined
  readonly anew: string | undefined
}

/** Results hold ten digits, of which processors and versions of Node may differ in the last. */
const SAME = 1e-9

/** Every single value in which two pieces of data differ, by path; numbers that agree to nine digits are the same. */
export function compareValues(inFile: unknown, anew: unknown, path = ''): Difference[] {
  if (isSame(inFile, anew)) return []
  if (isBranch(inFile) && isBranch(anew) && Array.isArray(inFile) === Array.isArray(anew)) {
    const [a, b] = [inFile as Readonly<Record<string, unknown>>, anew as Readonly<Record<string, unknown>>]
    const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])]
    return keys.flatMap((key) => compareValues(own(a, key), own(b, key), path === '' ? key : `${path}.${key}`))
  }
  return [{ path, inFile: shown(inFile), anew: shown(anew) }]
}

function isSame(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') {
    // Beyond all numbers nothing is near.
    return Number.isFinite(a) && Number.isFinite(b) && Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b))
  }
  return a === b
}

function isBranch(value: unknown): value is object {
  return typeof value === 'object' && value !== null
}

function shown(value: unknown): string | undefined {
  if (value === undefined) return undefined
  const text = typeof value === 'number' ? String(value) : JSON.stringify(value)
  return text.length > 60 ? `${text.slice(0, 57)}...` : text
}
