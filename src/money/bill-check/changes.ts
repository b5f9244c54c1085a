import type { Tariff } from '../../project/index.js'

/** One change of a tariff that could explain bills. */
export interface Change {
  /** Key below the tariff. */
  readonly path: string
  readonly found: string | number | null
  readonly fits: string | number
  readonly tariff: Tariff
  /** The lower, the likelier a slip it is; see `search.ts`. */
  readonly oddness: number
  /** Other values of the key that explain the bills as well, from and to. */
  readonly also?: readonly [string | number, string | number]
}

/** A number of a tariff whose right value is to be found. */
export interface Unknown {
  readonly path: string
  readonly found: number | null
  readonly low: number
  readonly high: number
  /** @returns undefined when no tariff can have it. */
  readonly set: (value: number) => Tariff
  /** Added to the oddness of what is found. */
  readonly oddness: number
}

type Path = readonly (string | number)[]

/** The tariff with one value changed, all else shared; undefined takes the key away. */
export function withValue(tariff: Tariff, path: Path, value: unknown): Tariff {
  return changed(tariff, path, value) as Tariff
}

function changed(of: unknown, [key = '', ...rest]: Path, value: unknown): unknown {
  const copy: Record<string | number, unknown> | unknown[] = Array.isArray(of)
    ? [...(of as unknown[])]
    : { ...(of as object) }
  const map = copy as Record<string | number, unknown>
  if (rest.length > 0) map[key] = changed(map[key] ?? {}, rest, value)
  else if (value === undefined) delete map[key]
  else map[key] = value
  return copy
}

/** Ranges in which the right value of a key is looked for, by the end of its name. */
const RANGES: readonly (readonly [ending: string, low: number, high: number])[] = [
  ['up_to_kwh_per_month', 0, 5000],
  ['above_kwh_per_month', 0, 5000],
  ['up_to_kwh_per_day', 0, 200],
  ['above_kwh_per_day', 0, 200],
  ['up_to_kw', 0, 100],
  ['usd_per_kwh', -1, 2],
  ['usd_per_kw', -100, 200],
  ['usd_per_month', -200, 500],
  ['usd_per_day', -10, 20],
  ['percent', 0, 40],
  ['paid_out_pct', 0, 100],
  ['true_up_fee_usd', 0, 500],
]

function rangeOf(path: Path): readonly [number, number] | undefined {
  const names = path.filter((part) => typeof part === 'string')
  const key = names.at(-1) ?? ''
  // Maps from period to price, and lists of months, bear the unit in the name above.
  const above = names.slice(0, -1).some((name) => name.endsWith('usd_per_kwh'))
  const found = RANGES.find(([ending]) => key.endsWith(ending))
  if (found !== undefined) return [found[1], found[2]]
  return above ? [-1, 2] : undefined
}

/** Every number of the tariff that a bill depends on, and charges that it may lack. */
export function unknownsOf(tariff: Tariff): Unknown[] {
  const found: Unknown[] = []
  const walk = (value: unknown, path: Path): void => {
    if (path[0] === 'solar' && path[1] === 'tariff') return
    if (Array.isArray(value)) value.forEach((one, i) => walk(one, [...path, i]))
    else if (typeof value === 'object' && value !== null)
      for (const [key, one] of Object.entries(value)) walk(one, [...path, key])
    else if (typeof value === 'number') {
      const range = rangeOf(path)
      if (range !== undefined) found.push(unknownAt(tariff, path, value, range))
    }
  }
  walk(tariff, [])
  return [...found, ...lacking(tariff)]
}

function unknownAt(tariff: Tariff, path: Path, found: number, [low, high]: readonly [number, number]): Unknown {
  const limits = shared(tariff, path)
  return {
    path: path.join('.'),
    found,
    low: Math.min(low, found),
    high: Math.max(high, 2 * found),
    set: (value) => limits.reduce((changed, one) => withValue(changed, one, value), tariff),
    // One month of twelve is less likely to be wrong alone.
    oddness: typeof path.at(-1) === 'number' ? 1 : 0,
  }
}

/** The end of a tier that counts the whole bill is one key, though each period states it. */
function shared(tariff: Tariff, path: Path): Path[] {
  const [energy, season, key, period, ...rest] = path
  if (energy !== 'energy' || key !== 'periods_tiers' || rest.at(-1) === 'usd_per_kwh') return [path]
  const price = tariff.energy[String(season)]
  if (price?.tiers_count === 'each_period') return [path]
  return Object.keys(price?.periods_tiers ?? { [String(period)]: [] }).map((id) => [
    energy,
    season ?? '',
    key,
    id,
    ...rest,
  ])
}

/** Charges of kinds that the tariff has none of. */
function lacking(tariff: Tariff): Unknown[] {
  const none = (map: object | undefined): boolean => map === undefined || Object.keys(map).length === 0
  const lack = (path: Path, low: number, high: number): Unknown => ({
    path: path.join('.'),
    found: null,
    low: tariff.negative_prices === true ? low : Math.max(0, low),
    high,
    set: (value) => withValue(tariff, path, value),
    oddness: 1.5,
  })
  return [
    ...(none(tariff.fixed)
      ? [lack(['fixed', 'missing', 'usd_per_month'], -200, 500), lack(['fixed', 'missing', 'usd_per_day'], -10, 20)]
      : []),
    ...(none(tariff.riders) ? [lack(['riders', 'missing', 'usd_per_kwh'], -1, 1)] : []),
    ...(none(tariff.taxes) ? [lack(['taxes', 'missing', 'percent'], 0, 40)] : []),
  ]
}
