import { FAHRENHEIT_PER_KELVIN, MM_PER_INCH, SECONDS_PER_HOUR } from '../../values/index.js'

/** A unit as the product counts: value = file x factor + offset. */
export interface UnitRule {
  readonly factor: number
  readonly offset: number
  /** Whether it is the energy of an interval and not a mean power. */
  readonly isEnergy: boolean
}

const power = (factor: number, offset = 0): UnitRule => ({ factor, offset, isEnergy: false })
const energy = (factor: number): UnitRule => ({ factor, offset: 0, isEnergy: true })

/** 0 deg C, K (exact by definition). */
const ZERO_CELSIUS_K = 273.15
const FREEZING_F = 32
const METRES_PER_MILE = 1609.344
const METRES_PER_NAUTICAL_MILE = 1852
const JOULES_PER_WH = SECONDS_PER_HOUR

/** Units of a station's columns: to W/m2 or Wh/m2, deg C, m/s, cm. Exact by definition of the units. */
export const UNITS = {
  w_m2: power(1),
  wh_m2: energy(1),
  kwh_m2: energy(1000),
  kj_m2: energy(1000 / JOULES_PER_WH),
  mj_m2: energy(1e6 / JOULES_PER_WH),
  c: power(1),
  f: power(1 / FAHRENHEIT_PER_KELVIN, -FREEZING_F / FAHRENHEIT_PER_KELVIN),
  k: power(1, -ZERO_CELSIUS_K),
  m_s: power(1),
  km_h: power(1000 / SECONDS_PER_HOUR),
  mi_h: power(METRES_PER_MILE / SECONDS_PER_HOUR),
  kn: power(METRES_PER_NAUTICAL_MILE / SECONDS_PER_HOUR),
  cm: power(1),
  mm: power(0.1),
  in: power(MM_PER_INCH / 10),
} as const satisfies Record<string, UnitRule>

export type UnitName = keyof typeof UNITS
