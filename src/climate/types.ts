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
 * A year of weather in intervals of one length, 5 to 60 minutes, whole days from 1 January on. All arrays have `length`
 * entries. Radiation is the mean over the interval, W/m2; the sun is taken at its middle.
 */
export interface HourlyClimate {
  readonly kind: 'hourly'
  /** Length of an interval, h: 1 for a file of hours, 1/12 for five minutes. */
  readonly stepH: number
  /** Middle of each interval, h of local standard time from the midnight of its day; a mended clock may leave the day. */
  readonly middleH: Float64Array
  /**
   * One standard deviation that splitting global radiation by a correlation adds to a year on a plane, as a share of 1:
   * `southRel` on planes towards the equator up to 34 deg, `otherRel` on others; undefined where direct and diffuse are
   * in the file.
   */
  readonly decompositionRel?: { readonly southRel: number; readonly otherRel: number }
  readonly name: string
  readonly latitudeDeg: Degrees
  readonly longitudeDeg: Degrees
  readonly elevationM: number
  readonly utcOffsetH: number
  readonly length: number
  /** 1 to 12, and day of month, and hour 1 to 24 in which the interval's middle lies (local standard time). */
  readonly month: Uint8Array
  readonly day: Uint8Array
  readonly hour: Uint8Array
  /** Day of the year counted from 1 in a year of 365 days (366 where the file has a 29 February). */
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
