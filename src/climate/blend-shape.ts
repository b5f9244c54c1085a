import type { WeightedSite } from './choose-sites.js'
import { siteQuality } from './site-quality.js'
import type { MorningShares } from './types.js'

/**
 * When in the day the sun comes at a house: the weighted mean of the sites' shares, those with a wrong clock left out,
 * smoothed over the months with weights of 1/4, 1/2 and 1/4, as single months are half weather of the typical year.
 *
 * @returns Undefined when every site has a wrong clock: the day then counts as symmetric.
 * @source See DAY_SHAPE_SOURCE. Leave-one-out error of the monthly share 0.0124, of a symmetric day 0.0151; of the yearly
 *   share 0.0046 and 0.0082.
 */
export function blendShape(sites: readonly Pick<WeightedSite, 'site' | 'weight'>[]): MorningShares | undefined {
  const known = sites
    .map(({ site, weight }) => ({ weight, quality: siteQuality(site) }))
    .filter(({ quality }) => quality.clockRight)
  const sum = known.reduce((total, { weight }) => total + weight, 0)
  if (sum === 0) return undefined
  const mean = (key: 'morningGhi' | 'morningDhi'): number[] =>
    Array.from(
      { length: 12 },
      (_, month) => known.reduce((total, { weight, quality }) => total + weight * quality[key][month]!, 0) / sum,
    )
  return { ghi: smoothed(mean('morningGhi')), dhi: smoothed(mean('morningDhi')) }
}

/** Each month with half of itself and a quarter of each neighbour, round the year. */
function smoothed(months: readonly number[]): number[] {
  return months.map((value, month) => value / 2 + (months[(month + 11) % 12]! + months[(month + 1) % 12]!) / 4)
}
