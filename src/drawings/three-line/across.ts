import type { OneLineSource } from '../sheets/one-line-sources.js'

/** Where things of the PV system stand across the sheet, shares of its width. */
export interface Across {
  readonly symbol: number
  readonly inverter: number
  readonly combiner: number
  readonly disconnect: number
  readonly flag: number
  /** Whether the words of a row stand above its wires. */
  readonly stacked: boolean
}

/** Below this width words do not fit beside the wires, points. */
const NARROW_PT = 600

const WIDE: Across = { symbol: 0.185, inverter: 0.39, combiner: 0.48, disconnect: 0.74, flag: 0.86, stacked: false }
/** String inverters have room behind them for the tag of their output: up to the combiner, or to its end without one. */
const WIDE_STRINGS: Across = { ...WIDE, inverter: 0.36, combiner: 0.51, disconnect: 0.75 }
const WIDE_APART: Across = { ...WIDE, inverter: 0.42, combiner: 0.58 }
const BRANCHES: Across = { symbol: 0.012, inverter: 0.22, combiner: 0.38, disconnect: 0.69, flag: 0.83, stacked: true }
const STRINGS: Across = { symbol: 0.012, inverter: 0.255, combiner: 0.43, disconnect: 0.72, flag: 0.84, stacked: true }
/** Without a combiner the inverters have its room. */
const APART: Across = { symbol: 0.012, inverter: 0.38, combiner: 0.62, disconnect: 0.69, flag: 0.83, stacked: true }

/** Places for a diagram of this width with these sources. */
export function acrossFor(widthPt: number, sources: readonly OneLineSource[], isCombined: boolean): Across {
  const isString = sources.some(({ unit }) => unit !== undefined)
  if (widthPt >= NARROW_PT) return isString ? (isCombined ? WIDE_STRINGS : WIDE_APART) : WIDE
  if (!isCombined) return APART
  return isString ? STRINGS : BRANCHES
}
