import { climateRegion, isEast } from './climate-region.js'
import type { House } from './house.js'
import { outOfReach, poolByDistance, type SiteAtDistance } from './nearest-sites.js'
import { sticksOut } from './site-flags.js'

/** How many sites are averaged; with 1, 3, 5, 8 and 12 the error of the year is 5.6, 4.7, 4.5, 4.4 and 4.3 %. */
export const SITES_AVERAGED = 8

/** Effective distance of 100 m of height, km for each m. */
const KM_PER_M_OF_HEIGHT = 0.2

/** A site that counts in the climate of a house. */
export interface WeightedSite extends SiteAtDistance {
  /** Distance with the difference in height in it, km. */
  readonly effectiveKm: number
  /** Share in the mean, 0 to 1. */
  readonly weight: number
}

/** The sites that a nearby climate is made from, and the nearer ones that it leaves out. Nearest first. */
export interface ChosenSites {
  readonly used: readonly WeightedSite[]
  /** Sites that would be among them if none were left out for sticking out. */
  readonly leftOut: readonly WeightedSite[]
}

/**
 * Distance of a site with the difference in height in it: 100 m of height count as 20 km.
 *
 * @param house The height counts as the site's where it is unknown.
 * @returns km
 * @source See SITING_SOURCE.
 */
export function effectiveDistanceKm(near: SiteAtDistance, house: House): number {
  const heightM = house.elevationM === undefined ? 0 : near.site.elevationM - house.elevationM
  return Math.hypot(near.distanceKm, KM_PER_M_OF_HEIGHT * heightM)
}

/**
 * Chooses and weights the sites for a house: the eight nearest by effective distance within 500 km.
 *
 * West of 104 W, in Alaska and on the islands sites that stick out against their neighbours count, as pairs within 20 km
 * agree to 2 % there, and nearness counts much: weights fall with the square of the distance, from 10 km on. In the east
 * single typical years scatter by 4 % however near they are: a site that sticks out is left out, and weights fall with the
 * distance, from 20 km on. Where nothing else is within reach what sticks out counts too.
 *
 * @throws StageError when no site is within reach.
 * @source See SITING_SOURCE.
 */
export function chooseSites(house: House): ChosenSites {
  const within = poolByDistance(house)
  if (within.length === 0) throw outOfReach(house)
  const east = isEast(climateRegion(house))
  const ranked = within
    .map((one) => ({ ...one, effectiveKm: effectiveDistanceKm(one, house) }))
    .sort((a, b) => a.effectiveKm - b.effectiveKm)
  const believed = east ? ranked.filter((one) => !sticksOut(one.site)) : ranked
  const used = (believed.length > 0 ? believed : ranked).slice(0, SITES_AVERAGED)
  const leftOut = ranked.slice(0, SITES_AVERAGED).filter((one) => !used.includes(one))
  return { used: weighted(used, east), leftOut: weighted(leftOut, east) }
}

/** The same sites as if none had been left out for sticking out. */
export function withLeftOut({ used, leftOut }: ChosenSites, house: House): readonly WeightedSite[] {
  const all = [...used, ...leftOut].toSorted((a, b) => a.effectiveKm - b.effectiveKm).slice(0, SITES_AVERAGED)
  return weighted(all, isEast(climateRegion(house)))
}

/** One site that counts alone. */
export function alone(near: SiteAtDistance, house: House): WeightedSite {
  return { ...near, effectiveKm: effectiveDistanceKm(near, house), weight: 1 }
}

/**
 * Weights by effective distance; they sum to 1.
 *
 * @param east Whether one station is mostly noise, see `chooseSites`.
 */
export function weighted<S extends SiteAtDistance & { readonly effectiveKm: number }>(
  sites: readonly S[],
  east: boolean,
): (S & { readonly weight: number })[] {
  const raw = sites.map(({ effectiveKm }) =>
    east ? 1 / Math.max(effectiveKm, LEAST_EAST_KM) : 1 / Math.max(effectiveKm, LEAST_WEST_KM) ** 2,
  )
  const sum = raw.reduce((a, b) => a + b, 0)
  return sites.map((site, index) => ({ ...site, weight: raw[index]! / sum }))
}

/** Effective distances below these count as these, km. */
const LEAST_EAST_KM = 20
const LEAST_WEST_KM = 10
