import {
  DECOMPOSITION,
  DESIGN_SOURCE,
  EXTREME_LOW_ESTIMATE_SOURCE,
  FLAGGED_SITE_SOURCE,
  GAP_LIMITS,
  HIGH_2PCT_ESTIMATE_SOURCE,
  LAPSE_RATE_SOURCE,
  RADIATION_LIMITS,
  SERIES_LIMITS,
  SUM_LIMITS,
  TYPICAL_YEAR_SOURCE,
} from '../../tables/climate/index.js'
import { PRACTICE, type Explanations } from './explanation.js'

/** Findings about weather, climate sites and design temperatures. */
export const CLIMATE: Explanations = {
  'climate.clock-shift': {
    means:
      'The hours of the weather file do not fit the course of the sun: morning or afternoon comes too early or too late.',
    rule: 'Global radiation is direct radiation on the level plus diffuse radiation; this adds up only when the sun stands where it stood in the measured hour. The shift that makes it add up best is the likely slip of the clock.',
    sources: [PRACTICE],
    fix: 'See that stamps mean what is said of them (an EPW hour ends at its stamp, in local standard time), and check longitude (east positive) and time zone. site.climate.clock_shift_h: auto moves the stamps, a number moves them by so many hours.',
  },
  'climate.closure-poor': {
    means:
      'Direct and diffuse radiation of the weather file do not add up to its global radiation, whatever the clock.',
    rule: 'The three radiations of one moment are tied by geometry. When they disagree, at least one of them is wrong, and the energy estimate inherits the error.',
    sources: [PRACTICE],
    fix: 'Use a file whose radiations come from one instrument or one model. Direct and diffuse are the two that count here.',
  },
  'climate.clock-moved': {
    means: 'The stamps of the weather file were moved, or left, as site.climate.clock_shift_h says.',
    rule: 'The sun is taken at the middle of each interval by the moved clock; nothing else of the file changes.',
    sources: [PRACTICE],
    fix: 'Nothing, when you meant it. Take the key out to have the clock only checked.',
  },
  'climate.clock-unknown': {
    means: 'The clock of the weather file could not be compared with the sun.',
    rule: 'Three radiations tell the clock by adding up; global radiation alone by the symmetry of its clearest days. Neither was clear enough here.',
    sources: [PRACTICE],
    fix: 'See that stamps_mark, clock and time zone are those of the station.',
  },
  'climate.sums-unchecked': {
    means: 'No built-in station is near enough to compare the sums of the weather file with.',
    rule: 'A wrong unit or length of interval shows as twice, half or 3.6 times the radiation of a station nearby.',
    sources: [SUM_LIMITS.source],
    fix: 'Compare the yearly global radiation with a map of your country: 800 to 2200 kWh/m2 over most of the world.',
  },
  'climate.year-sum': {
    means: 'A year of global radiation of the weather file is far from that of the nearest built-in station.',
    rule: 'Single years differ by 3 to 5 %. More than 25 % is told; more than 70 % up, or as far down, is refused. Known slips (2, 1/2, 3.6 ...) are named.',
    sources: [SUM_LIMITS.source],
    fix: 'Check unit and interval of the radiation columns: W/m2 is a mean power, Wh/m2 the energy of the interval.',
  },
  'climate.month-sums': {
    means: 'Single months of the weather file have much more or less sun than the nearest built-in station.',
    rule: 'Months of a typical year differ from the long mean by 10 % rms, so one month is mostly weather. A ratio that drifts one way is a soiled, ageing or shaded sensor.',
    sources: [SUM_LIMITS.source],
    fix: 'Look at the months in order. When they drift, use another file.',
  },
  'climate.series-doubtful': {
    means: 'Some intervals of the weather file fail a test of measured radiation.',
    rule: 'What is physically impossible is taken as missing and filled; what is extremely rare, does not add up or stands still is kept and counted. More than 5 % of the daylight is a warning with its months, more than 20 % is refused (judgement).',
    sources: [SERIES_LIMITS.source],
    fix: 'Compare with a neighbouring station. A wrong clock, zone, unit or place of the station fails many intervals at once.',
  },
  'climate.series-night-light': {
    means: 'The weather file has light while the sun is well below the horizon.',
    rule: 'More than 10 W/m2 with the sun 1 deg below the horizon is a wrong clock or zone, or a lamp. It was left out.',
    sources: [SERIES_LIMITS.source],
    fix: 'Check clock, time zone and place of the station.',
  },
  'climate.series-negative': {
    means: 'Radiation below 0 W/m2 was counted as 0.',
    rule: 'Instruments that look at a cold sky read a little below zero at night, usually down to -10, at worst -30 W/m2.',
    sources: [SERIES_LIMITS.source],
    fix: 'Nothing. By day it may be an offset of the instrument that takes from every value.',
  },
  'climate.series-third-derived': {
    means: 'Two of three radiations were measured, the third was computed from them.',
    rule: 'Global radiation is direct radiation on the level plus diffuse radiation. With two of them no model is needed.',
    sources: [PRACTICE],
    fix: 'Nothing. Direct radiation from a difference is uncertain with a low sun, and taken as 0 below 3 deg.',
  },
  'climate.series-split': {
    means: 'Only global radiation was measured, and a correlation split it into direct and diffuse.',
    rule: 'The clearer an interval, the less of its light is diffuse. Hour by hour this misses direct radiation by 70 to 100 W/m2; a year on a plane by 2 % towards the equator and 4 % on steep, east and west planes.',
    sources: [DECOMPOSITION.source],
    fix: 'Use a file with measured direct or diffuse radiation to narrow this.',
  },
  'climate.series-gaps-filled': {
    means: 'Missing radiation of the weather file was filled.',
    rule: 'Up to 2 h: straight lines of clearness and diffuse share. Up to 3 days: the mean of the same hours of the nearest whole days before and after, by the sun above the air. Longer gaps are refused.',
    sources: [GAP_LIMITS.source],
    fix: 'Nothing, when gaps are few. Otherwise use another year or another station.',
  },
  'climate.series-temperature-filled': {
    means: 'Missing air temperature of the weather file was filled.',
    rule: 'Straight lines up to 6 h, then the mean day of the month. A kelvin changes the energy by 0.3 to 0.4 %.',
    sources: [GAP_LIMITS.source],
    fix: 'Nothing, when gaps are few.',
  },
  'climate.series-snow-missing': {
    means: 'Some intervals of the weather file have no snow depth.',
    rule: 'Snow on modules is found from the rise of the snow depth; an interval without it starts no snowfall.',
    sources: [PRACTICE],
    fix: 'Nothing, when the gaps are few. Otherwise state losses.snow_pct by month.',
  },
  'climate.epw-radiation-doubtful': {
    means:
      'Some hours of the weather file have radiation that can hardly be: more diffuse than global, or more than the sun gives above the air.',
    rule: 'More than 5 % of the hours of daylight is worth a look, more than 20 % is refused. The limits are those for measured radiation; the shares are judgement.',
    sources: [RADIATION_LIMITS.source],
    fix: 'Compare with a file from another publisher. Direct and diffuse radiation are used as they stand.',
  },
  'climate.epw-far': {
    means: 'The weather file belongs to a place far from the house.',
    rule: 'Clouds and temperature change with distance, most of all at coasts and mountains; the sign of the longitude is a common slip too.',
    sources: [PRACTICE],
    fix: 'Take a file for a nearer place, or correct site.latitude_deg and site.longitude_deg (east is positive, the Americas are negative).',
  },
  'climate.epw-height': {
    means: 'The place of the weather file lies much higher or lower than the house.',
    rule: 'Air cools with height, and fog and snow change with it. Temperature can be corrected, sun and snow cannot.',
    sources: [LAPSE_RATE_SOURCE],
    fix: 'Check site.elevation_ft (feet, not metres), or take a file for a place of like height.',
  },
  'climate.epw-utc-offset': {
    means: 'The weather file and the project name different time zones.',
    rule: "The hours of a file can be read only with the clock they were written with, so the file's own is used for them.",
    sources: [PRACTICE],
    fix: 'State site.utc_offset_h as standard time, without daylight saving.',
  },
  'climate.epw-clock': {
    means: 'By the time zone of the weather file the sun would stand far from south at noon.',
    rule: 'Fifteen degrees of longitude are one hour. Time zones stray from that, but by no more than about two hours.',
    sources: [PRACTICE],
    fix: 'Check the sign of the longitude in the first line of the file: east is positive.',
  },
  'climate.epw-wind-missing': {
    means: 'Some or all hours of the weather file have no wind speed; gaps were filled as the message says.',
    rule: 'Wind cools modules, and cooler modules give more. A light wind is taken where none is known, which keeps the estimate on the low side.',
    sources: [PRACTICE],
    fix: 'Take a file with measured wind when the difference matters to you; it is small.',
  },
  'climate.epw-snow-missing': {
    means: 'Some hours of the weather file have no snow depth.',
    rule: 'Snow that lies on modules is found from the rise of the snow depth from day to day. Missing hours are bridged.',
    sources: [PRACTICE],
    fix: 'Nothing, when the gaps are few. Otherwise state losses.snow_pct by month.',
  },
  'climate.epw-snow-unknown': {
    means: 'The weather file has no usable snow depth, so no snow loss can be worked out from it.',
    rule: 'Many typical-year files carry no snow. Silence would be read as no snow, so it is said.',
    sources: [PRACTICE],
    fix: 'State site.monthly_snowfall_in with site.monthly_snow_events, or losses.snow_pct by month; zero is an answer too.',
  },
  'climate.fewer-sites': {
    means: 'Fewer climate sites than usual lie near the house.',
    rule: 'One site alone scatters against its neighbours; the mean of several near ones scatters less.',
    sources: [TYPICAL_YEAR_SOURCE],
    fix: 'Name an hourly weather file in site.climate, or take the estimate as less sure.',
  },
  'climate.design-site-far': {
    means: 'The site whose extreme temperatures are used lies far from the house.',
    rule: 'The lowest temperature sets the highest voltage of a string, the high one the ampacity of wires; both are local.',
    sources: [DESIGN_SOURCE],
    fix: 'State site.design_temperatures from the table that the authority accepts.',
  },
  'climate.design-height-unknown': {
    means: 'The height of the house is not stated, so the extreme temperatures could not be compared with it.',
    rule: 'A house above its climate site gets colder than the site, and its strings then reach a higher voltage.',
    sources: [LAPSE_RATE_SOURCE],
    fix: 'State site.elevation_ft; maps show it.',
  },
  'climate.design-site-height': {
    means: 'The site whose extreme temperatures are used lies much higher or lower than the house.',
    rule: 'The lowest temperature sets the highest voltage of a string, and cold air also collects in valleys, which no correction for height knows.',
    sources: [DESIGN_SOURCE, LAPSE_RATE_SOURCE],
    fix: 'State site.design_temperatures from the table that the authority accepts.',
  },
  'climate.extreme-low-estimated': {
    means: 'The record cold used for the voltage check is an estimate for this site.',
    rule: 'The code asks for the lowest expected ambient temperature; where the published table is not at hand it is estimated from other columns of the same site.',
    sources: [EXTREME_LOW_ESTIMATE_SOURCE],
    fix: 'State site.design_temperatures.extreme_low_c from the table that the authority accepts, or keep a margin in the number of modules of a string.',
  },
  'climate.high-2pct-estimated': {
    means: 'The summer temperature used for the ampacity of wires is an estimate for this site.',
    rule: 'Wires carry less in hot air. The correction is read at a temperature that is passed in 2 percent of the hours.',
    sources: [HIGH_2PCT_ESTIMATE_SOURCE],
    fix: 'State site.design_temperatures.high_2pct_c when the corrected ampacity is close to its limit.',
  },
  'climate.design-edition': {
    means: 'The extreme temperatures come from an older edition of the climate tables.',
    rule: 'Editions add years of measurements and move by tenths of a degree.',
    sources: [DESIGN_SOURCE],
    fix: 'State site.design_temperatures from the edition that the authority names, when a voltage or ampacity is close to its limit.',
  },
  'climate.sites-used': {
    means:
      'These are the built-in climate sites behind sun, temperature and wind, with their distance and height against the house.',
    rule: 'Whoever checks the estimate has to know where its weather comes from.',
    sources: [TYPICAL_YEAR_SOURCE],
    fix: 'Nothing. `gablewatt list-sites --near LAT,LON` shows the alternatives.',
  },
  'climate.site-far': {
    means: 'A climate site behind the estimate lies far from the house.',
    rule: 'Clouds change with distance, most of all at coasts and mountains.',
    sources: [TYPICAL_YEAR_SOURCE],
    fix: 'See whether the land between is alike, or set site.climate to { epw: FILE } with an hourly file for a nearer place.',
  },
  'climate.site-height': {
    means: 'A climate site behind the estimate lies much higher or lower than the house.',
    rule: 'Temperature is corrected for height; sun, fog and snow are not.',
    sources: [LAPSE_RATE_SOURCE],
    fix: 'Check site.elevation_ft, or use an hourly file for a place of like height.',
  },
  'climate.utc-offset': {
    means: 'The clock of the project differs from the clock of the nearest climate site.',
    rule: 'Hours are local standard time. An hour too many usually means that daylight saving was counted in.',
    sources: [TYPICAL_YEAR_SOURCE],
    fix: 'State site.utc_offset_h as standard time. Near the border of a time zone the project may be right.',
  },
  'climate.near-site-left-out': {
    means:
      'A climate site near the house is not in the estimate, because its sunshine sticks out against its neighbours.',
    rule: 'In the east and in Alaska single typical years scatter by 4 and 9 % whatever the distance, and a site that sticks out is mostly scatter. It may still be right, so the message gives both figures and the difference is in the uncertainty.',
    sources: [FLAGGED_SITE_SOURCE],
    fix: 'If you know the place to be as that site says, set site.climate to { station: NUMBER }; or name an hourly weather file.',
  },
  'climate.station-flagged': {
    means: 'A climate site behind the estimate failed a check of the built-in table.',
    rule: 'Sites that stick out against their neighbours, or whose columns contradict each other, are marked. In the west and on the islands a site that sticks out mostly tells of its place (fog coast, windward side, mountain) and is used; in the east and in Alaska it is mostly scatter of the model behind it, and nearby leaves it out.',
    sources: [FLAGGED_SITE_SOURCE],
    fix: 'Compare with a neighbour (site.climate: { station: NUMBER }) or with an hourly weather file for the place.',
  },
  'sites.none-found': {
    means: 'No built-in climate site fits the words of the search.',
    rule: 'Names are those of weather stations, often airports; each word must begin a word of the name.',
    sources: [TYPICAL_YEAR_SOURCE],
    fix: 'Try the beginning of the name alone, the state as two letters, or --near with latitude and longitude.',
  },
}
