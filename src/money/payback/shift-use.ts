import { partsOf } from '../calendar/index.js'

/**
 * Moves a share of each day's use between the hours with and without production; the day's total stays.
 *
 * @param share Above zero: into the hours of production, in proportion to production; below: out of them, in proportion to
 * the use of the other hours. Never more than the hours hold.
 */
export function shiftUse(usageKwh: Float64Array, productionKwh: Float64Array, share: number): Float64Array {
  const shifted = usageKwh.slice()
  const day = 24 * partsOf(usageKwh)
  for (let start = 0; start < usageKwh.length; start += day) {
    let sunny = 0
    let dark = 0
    let made = 0
    for (let h = start; h < start + day; h++) {
      const kwh = usageKwh[h] ?? 0
      const output = Math.max(0, productionKwh[h] ?? 0)
      made += output
      if (output > 0) sunny += kwh
      else dark += kwh
    }
    const wanted = Math.abs(share) * (sunny + dark)
    const moved = share > 0 ? Math.min(wanted, dark) : Math.min(wanted, sunny)
    if (made === 0 || moved === 0 || (share < 0 && dark === 0)) continue
    for (let h = start; h < start + day; h++) {
      const kwh = usageKwh[h] ?? 0
      const output = Math.max(0, productionKwh[h] ?? 0)
      if (share > 0) shifted[h] = output > 0 ? kwh + (moved * output) / made : kwh * (1 - moved / dark)
      else shifted[h] = output > 0 ? kwh * (1 - moved / sunny) : kwh * (1 + moved / dark)
    }
  }
  return shifted
}
