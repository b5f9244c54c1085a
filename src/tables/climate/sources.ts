import type { Source } from '../../worksheet/index.js'

/** Monthly radiation, temperature and wind of the built-in sites. */
export const TYPICAL_YEAR_SOURCE: Source = {
  document: 'NREL National Solar Radiation Data Base 1991-2005 Update, Typical Meteorological Year 3 data files',
  edition: '2008',
  standing: 'read',
}

/** Design temperatures that a published table states. */
export const DESIGN_SOURCE: Source = {
  document: 'ASHRAE Handbook of Fundamentals, climatic design information',
  edition: '2009',
  standing: 'secondary',
}

/** Extreme minima made from the 99 % heating dry-bulb and the hardiness zone by regression. */
export const EXTREME_LOW_ESTIMATE_SOURCE: Source = {
  document:
    'regression of the mean annual extreme minimum on the ASHRAE 2009 99 % heating dry-bulb and the USDA 2012 hardiness zone, fitted to 52 US stations',
  standing: 'secondary',
}

/** June to August 2 % dry-bulb made from the annual 0.4 % dry-bulb by regression. */
export const HIGH_2PCT_ESTIMATE_SOURCE: Source = {
  document:
    'regression of the June to August 2 % dry-bulb on the ASHRAE 2009 annual 0.4 % dry-bulb, fitted to 15 US stations',
  place: '-1.207 + 1.018 T_0.4%',
  standing: 'secondary',
}

/** Which sites that stick out against their neighbours are to be believed. */
export const FLAGGED_SITE_SOURCE: Source = {
  document:
    'leave-one-out comparison of the typical years of 1,020 US stations: pairs within 20 km agree to 2 % in the west and on the Pacific coast; in the eastern interior single years scatter by 4 % however near',
  standing: 'secondary',
}

/** Which sites stand for a house with which weights, and how well. */
export const SITING_SOURCE: Source = {
  document:
    'leave-one-out comparison of the typical years of 1,020 US stations: error of the year 4.30 % rms by this rule, 5.67 % by the nearest station alone',
  standing: 'secondary',
}

/** Shares of the sun before and after solar noon. */
export const DAY_SHAPE_SOURCE: Source = {
  document:
    'morning shares of global and diffuse irradiation computed from the Typical Meteorological Year 3 files; method checked on 60 stations against their own hours, all planes 0.83 % rms of the year against 1.67 % for a symmetric day',
  standing: 'secondary',
}

/** Mean monthly snowfall. */
export const SNOWFALL_SOURCE: Source = {
  document: 'NOAA National Centers for Environmental Information, U.S. Climate Normals, monthly snowfall',
  edition: '1981-2010',
  place: 'mly-snow-normal',
  standing: 'read',
}

/** Fall of air temperature with height. */
export const LAPSE_RATE_SOURCE: Source = {
  document: 'US Standard Atmosphere',
  edition: '1976',
  place: 'tropospheric gradient, 6.5 K/km',
  standing: 'from memory',
}

/** Fall of air temperature with height, K/m. */
export const LAPSE_RATE_K_PER_M = 0.0065
