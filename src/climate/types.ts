import type { Celsius, Degrees } from '../values/index.js'

/** Twelve months of mean days, from one built-in site or from several. */
export interface MonthlyClimate {
  readonly kind: 'monthly'
  /** For people: `nearby: Sampletown (12 km), ...` or the site's name. */
  readonly name: string
  /** Coordinates and height that the calculation is for (the house's where the project states them). */
  readonly latitudeDeg: Degrees
  readonly longitudeDeg: Degrees
  readonly elevationM: number
  /** Local standard time minus UTC, h. */
  readonly utcOffsetH: number
  /** Mean daily global and diffuse horizontal irradiation, Wh/m2 per day, January first. */
  readonly ghiWhM2Day: readonly number[]
  readonly dhiWhM2Day: readonly number[]
  /** Monthly mean clearness index (GHI over extraterrestrial), January first. */
  readonly clearness: readonly number[]
  /** Monthly mean dry-bulb, mean of daily maxima and of daily minima, deg C, corrected to `elevationM`. */
  readonly meanC: readonly Celsius[]
  readonly meanMaxC: readonly Celsius[]
  readonly meanMinC: readonly Celsius[]
  /** Monthly mean wind at 10 m, m/s. */
  readonly windMs: readonly number[]
  /** Relative standard deviation of the annual clearness among the sites used, 0 for one site. */
  readonly spreadRel: number
  /** Relative change of the year's sun if nearer sites had not been left out for sticking out; 0 when none was. */
  readonly leftOutRel: number
  /**
   * Relative standard deviation of the year's sun as the house is not a station: by region and distance, see
   * `sitingErrorPct`; 0 where the climate is the place's own.
   */
  readonly sitingErrorRel: number
  /** When in the day the sun comes; undefined counts as a symmetric day. */
  readonly morning?: MorningShares | undefined
  readonly sites: readonly ClimateSiteUse[]
}

/** Shares of a month's irradiation that fall before solar noon, 0 to 1, twelve values each, January first. */
export interface MorningShares {
  readonly ghi: readonly number[]
  readonly dhi: readonly number[]
}

/** How one built-in site takes part. */
export interface ClimateSiteUse {
  readonly wmo: string
  readonly name: string
  readonly state: string
  readonly distanceKm: number
  /** Site height minus the house's, m; undefined when the house's height is unknown. */
  readonly heightDifferenceM: number | undefined
  readonly weight: number
  /** Checks of its sun that the site failed; `explainSiteFlag` puts each into words. */
  readonly flags: readonly string[]
}

/**
 * A year of hours from a weather file. All arrays have `length` entries; entry i is the hour that ENDS at its stamp.
 * Radiation is the mean over that hour, W/m2; temperature, wind and snow depth are the values at the stamp.
 */
export interface HourlyClimate {
  readonly kind: 'hourly'
  readonly name: string
  readonly latitudeDeg: Degrees
  readonly longitudeDeg: Degrees
  readonly elevationM: number
  readonly utcOffsetH: number
  readonly length: number
  /** 1 to 12, and day of month, and hour 1 to 24 (hour-ending, local standard time). */
  readonly month: Uint8Array
  readonly day: Uint8Array
  readonly hour: Uint8Array
  /** Day of the year counted from 1 in a year of 365 days (366 when `length` is 8784). */
  readonly dayOfYear: Uint16Array
  readonly ghiWM2: Float64Array
  readonly dniWM2: Float64Array
  readonly dhiWM2: Float64Array
  readonly dryBulbC: Float64Array
  readonly windMs: Float64Array
  /** NaN-free; -1 where the file does not know the snow depth. */
  readonly snowDepthCm: Float64Array
}

/** The weather of a typical year at the house, by hours or by months. */
export type Climate = MonthlyClimate | HourlyClimate

/** Design temperatures for wiring; `estimated` marks values that no published table states for the site. */
export interface DesignTemperature {
  readonly valueC: Celsius
  readonly estimated: boolean
  /** One sentence: site, edition or formula. */
  readonly from: string
}
export interface DesignTemperatures {
  /** Mean of the annual extreme minimum dry-bulb; undefined when no site nearby has one. */
  readonly extremeLow: DesignTemperature | undefined
  /** Mean of the June to August 2 % dry-bulb. */
  readonly high2pct: DesignTemperature | undefined
  /** Annual 0.4 % cooling dry-bulb. */
  readonly high0p4pct: DesignTemperature | undefined
}
