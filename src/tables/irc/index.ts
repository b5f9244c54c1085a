export { CARBON_MONOXIDE_ALARMS, SMOKE_ALARMS } from './alarms.js'
export { LATERAL_INCREASE_LIMIT_PCT, PRESCRIPTIVE_ROOF_DEAD_PSF } from './existing-lateral.js'
export {
  DEFLECTION_WIND_SHARE,
  GRAVITY_INCREASE_LIMIT_PCT,
  LEAST_SEAT_IN,
  RAFTER_DEFLECTION,
  RAISED_TIES,
  RIDGE_BOARD_FROM_RISE,
  ROOF_LIVE_LOAD,
  ROOF_LIVE_LOAD_PSF,
  ROOF_LIVE_STEPS,
} from './existing-roof.js'
export { RAFTER_SPANS_2021, type RafterSpanTable } from './rafter-spans.js'
