import type { StorageBackup } from '../../project/index.js'

/** Essential loads of a house. */
export interface Essential {
  /** kWh by clock hour of a day, 24 of them. */
  readonly kwhOfHour: Float64Array
  /** Most that runs at once, W. */
  readonly peakW: number
  /** Most for a moment, with the largest start beside all else; undefined when no start is stated. */
  readonly surgeW: number | undefined
  /** Of the largest motor, A. */
  readonly lockedRotorA: number | undefined
}

/** Essential loads as stated; all are taken to run at once for the peak, on the safe side. */
export function essentialOf(backup: StorageBackup): Essential | undefined {
  const { essential, loads } = backup
  if (essential !== undefined) {
    return {
      kwhOfHour: new Float64Array(24).fill(essential.avg_w / 1000),
      peakW: essential.peak_w,
      surgeW: essential.surge_w,
      lockedRotorA: essential.locked_rotor_a,
    }
  }
  if (loads === undefined) return undefined
  const kwhOfHour = new Float64Array(24)
  let peakW = 0
  let rise: number | undefined
  let lockedRotorA: number | undefined
  for (const {
    w,
    hours_per_day: hours = 24,
    from_hour: from,
    to_hour: to,
    surge_w: surge,
    locked_rotor_a: amps,
  } of Object.values(loads)) {
    peakW += w
    if (surge !== undefined) rise = Math.max(rise ?? 0, surge - w)
    if (amps !== undefined) lockedRotorA = Math.max(lockedRotorA ?? 0, amps)
    const isTimed = from !== undefined && to !== undefined
    const length = isTimed ? (to - from + 24) % 24 || 24 : 24
    const kwh = (w / 1000) * (isTimed ? 1 : hours / 24)
    for (let i = 0; i < length; i++) {
      const hour = ((from ?? 0) + i) % 24
      kwhOfHour[hour] = kwhOfHour[hour]! + kwh
    }
  }
  return { kwhOfHour, peakW, surgeW: rise === undefined ? undefined : peakW + rise, lockedRotorA }
}
