import type { Site } from '../project/index.js'
import type { Degrees } from '../values/index.js'

/** Where the calculation is for. */
export interface House {
  /** Degrees, north positive. */
  readonly latitudeDeg: Degrees
  /** Degrees, east positive. */
  readonly longitudeDeg: Degrees
  /** Above sea level; undefined when unknown. */
  readonly elevationM?: number | undefined
  /** Local standard time minus UTC, h; undefined when not stated. */
  readonly utcOffsetH?: number | undefined
}

/** Metres in a foot: exact by definition of the international foot. */
export const METRES_PER_FOOT = 0.3048

/** The house's place as the climate functions want it. */
export function houseOf(site: Pick<Site, 'latitude_deg' | 'longitude_deg' | 'elevation_ft' | 'utc_offset_h'>): House {
  return {
    latitudeDeg: site.latitude_deg,
    longitudeDeg: site.longitude_deg,
    elevationM: site.elevation_ft === undefined ? undefined : site.elevation_ft * METRES_PER_FOOT,
    utcOffsetH: site.utc_offset_h,
  }
}
