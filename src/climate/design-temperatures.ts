import type { Site } from '../project/index.js'
import {
  DESIGN_SOURCE,
  EXTREME_LOW_ESTIMATE_SOURCE,
  HIGH_2PCT_ESTIMATE_SOURCE,
  LAPSE_RATE_K_PER_M,
} from '../tables/climate/index.js'
import type { Source, Worksheet } from '../worksheet/index.js'
import { houseOf, type House } from './house.js'
import { sitesByDistance, type SiteAtDistance } from './nearest-sites.js'
import { recordDesignSite } from './record-design-site.js'
import { saySite } from './say-site.js'
import { siteRecord, type SiteRecord } from './site-table.js'
import type { DesignTemperature, DesignTemperatures } from './types.js'
import type { Celsius } from '../values/index.js'

type DesignSite = Pick<Site, 'latitude_deg' | 'longitude_deg' | 'elevation_ft' | 'design_temperatures'>
type OverrideKey = 'extreme_low_c' | 'high_2pct_c' | 'high_0p4pct_c'

interface Quantity {
  readonly id: string
  readonly override: OverrideKey
  readonly says: string
  readonly symbol: string
  /** Which way is safe when a site's value and its height-corrected value differ. */
  readonly safe: 'colder' | 'hotter'
  readonly value: (record: SiteRecord) => number | undefined
  readonly estimated: (record: SiteRecord) => boolean
  readonly estimateSource: Source
}

const EXTREME_LOW: Quantity = {
  id: 'climate.extreme-low',
  override: 'extreme_low_c',
  says: 'Mean of the annual extreme minimum dry-bulb temperature',
  symbol: 'T_low',
  safe: 'colder',
  value: (record) => record.extremeLowC,
  estimated: (record) => record.extremeLowEstimatedFrom !== undefined,
  estimateSource: EXTREME_LOW_ESTIMATE_SOURCE,
}
const HIGH_2PCT: Quantity = {
  id: 'climate.high-2pct',
  override: 'high_2pct_c',
  says: 'Mean of the June to August 2 % dry-bulb temperature',
  symbol: 'T_2%',
  safe: 'hotter',
  value: (record) => record.high2pctC,
  estimated: (record) => record.high2pctEstimated,
  estimateSource: HIGH_2PCT_ESTIMATE_SOURCE,
}
const HIGH_0P4PCT: Quantity = {
  id: 'climate.high-0p4pct',
  override: 'high_0p4pct_c',
  says: 'Annual 0.4 % cooling dry-bulb temperature',
  symbol: 'T_0.4%',
  safe: 'hotter',
  value: (record) => record.high0p4pctC,
  estimated: () => false,
  estimateSource: DESIGN_SOURCE,
}

/**
 * Design temperatures of a house: what the project states, otherwise the nearest built-in site that has the value,
 * as it stands there or corrected to the height of the house, whichever is on the safe side (the colder for the
 * extreme low, the hotter for the highs). Never taken from a typical year, which misses rare cold.
 *
 * @param site The project's site.
 * @param worksheet Takes a step for each value, and the warnings.
 * @returns deg C, rounded to 0.1 towards the safe side; undefined where neither project nor a site within 500 km has it.
 */
export function designTemperatures(site: DesignSite, worksheet: Worksheet): DesignTemperatures {
  const house = houseOf(site)
  let within: SiteAtDistance[] | undefined
  const told = new Set<string>()
  const find = (quantity: Quantity): DesignTemperature | undefined => {
    const stated = site.design_temperatures?.[quantity.override]
    if (stated !== undefined) return stateOverride(quantity, stated, site.design_temperatures?.source, worksheet)
    within ??= sitesByDistance(house)
    for (const near of within) {
      const record = siteRecord(near.site)
      if (quantity.value(record) === undefined) continue
      recordDesignSite({ near, record, house, override: quantity.override }, told, worksheet)
      return fromSite(quantity, near, record, house, worksheet)
    }
    return undefined
  }
  return { extremeLow: find(EXTREME_LOW), high2pct: find(HIGH_2PCT), high0p4pct: find(HIGH_0P4PCT) }
}

function stateOverride(
  quantity: Quantity,
  valueC: Celsius,
  sourceText: string | undefined,
  worksheet: Worksheet,
): DesignTemperature {
  const from = `project file${sourceText === undefined ? '' : `: ${sourceText}`}`
  worksheet.step({
    id: quantity.id,
    says: `${quantity.says}, as the project states it`,
    formula: quantity.symbol,
    inputs: [],
    result: { symbol: quantity.symbol, value: valueC, unit: 'C' },
    source: { document: sourceText ?? `site.design_temperatures.${quantity.override}`, standing: 'project file' },
  })
  return { valueC, estimated: false, from }
}

function fromSite(
  quantity: Quantity,
  { site, distanceKm }: SiteAtDistance,
  record: SiteRecord,
  house: House,
  worksheet: Worksheet,
): DesignTemperature {
  const siteC = quantity.value(record)!
  const heightDifferenceM = house.elevationM === undefined ? undefined : site.elevationM - house.elevationM
  const correctedC = siteC + LAPSE_RATE_K_PER_M * (heightDifferenceM ?? 0)
  const valueC =
    quantity.safe === 'colder' ? floorTenth(Math.min(siteC, correctedC)) : ceilTenth(Math.max(siteC, correctedC))
  const estimated = quantity.estimated(record)
  const source = estimated ? quantity.estimateSource : DESIGN_SOURCE
  const pick = quantity.safe === 'colder' ? 'min' : 'max'
  worksheet.step({
    id: quantity.id,
    says: `${quantity.says} at the nearest site that has it, or at the height of the house if that is ${quantity.safe}`,
    formula: `${quantity.symbol} = ${pick === 'min' ? 'floor' : 'ceil'}(10 * ${pick}(T_site, T_site + 0.0065 * (h_site - h_house))) / 10`,
    inputs: [
      { symbol: 'T_site', value: siteC, unit: 'C', from: `climate table, station ${site.wmo}` },
      {
        symbol: 'h_site - h_house',
        value: heightDifferenceM ?? 0,
        unit: 'm',
        from: heightDifferenceM === undefined ? 'height of the house unknown' : 'site.elevation_ft',
      },
    ],
    result: { symbol: quantity.symbol, value: valueC, unit: 'C' },
    source,
    limits: 'rounded to 0.1 deg C towards the safe side',
  })
  const how = estimated ? `estimate (${source.document})` : 'ASHRAE Handbook of Fundamentals 2009 (secondary source)'
  return { valueC, estimated, from: `${saySite({ ...site, distanceKm, heightDifferenceM })}: ${how}` }
}

/** Rounding must not be fooled by the last binary digit: -12.4 * 10 may be -124.00000000000001. */
const ROUNDING = 1e-9
const floorTenth = (value: number): number => Math.floor(value * 10 + ROUNDING) / 10
const ceilTenth = (value: number): number => Math.ceil(value * 10 - ROUNDING) / 10
