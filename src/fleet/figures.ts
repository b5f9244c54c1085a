import type { Figure, Figures } from './types.js'

/** Six digits: more than any input is worth, fewer than platforms differ in. */
const DIGITS = 6

/**
 * All single values under a value, by dotted name; numbers to six significant digits. Entries of a list go by their
 * `id` where they have one, else by their number from 1; a list of single values becomes one text.
 *
 * @param skip Names of keys to leave out, at any depth.
 * @throws Error when a number is not finite.
 */
export function figuresOf(value: unknown, skip: readonly string[] = []): Figures {
  const figures: Record<string, Figure> = {}
  collect(value, '', new Set(skip), figures)
  return figures
}

function collect(value: unknown, name: string, skip: ReadonlySet<string>, into: Record<string, Figure>): void {
  if (value === undefined) return
  if (isSingle(value)) {
    into[name] = roundFigure(value)
    return
  }
  if (Array.isArray(value) && value.every(isSingle)) {
    into[name] = value.map((item) => String(roundFigure(item))).join(' ')
    return
  }
  const entries: [string, unknown][] = Array.isArray(value)
    ? value.map((item: unknown, i) => [idOf(item) ?? String(i + 1), item])
    : Object.entries(value)
  for (const [key, item] of entries) {
    if (!skip.has(key)) collect(item, name === '' ? key : `${name}.${key}`, skip, into)
  }
}

function isSingle(value: unknown): value is Figure {
  return value === null || typeof value !== 'object'
}

function idOf(value: unknown): string | undefined {
  return typeof value === 'object' && value !== null && 'id' in value && typeof value.id === 'string'
    ? value.id
    : undefined
}

function roundFigure(value: Figure): Figure {
  if (typeof value !== 'number') return value
  if (!Number.isFinite(value)) throw new Error(`a figure is ${value}`)
  const rounded = Number(value.toPrecision(DIGITS))
  return (Number.isFinite(rounded) ? rounded : value) + 0
}
