import type { ArrayLight, ShadeGroup } from './array-light.js'
import { shareOfParallel, shareOfString, type SeriesCurve } from './series/index.js'
import type { ModuleShade } from './shade/index.js'
import { sunPath, type SunPath } from './shade/index.js'
import type { SkySteps } from './sky-steps.js'

/** What is asked of one module for its string, step by step. */
export type SeriesWatch = Watched | { readonly factor: Float64Array; readonly aloneW?: undefined }

/** Takes the power of a module without shadows of solids, by diffuse light alone, and with its own shadows, W. */
interface Watched {
  readonly fullW: Float64Array
  readonly dullW: Float64Array
  readonly aloneW: Float64Array
  readonly factor?: undefined
}

/** Differences in light below this share cost nothing, as the tops of the curves are flat. */
const EVEN = 0.002

/**
 * What series and parallel connection leave of what the modules of an array would give alone, for each group of modules on a
 * string, by step.
 *
 * Shadows of solids are taken place by place of the sun: lit and shaded sections of the whole string on the modules'
 * curve. Light that differs from module to module otherwise (trees that let some through, less sky) is split into a bright
 * and a dull part where that costs most.
 *
 * @param run Works one group out alone and fills what is watched.
 * @returns Nothing for groups without strings or without shade.
 */
export function seriesFactors(
  steps: SkySteps,
  { plan, groups }: ArrayLight,
  run: (group: ShadeGroup, watch: Watched) => void,
  curve: SeriesCurve | undefined,
): Map<ShadeGroup, Float64Array> {
  const factors = new Map<ShadeGroup, Float64Array>()
  if (curve === undefined || plan.views.length < plan.modules.length) return factors
  const inputs = stringsByInput({ plan, groups })
  if (inputs.size === 0) return factors
  const watched = new Map<ShadeGroup, Watched>()
  for (const strings of inputs.values()) {
    const members = strings.flat()
    if (members.every(({ group }) => group.shade === undefined)) continue
    for (const { group } of members) {
      if (watched.has(group)) continue
      const column = (): Float64Array => new Float64Array(steps.length)
      const watch = { fullW: column(), dullW: column(), aloneW: column() }
      run(group, watch)
      watched.set(group, watch)
    }
    const leastVoltage = plan.modules[members[0]?.index ?? 0]?.series?.leastVoltage ?? 0
    inputFactors(steps, strings, { watched, curve, leastVoltage }, factors)
  }
  return factors
}

/** A module on a string. */
interface StringMember {
  readonly group: ShadeGroup
  readonly index: number
}

function stringsByInput({ plan, groups }: Pick<ArrayLight, 'plan' | 'groups'>): Map<string, StringMember[][]> {
  const inputs = new Map<string, Map<number, StringMember[]>>()
  for (const group of groups) {
    for (const index of group.members) {
      const series = plan.modules[index]?.series
      if (series === undefined) continue
      const strings = inputs.get(series.input) ?? new Map<number, StringMember[]>()
      inputs.set(series.input, strings)
      strings.set(series.string, [...(strings.get(series.string) ?? []), { group, index }])
    }
  }
  return new Map([...inputs].map(([input, strings]) => [input, [...strings.values()]]))
}

interface InputModels {
  readonly watched: ReadonlyMap<ShadeGroup, Watched>
  readonly curve: SeriesCurve
  readonly leastVoltage: number
}

function inputFactors(
  steps: SkySteps,
  strings: readonly (readonly StringMember[])[],
  { watched, curve, leastVoltage }: InputModels,
  factors: Map<ShadeGroup, Float64Array>,
): void {
  const path = sunPath(steps)
  const free = strings.map((members) => freeSections(members))
  const members = strings.flat()
  const factor = new Float64Array(steps.length).fill(1)
  const lit = strings.map(() => 1)
  const levels = strings.map((string) => new Float64Array(string.length))
  for (let step = 0; step < steps.length; step += 1) {
    let [full, dull, alone] = [0, 0, 0]
    for (const { group } of members) {
      const watch = watched.get(group)!
      full += watch.fullW[step]!
      dull += watch.dullW[step]!
      alone += watch.aloneW[step]!
    }
    if (full <= 0 || alone <= 0) continue
    let even = 0
    strings.forEach((string, number) => {
      const level = levels[number]!
      string.forEach(({ group }, index) => (level[index] = watched.get(group)!.fullW[step]!))
      even += unevenShare(curve, level) * sumOf(level)
    })
    const shadows = meanOverPlaces(path, steps.sunIndex[step]!, free, lit, (shares) =>
      shares.length === 1
        ? shareOfString(curve, shares[0]!, dull / full, leastVoltage)
        : shareOfParallel(curve, shares, dull / full, leastVoltage),
    )
    const together = even * shadows
    if (together < alone) factor[step] = together / alone
  }
  for (const { group } of members) factors.set(group, factor)
}

/** Share of the sections of a string that no shadow touches, by place of the sun; undefined where none ever does. */
function freeSections(members: readonly StringMember[]): Float32Array | undefined {
  const shades = members.map(({ group }) => group.shade).filter((shade): shade is ModuleShade => shade !== undefined)
  const shaded = shades.filter((shade) => shade.freeSections !== undefined)
  const first = shaded[0]?.freeSections
  if (first === undefined) return undefined
  const share = new Float32Array(first.length)
  for (let place = 0; place < share.length; place += 1) {
    let lost = 0
    for (const { freeSections, sections } of shaded) lost += 1 - freeSections![place]! / sections
    share[place] = 1 - lost / members.length
  }
  return share
}

function meanOverPlaces(
  { from, place, share }: SunPath,
  sun: number,
  free: readonly (Float32Array | undefined)[],
  lit: number[],
  of: (litShares: readonly number[]) => number,
): number {
  let mean = 0
  for (let at = from[sun]!; at < from[sun + 1]!; at += 1) {
    let isFree = true
    for (let string = 0; string < free.length; string += 1) {
      lit[string] = free[string]?.[place[at]!] ?? 1
      if (lit[string]! < 1) isFree = false
    }
    mean += share[at]! * (isFree ? 1 : of(lit))
  }
  return mean
}

/** What one current leaves of modules of different light, by the split into a bright and a dull part that costs most. */
function unevenShare(curve: SeriesCurve, level: Float64Array): number {
  level.sort()
  const count = level.length
  const all = sumOf(level)
  const least = level[0]!
  if (all <= 0 || (level[count - 1]! - least) * count < EVEN * all) return 1
  let worst = 1
  let low = 0
  for (let dull = 1; dull < count; dull += 1) {
    low += level[dull - 1]!
    const bright = (all - low) / (count - dull)
    const share = shareOfString(curve, (count - dull) / count, low / dull / bright)
    const kept = (share * bright * count) / all
    if (kept < worst) worst = kept
  }
  return worst
}

function sumOf(values: Float64Array): number {
  let sum = 0
  for (const value of values) sum += value
  return sum
}
