import { DAY_SHAPE_TABLE, type ClimateRegion } from '../tables/climate/index.js'
import { rowOfSite, type ClimateSite } from './site-table.js'

/** When in the day a station's sun comes, and how far it is to be believed. */
export interface SiteQuality {
  /** Whether the hours of its typical year stand where the sun does. */
  readonly clockRight: boolean
  /** Undefined for sites without design temperatures, where it was not looked up. */
  readonly region: ClimateRegion | undefined
  /** Share of hours whose radiation was modelled from satellite images, 0 to 1. */
  readonly satelliteShare: number
  /** Share of each month's global and diffuse irradiation before solar noon, 0 to 1, January first. */
  readonly morningGhi: readonly number[]
  readonly morningDhi: readonly number[]
}

const REGIONS: Readonly<Record<string, ClimateRegion>> = {
  p: 'pacific_coast',
  w: 'interior_west',
  n: 'interior_east',
  e: 'east_gulf_coast',
  i: 'islands',
  a: 'alaska',
}

let rows: readonly string[] | undefined
/** What was decoded, by row. */
const decoded = new Map<number, SiteQuality>()

/** What the table of day shapes says of a site; its rows are those of the site table. */
export function siteQuality(site: ClimateSite): SiteQuality {
  const row = rowOfSite(site)
  const known = decoded.get(row) ?? decode(site, row)
  decoded.set(row, known)
  return known
}

function decode(site: ClimateSite, row: number): SiteQuality {
  rows ??= DAY_SHAPE_TABLE.split('\n')
  const [wmo, clock, region = '', , satellite, digits = ''] = rows[row]!.split('\t')
  if (wmo !== site.wmo) throw new Error(`the table of day shapes has station ${wmo} where ${site.wmo} is wanted`)
  const shares = Array.from({ length: 24 }, (_, index) => Number(digits.slice(3 * index, 3 * index + 3)) / 1000)
  return {
    clockRight: clock === '',
    region: REGIONS[region],
    satelliteShare: Number(satellite) / 100,
    morningGhi: shares.slice(0, 12),
    morningDhi: shares.slice(12),
  }
}
