import { DESIGN_SOURCE, EXTREME_LOW_ESTIMATE_SOURCE, HIGH_2PCT_ESTIMATE_SOURCE } from '../tables/climate/index.js'
import type { Finding, Worksheet } from '../worksheet/index.js'
import type { House } from './house.js'
import type { SiteAtDistance } from './nearest-sites.js'
import { FAR_KM, HIGH_M, saySite } from './say-site.js'
import { explainSiteFlag } from './site-flags.js'
import type { SiteRecord } from './site-table.js'

/** Largest leave-one-out error of the extreme-minimum regressions against 52 published values, deg C. */
const LARGEST_ERROR_C = { 'heating and zone': 3.3, heating: 5.3, zone: 4.1 } as const

const ASK_WHICH = 'ask the authority which design temperatures it wants and state site.design_temperatures'

/** A design temperature of a built-in site. */
export interface DesignSite {
  readonly near: SiteAtDistance
  readonly record: SiteRecord
  readonly house: House
  /** The key under site.design_temperatures that would replace it. */
  readonly override: 'extreme_low_c' | 'high_2pct_c' | 'high_0p4pct_c'
}

/**
 * Tells what is doubtful about a design temperature that comes from a built-in site, each thing once.
 *
 * @param told Remembers what was said for this project already.
 */
export function recordDesignSite(design: DesignSite, told: Set<string>, worksheet: Worksheet): void {
  const { site, distanceKm } = design.near
  const { house } = design
  const heightDifferenceM = house.elevationM === undefined ? undefined : site.elevationM - house.elevationM
  const said = saySite({ ...site, distanceKm, heightDifferenceM })
  const tell = (finding: Finding): void => {
    const key = `${finding.id} ${site.wmo}`
    if (!told.has(key)) worksheet.find(finding)
    told.add(key)
  }
  const where = `site.design_temperatures.${design.override}`
  if (distanceKm > FAR_KM) {
    const message = `design temperatures come from ${said}, more than ${FAR_KM} km from the house`
    tell({ severity: 'warning', id: 'climate.design-site-far', message, where, fix: ASK_WHICH })
  }
  if (heightDifferenceM === undefined) {
    const message = `design temperatures come from ${said} without correction for height, as the height of the house is unknown`
    tell({ severity: 'warning', id: 'climate.design-height-unknown', message, where, fix: 'state site.elevation_ft' })
  } else if (Math.abs(heightDifferenceM) > HIGH_M) {
    const message = `design temperatures come from ${said}, more than ${HIGH_M} m higher or lower than the house`
    tell({ severity: 'warning', id: 'climate.design-site-height', message, where, fix: ASK_WHICH })
  }
  for (const finding of estimates(design, said, where)) tell(finding)
  tell({
    severity: 'note',
    id: 'climate.design-edition',
    message: 'design temperatures rest on the 2009 edition; later editions differ by tenths of a degree',
    where: 'site.design_temperatures',
    source: DESIGN_SOURCE,
    fix: ASK_WHICH,
  })
}

/** What to know of a value that nobody published and that is estimated from others of the site. */
function estimates({ near, record, override }: DesignSite, said: string, where: string): Finding[] {
  const found: Finding[] = []
  if (override === 'extreme_low_c' && record.extremeLowEstimatedFrom !== undefined) {
    const largest = LARGEST_ERROR_C[record.extremeLowEstimatedFrom]
    found.push({
      severity: 'warning',
      id: 'climate.extreme-low-estimated',
      message: `the extreme low of ${said} is an estimate, good to about +-2 deg C (largest error found ${largest} deg C)`,
      where,
      source: EXTREME_LOW_ESTIMATE_SOURCE,
      fix: 'state site.design_temperatures.extreme_low_c from the table that the authority accepts, or leave a margin of 2 deg C in the voltage check',
    })
  }
  if (override === 'high_2pct_c' && record.high2pctEstimated) {
    const late = near.site.flags.includes('jja_high?') ? `; ${explainSiteFlag('jja_high?')}` : ''
    found.push({
      severity: 'note',
      id: 'climate.high-2pct-estimated',
      message: `the 2 % high of ${said} is an estimate (largest error found 0.6 deg C)${late}`,
      where,
      source: HIGH_2PCT_ESTIMATE_SOURCE,
      fix: ASK_WHICH,
    })
  }
  return found
}
