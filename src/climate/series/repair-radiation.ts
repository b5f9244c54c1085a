import { erbsHourly } from '../../sun/index.js'
import { diffuseFrom, directFrom, splitBy } from './components.js'
import { fillGaps, type FilledGaps } from './fill-gaps.js'
import type { Measured } from './quality.js'
import type { RowSun } from './row-sun.js'

/** Radiation without gaps, W/m2, and how it came about. */
export interface RepairedRadiation {
  readonly ghi: Float64Array
  readonly dni: Float64Array
  readonly dhi: Float64Array
  /** Rows of daylight in which the third radiation follows from the two others. */
  readonly derived: readonly number[]
  /** Rows of daylight in which a correlation split global. */
  readonly split: readonly number[]
  readonly gaps: FilledGaps
}

/**
 * Makes three radiations without gaps of what was measured: two of three give the third exactly, global alone is split by
 * a correlation, and what is missing is filled from what lies around it. With all three, direct and diffuse stay as they are.
 *
 * @param beyond Rows that cannot be: taken as missing.
 */
export function repairRadiation(
  measured: Measured,
  sun: RowSun,
  stepH: number,
  beyond: readonly number[],
): RepairedRadiation {
  const length = sun.sunlit.length
  const column = (): Float64Array => new Float64Array(length)
  const [ghi, dni, dhi] = [column(), column(), column()]
  const isMissing = new Uint8Array(length)
  const impossible = new Set(beyond)
  const derived: number[] = []
  const split: number[] = []
  for (let row = 0; row < length; row++) {
    // At night there is nothing to know.
    if (sun.sunlit[row] === 0) continue
    const cosZenith = sun.cosZenith[row]!
    const normal = sun.normalWM2[row]!
    const read = (values: Float64Array | undefined): number =>
      values === undefined || impossible.has(row) ? Number.NaN : Math.max(0, values[row]!)
    const [global, direct, diffuse] = [read(measured.ghi), read(measured.dni), read(measured.dhi)]
    const known = [global, direct, diffuse].filter((value) => !Number.isNaN(value)).length
    if (known < 2 && Number.isNaN(global)) {
      isMissing[row] = 1
      continue
    }
    if (known === 1) {
      const parts = splitBy(erbsHourly(clearnessOf(global, sun, row)), global, cosZenith, normal)
      ;[ghi[row], dni[row], dhi[row]] = [global, parts.dni, parts.dhi]
      split.push(row)
      continue
    }
    if (known === 2) derived.push(row)
    dhi[row] = Number.isNaN(diffuse) ? diffuseFrom(global, direct, cosZenith) : diffuse
    dni[row] = Number.isNaN(direct) ? directFrom(global, diffuse, cosZenith, normal) : direct
    ghi[row] = Number.isNaN(global) ? direct * cosZenith + diffuse : global
  }
  const gaps = fillGaps({ ghi, dni, dhi }, isMissing, sun, stepH)
  return { ghi, dni, dhi, derived, split, gaps }
}

/** Clearness by the sun of the whole interval, of which a part may be night. */
function clearnessOf(ghi: number, sun: RowSun, row: number): number {
  const level = sun.levelWM2[row]!
  return level > 0 ? ghi / level : 0
}
