import { findSite, METRES_PER_FOOT, type ClimateSite } from '../../climate/index.js'
import { madeUp, stated, type StartingSite } from '../../project/index.js'
import { UsageError } from '../errors.js'

/** A house at a place that a person names by its weather site: where exactly, and how high, is made up. */
export function siteFromTable(text: string, tell: (text: string) => void): StartingSite {
  const { site, candidates } = findSite(text)
  if (site === undefined) {
    const hint = candidates.length === 0 ? '' : `; did you mean ${candidates.map(sayCandidate).join(', or ')}?`
    throw new UsageError(`no one weather site is '${text}'${hint} 'gablewatt list-sites' finds them by word or place`)
  }
  if (candidates.length > 0) {
    tell(`taking ${sayCandidate(site)}; others: ${candidates.map(sayCandidate).join(', ')}`)
  }
  return {
    address: madeUp(`${site.name}, ${site.state}`),
    latitudeDeg: madeUp(site.latitudeDeg),
    longitudeDeg: madeUp(site.longitudeDeg),
    elevationFt: madeUp(Math.round(site.elevationM / METRES_PER_FOOT)),
    utcOffsetH: stated(site.utcOffsetH),
  }
}

/** A house at its place; its height is that of the weather sites around until it is stated. */
export function siteAt(lat: number, lon: number): StartingSite {
  return { address: madeUp(`${lat}, ${lon}`), latitudeDeg: stated(lat), longitudeDeg: stated(lon) }
}

/** With the number, as two sites may share a name. */
function sayCandidate(site: ClimateSite): string {
  return `${site.name}, ${site.state} (${site.wmo})`
}
