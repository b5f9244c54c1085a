/** Endings of keys and the unit that they stand for; longer endings first. */
const UNITS: readonly (readonly [ending: string, unit: string])[] = [
  ['_pct_per_year', '% per year'],
  ['_pct_per_full_cycle', '% per full cycle'],
  ['_pct_per_c', '% per deg C'],
  ['_v_per_c', 'V per deg C'],
  ['_usd_per_kwh', 'USD per kWh'],
  ['_usd_per_month', 'USD per month'],
  ['_usd_per_year', 'USD per year'],
  ['_usd_per_hour', 'USD per h'],
  ['_usd_per_day', 'USD per day'],
  ['_kwh_per_month', 'kWh per month'],
  ['_kwh_per_day', 'kWh per day'],
  ['_ohm_per_kft', 'ohm per 1000 ft'],
  ['_lb_per_ft', 'lb per ft'],
  ['_lb_per_in', 'lb per in'],
  ['_lb_in', 'lb-in'],
  ['_usd_per_w', 'USD per W'],
  ['_usd_per_unit', 'USD per unit'],
  ['_usd_per_ft', 'USD per ft'],
  ['_w_m2', 'W/m2'],
  ['_in_12', 'in per 12 in'],
  ['_years', 'years'],
  ['_ft2', 'sq ft'],
  ['_in2', 'in2'],
  ['_in3', 'in3'],
  ['_in4', 'in4'],
  ['_ksi', 'ksi'],
  ['_hz', 'Hz'],
  ['_kwh', 'kWh'],
  ['_mwh', 'MWh'],
  ['_mph', 'mph'],
  ['_psf', 'psf'],
  ['_psi', 'psi'],
  ['_lb_in', 'lb-in'],
  ['_mohm', 'Mohm'],
  ['_ohm', 'ohm'],
  ['_lbf', 'lbf'],
  ['_sqft', 'sq ft'],
  ['_usd', 'USD'],
  ['_deg', 'deg'],
  ['_pct', '%'],
  ['_ft', 'ft'],
  ['_in', 'in'],
  ['_kw', 'kW'],
  ['_kva', 'kVA'],
  ['_va', 'VA'],
  ['_lb', 'lb'],
  ['_c', 'deg C'],
  ['_w', 'W'],
  ['_v', 'V'],
  ['_a', 'A'],
  ['_h', 'h'],
]

/** The unit that a key's ending states, or '' for a pure number or a name. The key of a list speaks for its entries. */
export function unitOfPath(segments: readonly (string | number)[]): string {
  const key = segments.findLast((segment) => typeof segment === 'string') ?? ''
  return UNITS.find(([ending]) => key.endsWith(ending))?.[1] ?? ''
}

/** A number with its unit. */
export function withUnit(value: number | string, unit: string): string {
  return unit === '' ? String(value) : `${value} ${unit}`
}
