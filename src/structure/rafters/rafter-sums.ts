import { at, type Inches, type PoundInches, type Pounds } from '../../values/index.js'
import type { RafterCase } from './rafter-cases.js'
import type { LoadKind } from './rafter-loads.js'
import type { SolvedPart } from './rafter-parts.js'

/** One load of a combination at one place. */
export interface LoadShare {
  readonly kind: LoadKind
  readonly factor: number
  /** Without the factor, lb-in. */
  readonly momentLbIn: PoundInches
}

export type Line = 'momentLbIn' | 'shearLb' | 'shearBeforeLb' | 'sagTimesStiffness'

/** One line of all loads of a case together; it holds until the next sum of the part. */
export function summed({ lines, buffer }: SolvedPart, { terms }: RafterCase, name: Line): Float64Array {
  buffer.fill(0)
  for (const { load, factor } of terms) {
    const line = lines[load]?.[name]
    if (line === undefined) continue
    for (let k = 0; k < buffer.length; k++) buffer[k]! += factor * line[k]!
  }
  return buffer
}

export function reactionLb({ lines }: SolvedPart, { terms }: RafterCase, support: number): Pounds {
  return terms.reduce((total, { load, factor }) => total + factor * (lines[load]?.reactionsLb[support] ?? 0), 0)
}

/** Sum of one line of all loads of a case at one station. */
export function summedAt({ lines }: SolvedPart, { terms }: RafterCase, name: Line, k: number): number {
  return terms.reduce((sum, { load, factor }) => sum + factor * (lines[load]?.[name][k] ?? 0), 0)
}

/**
 * The largest moment beside a station with the largest: where the shear passes zero between two stations the parabola has its top.
 *
 * @source statics: M = M0 + V0^2 / (2 w) at V0 / w from a station
 */
export function peakAt(solved: SolvedPart, each: RafterCase, k: number): { xIn: Inches; momentLbIn: PoundInches } {
  const { stations } = solved
  let peak = { xIn: at(stations, k), momentLbIn: summedAt(solved, each, 'momentLbIn', k) }
  for (const left of [k - 1, k]) {
    if (left < 0 || left + 1 >= stations.length) continue
    const from = summedAt(solved, each, 'shearLb', left)
    const to = summedAt(solved, each, 'shearBeforeLb', left + 1)
    const xIn = at(stations, left)
    const lbPerIn = (from - to) / (at(stations, left + 1) - xIn)
    if (from * to >= 0 || lbPerIn === 0) continue
    const momentLbIn = summedAt(solved, each, 'momentLbIn', left) + from ** 2 / (2 * lbPerIn)
    if (Math.abs(momentLbIn) > Math.abs(peak.momentLbIn)) peak = { xIn: xIn + from / lbPerIn, momentLbIn }
  }
  return peak
}

/** The moment of each load of a case at a place. */
export function sharesAt({ stations, loads, lines }: SolvedPart, { terms }: RafterCase, xIn: Inches): LoadShare[] {
  let k = 0
  while (k + 2 < stations.length && stations[k + 1]! <= xIn) k += 1
  const [h, dx] = [at(stations, k + 1) - at(stations, k), xIn - at(stations, k)]
  return terms.flatMap(({ load, factor }) => {
    const [line, of] = [lines[load], loads[load]]
    if (line === undefined || of === undefined) return []
    const shear = at(line.shearLb, k)
    const lbPerIn = (shear - at(line.shearBeforeLb, k + 1)) / h
    const momentLbIn = at(line.momentLbIn, k) + shear * dx - (lbPerIn * dx ** 2) / 2
    return [{ kind: of.kind, factor, momentLbIn }]
  })
}

/** The top of the parabola through three neighbouring values, the middle one the largest. */
export function vertexOf(values: Float64Array, stations: Float64Array, k: number): number {
  if (k === 0 || k + 1 >= stations.length) return at(values, k)
  const [x0, x1, x2] = [at(stations, k - 1), at(stations, k), at(stations, k + 1)]
  const [y0, y1, y2] = [at(values, k - 1), at(values, k), at(values, k + 1)]
  const [left, right] = [(y1 - y0) / (x1 - x0), (y2 - y1) / (x2 - x1)]
  const curve = (right - left) / (x2 - x0)
  if (curve === 0) return y1
  const slope = left + curve * (x1 - x0)
  const top = y1 - slope ** 2 / (4 * curve)
  return Math.abs(top) > Math.abs(y1) ? top : y1
}

/** Places of the largest and the smallest value. */
export function extremesOf(values: Float64Array): { most: number; least: number } {
  let [most, least] = [0, 0]
  for (let k = 1; k < values.length; k++) {
    if (values[k]! > values[most]!) most = k
    if (values[k]! < values[least]!) least = k
  }
  return { most, least }
}
