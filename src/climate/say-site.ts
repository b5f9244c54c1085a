/** Beyond this distance a site may have another climate than the house, km. */
export const FAR_KM = 80
/** A site with doubts about its sun is always named up to this distance, km. */
export const NEAR_KM = 40
/** Beyond this difference in height a site may have another climate than the house, m. */
export const HIGH_M = 400

/** `RENO AIRPORT, NV (12 km away, 30 m higher)`, for messages. */
export function saySite(site: {
  readonly name: string
  readonly state: string
  readonly distanceKm: number
  readonly heightDifferenceM: number | undefined
}): string {
  const height = site.heightDifferenceM === undefined ? '' : `, ${sayHeight(site.heightDifferenceM)}`
  const distance = site.distanceKm < 1 ? 'less than 1 km' : `${Math.round(site.distanceKm)} km`
  return `${[site.name, site.state].filter((part) => part !== '').join(', ')} (${distance} away${height})`
}

function sayHeight(differenceM: number): string {
  const rounded = Math.round(differenceM)
  if (rounded === 0) return 'same height'
  return rounded > 0 ? `${rounded} m higher` : `${-rounded} m lower`
}
