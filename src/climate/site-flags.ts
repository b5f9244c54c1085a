import { MONTH_NAMES } from '../values/index.js'
import type { ClimateSite } from './site-table.js'

/** Flags that speak about design temperatures only and leave the monthly sun and temperature alone. */
const DESIGN_FLAGS = new Set(['jja_high?', 'no_extreme_min'])

/** The flags of a site that cast doubt on its monthly means or its clock. */
export function radiationFlags(site: ClimateSite): string[] {
  return site.flags.filter((flag) => !DESIGN_FLAGS.has(flag))
}

/** Whether a site's yearly sunshine differs by 10 % or more from the median of its nearest sites. */
export function sticksOut(site: ClimateSite): boolean {
  return site.flags.some((flag) => flag.startsWith('ghi_nbr'))
}

/**
 * Says in words what a flag of the site table means.
 *
 * @param flag As in `ClimateSite.flags`, such as `ghi_nbr+12%` or `kt07=0.20`.
 */
export function explainSiteFlag(flag: string): string {
  const neighbours = /^ghi_nbr([+-]\d+)%$/.exec(flag)
  if (neighbours !== null) {
    const percent = Number(neighbours[1])
    const direction = percent > 0 ? 'above' : 'below'
    return `its yearly sunshine is ${Math.abs(percent)} % ${direction} the median of its nearest sites, which can be the place or the model behind the typical year`
  }
  const clearness = /^kt(\d\d)=(.+)$/.exec(flag)
  if (clearness !== null) {
    const month = MONTH_NAMES[Number(clearness[1]) - 1] ?? 'one month'
    return `its clearness index in ${month} is ${clearness[2]}, outside 0.22 to 0.78`
  }
  switch (flag) {
    case 'jja_high?':
      return 'its hottest hours do not fall in June to August, so the estimated 2 % dry-bulb may be up to 2.3 deg C too high (the safe side for conductors)'
    case 'no_extreme_min':
      return 'no extreme minimum temperature is known for it'
    case 'utc?':
      return 'its clock is more than two hours from the sun'
    default:
      return `it carries the flag ${flag}`
  }
}
