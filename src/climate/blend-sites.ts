import { LAPSE_RATE_K_PER_M } from '../tables/climate/index.js'
import { blendShape } from './blend-shape.js'
import type { WeightedSite } from './choose-sites.js'
import { monthlyExtraterrestrialWhM2Day } from './extraterrestrial.js'
import type { House } from './house.js'
import { siteClearness } from './site-clearness.js'
import { radiationFlags } from './site-flags.js'
import { monthlyRecord } from './site-table.js'
import { sitingErrorPct } from './siting-error.js'
import type { ClimateSiteUse, MonthlyClimate } from './types.js'

/**
 * Weighted mean climate of some sites, carried to the house: clearness index and diffuse fraction are averaged and
 * turned into irradiation with the sun of the house's own latitude; temperatures are corrected for height.
 *
 * @param near One site or more with their weights, nearest first.
 * @param house The house; where its height is unknown the weighted height of the sites is taken.
 * @param name For people.
 */
export function blendSites(near: readonly WeightedSite[], house: House, name: string): MonthlyClimate {
  const weights = near.map((one) => one.weight)
  const mean = (pick: (index: number) => number): number =>
    weights.reduce((sum, weight, index) => sum + weight * pick(index), 0)
  const elevationM = house.elevationM ?? mean((index) => near[index]!.site.elevationM)
  const parts = near.map(({ site }) => {
    const record = monthlyRecord(site)
    const correctionK = LAPSE_RATE_K_PER_M * (site.elevationM - elevationM)
    return { record, correctionK, ...siteClearness(record, site.latitudeDeg) }
  })
  const months = Array.from({ length: 12 }, (_, month) => month)
  const clearness = months.map((month) => {
    const lit = parts.map((part, index) => ({ value: part.clearness[month], weight: weights[index]! }))
    const known = lit.filter((one): one is { value: number; weight: number } => one.value !== undefined)
    const sum = known.reduce((total, one) => total + one.weight, 0)
    return sum === 0 ? 0 : known.reduce((total, one) => total + one.weight * one.value, 0) / sum
  })
  const diffuseFraction = months.map((month) => mean((index) => parts[index]!.diffuseFraction[month]!))
  const ghiWhM2Day = monthlyExtraterrestrialWhM2Day(house.latitudeDeg).map((h0, month) => h0 * clearness[month]!)
  const temperature = (key: 'meanC' | 'meanMaxC' | 'meanMinC'): number[] =>
    months.map((month) => mean((index) => parts[index]!.record[key][month]! + parts[index]!.correctionK))
  return {
    kind: 'monthly',
    name,
    latitudeDeg: house.latitudeDeg,
    longitudeDeg: house.longitudeDeg,
    elevationM,
    utcOffsetH: house.utcOffsetH ?? near[0]!.site.utcOffsetH,
    ghiWhM2Day,
    dhiWhM2Day: ghiWhM2Day.map((ghi, month) => ghi * diffuseFraction[month]!),
    clearness,
    meanC: temperature('meanC'),
    meanMaxC: temperature('meanMaxC'),
    meanMinC: temperature('meanMinC'),
    windMs: months.map((month) => mean((index) => parts[index]!.record.windMs[month]!)),
    spreadRel: relativeDeviation(parts.map((part) => part.annualClearness)),
    leftOutRel: 0,
    sitingErrorRel: sitingErrorPct(house, near) / 100,
    morning: blendShape(near),
    sites: near.map((one, index): ClimateSiteUse => ({
      wmo: one.site.wmo,
      name: one.site.name,
      state: one.site.state,
      distanceKm: one.distanceKm,
      heightDifferenceM: house.elevationM === undefined ? undefined : one.site.elevationM - house.elevationM,
      weight: weights[index]!,
      flags: radiationFlags(one.site),
    })),
  }
}

/** Sample standard deviation over the mean; 0 for one value. */
function relativeDeviation(values: readonly number[]): number {
  if (values.length < 2) return 0
  const mean = values.reduce((a, b) => a + b, 0) / values.length
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  return Math.sqrt(squares / (values.length - 1)) / mean
}
