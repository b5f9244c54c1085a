import { SERIES_LIMITS as LIMITS } from '../../tables/climate/index.js'
import { radiansOf } from '../../values/index.js'
import type { RowSun } from './row-sun.js'

/** Radiations of a file as measured, W/m2; NaN where missing, undefined where the file has no such column. */
export interface Measured {
  readonly ghi: Float64Array | undefined
  readonly dni: Float64Array | undefined
  readonly dhi: Float64Array | undefined
}

/** Rows that fail a test, in order. */
export interface Quality {
  readonly daylight: number
  /** Beyond what is physically possible: taken as missing. */
  readonly beyond: number[]
  readonly rare: number[]
  readonly open: number[]
  readonly diffuseAbove: number[]
  readonly stuck: number[]
  readonly nightLight: number[]
  /** Negative values, counted as 0. */
  readonly negative: number[]
  /** All rows of daylight that fail any test. */
  readonly failing: number[]
}

const NIGHT_COS = Math.sin(radiansOf(LIMITS.night.belowDeg))

/** Tests the radiation of each interval; changes nothing. */
export function qualityOf(measured: Measured, sun: RowSun, stepH: number): Quality {
  const quality: Quality = {
    daylight: sun.sunlit.reduce((count, share) => count + (share > 0 ? 1 : 0), 0),
    beyond: [],
    rare: [],
    open: [],
    diffuseAbove: [],
    stuck: stuckRows(measured, sun, stepH),
    nightLight: [],
    negative: [],
    failing: [],
  }
  const failing = new Set(quality.stuck)
  const fail = (list: number[], row: number): void => {
    list.push(row)
    failing.add(row)
  }
  for (let row = 0; row < sun.sunlit.length; row++) {
    const ghi = measured.ghi?.[row] ?? Number.NaN
    const dni = measured.dni?.[row] ?? Number.NaN
    const dhi = measured.dhi?.[row] ?? Number.NaN
    if (ghi < 0 || dni < 0 || dhi < 0) quality.negative.push(row)
    const cosZenith = sun.cosZenith[row]!
    if (sun.sunlit[row] === 0) {
      const isDeepNight = cosZenith < NIGHT_COS
      if (isDeepNight && Math.max(ghi || 0, dhi || 0, dni || 0) > LIMITS.night.leastWM2) quality.nightLight.push(row)
      continue
    }
    const normal = sun.normalWM2[row]!
    if (isBeyond(ghi, dni, dhi, cosZenith, normal)) {
      fail(quality.beyond, row)
      continue
    }
    if (isRare(ghi, dni, dhi, cosZenith, normal)) fail(quality.rare, row)
    const sum = dni * cosZenith + dhi
    const isHigh = cosZenith > LIMITS.highSunCosZenith
    const apart = isHigh ? LIMITS.closure.highSun : LIMITS.closure.lowSun
    if (sum > LIMITS.closure.leastWM2 && Math.abs(ghi / sum - 1) > apart) fail(quality.open, row)
    const most = isHigh ? LIMITS.diffuseRatio.highSun : LIMITS.diffuseRatio.lowSun
    if (ghi > LIMITS.diffuseRatio.leastWM2 && dhi > most * ghi) fail(quality.diffuseAbove, row)
  }
  quality.failing.push(...[...failing].toSorted((a, b) => a - b))
  return quality
}

function isBeyond(ghi: number, dni: number, dhi: number, cosZenith: number, normalWM2: number): boolean {
  const { least, ghi: most, dhi: mostDiffuse, dniFactor } = LIMITS.possible
  const sloped = normalWM2 * cosZenith ** LIMITS.exponent
  if (ghi < LIMITS.thermalOffsetWM2 || dhi < LIMITS.thermalOffsetWM2 || dni < Math.min(least, LIMITS.thermalOffsetWM2))
    return true
  return (
    ghi > most.factor * sloped + most.offset ||
    dhi > mostDiffuse.factor * sloped + mostDiffuse.offset ||
    dni > dniFactor * normalWM2
  )
}

function isRare(ghi: number, dni: number, dhi: number, cosZenith: number, normalWM2: number): boolean {
  const { ghi: most, dhi: mostDiffuse, dni: mostDirect } = LIMITS.rare
  const sloped = normalWM2 * cosZenith ** LIMITS.exponent
  return (
    ghi > most.factor * sloped + most.offset ||
    dhi > mostDiffuse.factor * sloped + mostDiffuse.offset ||
    dni > mostDirect.factor * normalWM2 * cosZenith ** mostDirect.exponent + mostDirect.offset
  )
}

/** Rows of daylight in which global (or direct and diffuse) stands still for hours at a value that is not 0. */
function stuckRows({ ghi, dni, dhi }: Measured, sun: RowSun, stepH: number): number[] {
  const values = ghi ?? dhi ?? dni
  const stuck: number[] = []
  if (values === undefined) return stuck
  const least = Math.round(LIMITS.stuckH / stepH) + 1
  let from = 0
  for (let row = 1; row <= values.length; row++) {
    const goesOn = row < values.length && sun.sunlit[row]! > 0 && values[row] === values[from] && values[row] !== 0
    if (goesOn) continue
    if (row - from >= least && sun.sunlit[from]! > 0) for (let each = from; each < row; each++) stuck.push(each)
    from = row
  }
  return stuck
}
