import type { ArrangedPlane } from '../../roof/index.js'
import type { PacketInput } from '../inputs.js'
import type { Inches } from '../../values/index.js'

/** Rails of a plane that have their ends and mounts at the same places along the eave. */
export interface MountPattern {
  /** `a`, `b` and so on, from the lowest rail up. */
  readonly letter: string
  readonly rails: readonly string[]
  /** Left end, mounts, right end, from the left end of the eave, in. */
  readonly stopsIn: readonly Inches[]
}

/** The different sets of mount places of a plane. */
export function mountPatterns(input: PacketInput, plane: ArrangedPlane): MountPattern[] {
  const values = input.mounts?.values
  const found = new Map<string, { rails: string[]; stopsIn: Inches[] }>()
  for (const rail of values?.rails.filter((each) => each.plane === plane.id) ?? []) {
    const places = values?.mounts.filter((mount) => mount.rail === rail.id).map((mount) => mount.x_in) ?? []
    const stopsIn = [rail.x_in, ...places.toSorted((a, b) => a - b), rail.x_in + rail.length_in]
    const key = stopsIn.map((stop) => stop.toFixed(2)).join(' ')
    const same = found.get(key)
    if (same === undefined) found.set(key, { rails: [rail.id], stopsIn })
    else same.rails.push(rail.id)
  }
  return [...found.values()].map((each, index) => ({ letter: letterOf(index), ...each }))
}

/** a to z, then a2, b2 and so on. */
function letterOf(index: number): string {
  const letter = String.fromCodePoint(97 + (index % 26))
  return index < 26 ? letter : `${letter}${Math.floor(index / 26) + 1}`
}
