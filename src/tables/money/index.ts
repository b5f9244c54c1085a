export { HOLIDAYS, type HolidayName, type HolidayRule } from './holidays.js'
export { LOAD_SHAPES, type LoadShape, type LoadShapeName } from './load-shapes.js'
export { PRICE_INDEX, PRICE_INDEX_FIRST_YEAR, PRICE_INDEX_SOURCE, type CensusDivision } from './price-index.js'
export {
  DEFAULT_RATES,
  HIGH_ESCALATION_PCT,
  PLAUSIBLE_USD_PER_W,
  SHOWN_DISCOUNT_PCT,
  SHOWN_ESCALATION_PCT,
  type PublishedRate,
} from './rates.js'
export { NO_RUNNING_COSTS, TYPICAL_RUNNING_COSTS } from './running-costs.js'
export { HOUSE_USE } from './house-use.js'
export {
  ELECTRIC_COMMODITIES,
  ENERGY_KINDS,
  ESPI_SOURCE,
  HOUSE_POWERS,
  INTERVAL_KIND,
  OTHER_KINDS,
  PLAIN_QUALIFIERS,
  REGISTER_KINDS,
  UNSTATED_KINDS,
} from './espi-kinds.js'
