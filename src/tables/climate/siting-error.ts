/** Parts of the country in which nearby stations stand for a house equally well. */
export type ClimateRegion =
  | 'pacific_coast'
  | 'interior_west'
  | 'interior_east'
  | 'east_gulf_coast'
  | 'islands'
  | 'alaska'

/**
 * Standard deviation of the year's global irradiation at a house, blended by the rule of `climate/choose-sites.ts`, by
 * effective distance of the nearest station: up to 20, 50, 100 km and beyond, percent.
 *
 * Not measured, and put at the largest of the row: Pacific coast and east and Gulf coast beyond 100 km. On the islands
 * (19 stations) and in Alaska (44 stations below 62 N) one figure stands whatever the distance.
 *
 * @source See SITING_SOURCE: rms of leave-one-out errors, 944 stations outside Alaska. They contain the noise of the
 * station left out too, so they are upper bounds against the long-term mean.
 */
export const BLENDED_SITING_ERROR_PCT: Readonly<Record<ClimateRegion, readonly [number, number, number, number]>> = {
  pacific_coast: [2.0, 4.8, 5.9, 5.9],
  interior_west: [2.3, 2.9, 3.4, 3.1],
  interior_east: [4.4, 4.5, 4.8, 4.3],
  east_gulf_coast: [3.6, 4.7, 3.3, 4.7],
  islands: [6.2, 6.2, 6.2, 6.2],
  alaska: [8.7, 8.7, 8.7, 8.7],
}

/**
 * The same for the nearest station alone, whatever its distance, percent; Alaska from pairs of stations under 20 km
 * apart, some of them with wrong clocks.
 *
 * @source See SITING_SOURCE.
 */
export const NEAREST_SITE_ERROR_PCT: Readonly<Record<ClimateRegion, number>> = {
  pacific_coast: 5.42,
  interior_west: 4.28,
  interior_east: 6.02,
  east_gulf_coast: 5.76,
  islands: 7.19,
  alaska: 14,
}
