import { own } from '../values/index.js'

/** A map as it comes out of a YAML file. Only its own keys count: an id may be called `constructor`. */
export type PlainMap = Record<string, unknown>

export function isPlainMap(value: unknown): value is PlainMap {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** The own value under a key, or undefined; never something inherited. */
export function ownValue(value: unknown, key: string | number): unknown {
  if (Array.isArray(value)) return (value as unknown[])[Number(key)]
  return isPlainMap(value) ? own(value, String(key)) : undefined
}

/** The value at a path, or undefined. */
export function valueAt(data: unknown, segments: readonly (string | number)[]): unknown {
  return segments.reduce(ownValue, data)
}

/** Sets an own value, also under `__proto__`. */
export function setOwn(target: PlainMap, key: string, value: unknown): void {
  Object.defineProperty(target, key, { value, writable: true, enumerable: true, configurable: true })
}
