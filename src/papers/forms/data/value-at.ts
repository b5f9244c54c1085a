import { didYouMean } from '../../../project/index.js'
import { own } from '../../../values/index.js'

/** A value at a path, or why there is none, as a clause. */
export type Found = { readonly value: unknown } | { readonly missing: string }

/**
 * The value at a dotted path. Entries of a list go by their number, from 0, or by their `id`.
 *
 * @param path `circuits.b1.breaker_a` or `circuits[0].breaker_a`.
 */
export function valueAt(data: unknown, path: string): Found {
  let value = data
  const way: string[] = []
  for (const step of path.replaceAll(/\[(\d+)\]/gu, '.$1').split('.')) {
    const under = way.length === 0 ? '' : ` under ${way.join('.')}`
    if (Array.isArray(value)) {
      const list: readonly unknown[] = value
      const ids = list.map(idOf)
      const index = /^\d+$/u.test(step) ? Number(step) : ids.indexOf(step)
      if (!(index in list)) {
        const known = ids.filter((id) => id !== undefined)
        return { missing: `there is no entry '${step}'${under}${didYouMean(step, known)}` }
      }
      value = list[index]
    } else if (isMap(value)) {
      const inner = own(value, step)
      if (inner === undefined)
        return { missing: `there is no '${step}'${under}${didYouMean(step, Object.keys(value))}` }
      value = inner
    } else return { missing: `nothing stands under ${way.join('.')}` }
    way.push(step)
  }
  return value === null || value === '' ? { missing: `${path} is empty` } : { value }
}

function isMap(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function idOf(value: unknown): string | undefined {
  const id = isMap(value) ? own(value, 'id') : undefined
  return typeof id === 'string' ? id : undefined
}
