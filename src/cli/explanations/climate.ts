import {
  DAY_SHAPE_SOURCE,
  DESIGN_SOURCE,
  EXTREME_LOW_ESTIMATE_SOURCE,
  FLAGGED_SITE_SOURCE,
  HIGH_2PCT_ESTIMATE_SOURCE,
  LAPSE_RATE_SOURCE,
  RADIATION_LIMITS,
  SITING_SOURCE,
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
    fix: 'See that each row is stamped with the end of its hour in local standard time, and check longitude (east positive) and time zone in the first line of the file.',
  },
  'climate.closure-poor': {
    means:
      'Direct and diffuse radiation of the weather file do not add up to its global radiation, whatever the clock.',
    rule: 'The three radiations of one moment are tied by geometry. When they disagree, at least one of them is wrong, and the energy estimate inherits the error.',
    sources: [PRACTICE],
    fix: 'Use a file whose radiations come from one instrument or one model. Direct and diffuse are the two that count here.',
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
    rule: 'In the east single typical years scatter by 4 % whatever the distance, and a site that sticks out is mostly scatter. It may still be right, so the message gives both figures and the difference is in the uncertainty.',
    sources: [FLAGGED_SITE_SOURCE],
    fix: 'If you know the place to be as that site says, set site.climate to { station: NUMBER }; or name an hourly weather file.',
  },
  'climate.station-flagged': {
    means: 'A climate site behind the estimate failed a check of the built-in table.',
    rule: 'Sites that stick out against their neighbours, or whose columns contradict each other, are marked. In the west, in Alaska and on the islands a site that sticks out mostly tells of its place (fog coast, windward side, mountain) and is used; in the east it is mostly scatter of the model behind it, and nearby leaves it out.',
    sources: [FLAGGED_SITE_SOURCE],
    fix: 'Compare with a neighbour (site.climate: { station: NUMBER }) or with an hourly weather file for the place.',
  },
  'climate.site-clock-wrong': {
    means: 'The hours of a typical year stand beside the sun, so it cannot say when in the day the sun comes.',
    rule: 'Direct, diffuse and global radiation of one hour are tied by geometry; where they fit only with the stamps moved, the clock is wrong. Monthly sums do not suffer from it, the split into morning and afternoon does.',
    sources: [DAY_SHAPE_SOURCE],
    fix: 'Nothing while other sites are used. Otherwise expect east and west roofs to differ more than the estimate says, or use an hourly weather file.',
  },
  'climate.polar': {
    means: 'The house lies where the sun stays down, or up, for part of the year.',
    rule: 'Months without sun count as nothing. In months between polar night and day one mean day stands badly for the others, and the correlations of the monthly method were made for days that end.',
    sources: [DAY_SHAPE_SOURCE],
    fix: 'Use an hourly weather file for the place.',
  },
  'climate.sides-of-island': {
    means: 'The climate sites about the house lie on dull and on bright sides of an island.',
    rule: 'Trade winds rain out on the windward side; a few km further the sky is clear. A weighted mean lies between and may be of neither place.',
    sources: [SITING_SOURCE],
    fix: 'Name the site on the side of the house as site.climate: { station: NUMBER }, or use an hourly weather file.',
  },
  'climate.fog-coast': {
    means: 'The house lies near the Pacific coast with no climate site close by.',
    rule: 'Fog and low cloud end within a few km of the water. Up to 20 km from a site the year is known to 2.0 %, from 20 to 50 km to 4.8 %.',
    sources: [SITING_SOURCE],
    fix: 'Name a site that lies as the house does as site.climate: { station: NUMBER }, or use an hourly weather file.',
  },
  'sites.none-found': {
    means: 'No built-in climate site fits the words of the search.',
    rule: 'Names are those of weather stations, often airports; each word must begin a word of the name.',
    sources: [TYPICAL_YEAR_SOURCE],
    fix: 'Try the beginning of the name alone, the state as two letters, or --near with latitude and longitude.',
  },
}
