import { isPlainMap, valueAt } from '../plain-data.js'
import { splitPath } from '../path.js'
import { projectSchema, typesOf } from '../schema.js'
import { listKeys, type KnownKey } from './list-keys.js'

/** Ids of other parts that stand as the value of a key, by its pattern. */
const REFERS_TO: Readonly<Record<string, string>> = {
  'arrays.*.roof_plane': 'roof_planes',
  'arrays.*.module': 'equipment.modules',
  'arrays.*.inverter': 'equipment.inverters',
  'arrays.*.optimiser': 'equipment.optimisers',
  'arrays.*.strings.#.inverter_unit': 'inverter_units',
  'inverter_units.*.inverter': 'equipment.inverters',
  'electrical.trunk': 'equipment.trunk_cables',
  'structure.rail': 'equipment.rails',
  'structure.mount': 'equipment.mounts',
}

/**
 * How a dotted key that was begun can go on, one step further: `arrays.so` gives `arrays.south.`.
 *
 * @param begun What was typed; after a `=` come values.
 * @param data The project at hand, for ids and numbers of lists; undefined when there is none.
 * @param end What stands behind a key that holds a value: `=` where a value is to follow.
 * @returns Whole candidates; one that goes on below ends in a point.
 */
export function completeKey(begun: string, data: unknown, end: '=' | ''): string[] {
  const equals = begun.indexOf('=')
  if (equals >= 0 && end === '=') return completeValue(begun.slice(0, equals), begun.slice(equals + 1), data)
  const steps = splitPath(begun)
  const above = steps.slice(0, -1)
  const last = steps.at(-1) ?? ''
  const prefix = above.length === 0 ? '' : `${above.join('.')}.`
  const next = listKeys().filter(({ pattern }) => pattern.length === steps.length && fitsAbove(pattern, above))
  const candidates = next.flatMap((key) =>
    namesOf(key, valueAt(data, above), data === undefined).map((name) => ({ name, tail: key.isLeaf ? end : '.' })),
  )
  const fitting = candidates.filter(({ name }) => name.startsWith(last))
  return [...new Set(fitting.map(({ name, tail }) => `${prefix}${name}${tail}`))]
}

function fitsAbove(pattern: readonly string[], above: readonly string[]): boolean {
  return above.every((given, i) => {
    const segment = pattern[i] ?? ''
    return segment === given || segment === '*' || (segment === '#' && /^(?:\d+|\*)$/u.test(given))
  })
}

/** What may stand at a step: the key, the ids or the numbers that the project has, or `*` where there is no project. */
function namesOf({ pattern }: KnownKey, holder: unknown, isBare: boolean): string[] {
  const name = pattern.at(-1) ?? ''
  if (name !== '*' && name !== '#') return [name]
  if (isBare) return ['*']
  if (Array.isArray(holder)) return holder.map((_, i) => String(i))
  return isPlainMap(holder) ? Object.keys(holder) : []
}

function completeValue(path: string, begun: string, data: unknown): string[] {
  const steps = splitPath(path)
  const keys = listKeys().filter(({ pattern }) => pattern.length === steps.length && fitsAbove(pattern, steps))
  const values = keys.flatMap(({ pattern, schemas }) => {
    const part = REFERS_TO[pattern.join('.')]
    const ids = part === undefined ? undefined : valueAt(data, part.split('.'))
    const words = schemas.flatMap((schema) => [
      ...(schema.enum ?? []).map(String),
      ...('const' in schema ? [String(schema.const)] : []),
      ...(typesOf(schema, projectSchema()).has('boolean') ? ['true', 'false'] : []),
    ])
    return [...(isPlainMap(ids) ? Object.keys(ids) : []), ...words]
  })
  return [...new Set(values)].filter((value) => value.startsWith(begun)).map((value) => `${path}=${value}`)
}
