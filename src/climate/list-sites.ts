import { distanceKm } from './distance.js'
import { words } from './find-site.js'
import { climateSites, type ClimateSite } from './site-table.js'
import type { Degrees } from '../values/index.js'

export interface ListedSite extends ClimateSite {
  /** From `near`; undefined when no place was given. */
  readonly distanceKm: number | undefined
}

/**
 * The built-in climate sites, all or some.
 *
 * @param query.text Words that must all begin a word of name, state or station number.
 * @param query.near Place to measure from, degrees, north and east positive.
 * @returns Nearest first with `near`, otherwise by state, then name.
 */
export function listSites(query: {
  readonly text?: string | undefined
  readonly near?: { readonly latitudeDeg: Degrees; readonly longitudeDeg: Degrees } | undefined
}): ListedSite[] {
  const asked = words(query.text ?? '')
  const { near } = query
  const found: ListedSite[] = []
  for (const site of climateSites()) {
    const own = [site.wmo, site.state, ...words(site.name)]
    if (!asked.every((word) => own.some((one) => one.startsWith(word)))) continue
    const distance = near && distanceKm(near.latitudeDeg, near.longitudeDeg, site.latitudeDeg, site.longitudeDeg)
    found.push({ ...site, distanceKm: distance })
  }
  return found.sort(
    (a, b) => (a.distanceKm ?? 0) - (b.distanceKm ?? 0) || compare(a.state, b.state) || compare(a.name, b.name),
  )
}

/** By code unit, so that no locale changes the order. */
function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
