import { SNOWFALL_TABLE } from '../tables/climate/index.js'
import type { Inches } from '../values/index.js'
import type { House } from './house.js'
import { nearestWithin, REACH_KM } from './nearest-sites.js'
import { rowOfSite, type ClimateSite } from './site-table.js'

/** Mean snowfall at the nearest built-in site. */
export interface NearSnowfall {
  readonly site: ClimateSite
  readonly distanceKm: number
  /** Depth of new snow by month, in, January first; undefined where the normals are for too distant a place. */
  readonly monthlyIn: readonly Inches[] | undefined
  readonly yearIn: Inches | undefined
  /** Months whose normals are provisional: ten years at least, not sufficiently complete. */
  readonly provisionalMonths: number
}

let rows: readonly string[] | undefined

/**
 * Mean snowfall at the built-in site that is nearest to a house.
 *
 * @returns Undefined where no site is within reach.
 * @source See SNOWFALL_SOURCE.
 * @limits A neighbour is off by 20 % in the median; see the table.
 */
export function nearestSnowfall(house: Pick<House, 'latitudeDeg' | 'longitudeDeg'>): NearSnowfall | undefined {
  const nearest = nearestWithin(house, REACH_KM)
  if (nearest === undefined) return undefined
  rows ??= SNOWFALL_TABLE.split('\n')
  const [wmo, , , letters = '', note, depths = ''] = rows[rowOfSite(nearest.site)]!.split('\t')
  if (wmo !== nearest.site.wmo) throw new Error(`the table of snowfall has station ${wmo}, not ${nearest.site.wmo}`)
  const tenths = depths.split(',')
  const monthlyIn = note === 'f' ? undefined : Array.from({ length: 12 }, (_, month) => Number(tenths[month] ?? 0) / 10)
  return {
    ...nearest,
    monthlyIn,
    yearIn: monthlyIn?.reduce((sum, inches) => sum + inches, 0),
    provisionalMonths: letters === 'P' ? 12 : letters.replaceAll(/[^P]/gu, '').length,
  }
}
