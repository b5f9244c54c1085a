import type { NewLoad } from '../../project/index.js'
import { LOAD_SHAPES } from '../../tables/money/index.js'
import { StageError } from '../../worksheet/index.js'
import { HOURS_PER_YEAR, type BillingCalendar } from '../calendar/index.js'
import { microKwh, splitMicroKwh } from '../exact/index.js'
import { spreadMonths, spreadYear } from './shape-hours.js'
import { FAHRENHEIT_PER_KELVIN, type Celsius, type Fahrenheit } from '../../values/index.js'

/** Shapes that are rules; a built-in profile has its own name. */
const RULES = ['ev_timed', 'ev_unmanaged', 'heat_pump', 'even'] as const
type Rule = (typeof RULES)[number]

/** Clock hour at which a car is plugged in that nobody told to wait. @source our rule; shapes by rule, no source */
const HOME_FROM_HOUR = 18

/** What the shape of a load follows from. */
export interface LoadContext {
  readonly calendar: BillingCalendar
  /** Outdoor temperature of the 8760 hours, deg C; for heat pumps. */
  readonly outdoorC: () => Float64Array
}

/**
 * Hours of a whole year of a load, kWh, adding up exactly to what it takes in a year.
 *
 * @param where Its path in the project.
 * @throws StageError for a shape that is not known, or values that do not belong to it.
 */
export function loadHours(load: NewLoad, where: string, { calendar, outdoorC }: LoadContext): Float64Array {
  const rule = RULES.find((one) => one === load.shape)
  refuseOthers(load, rule, where)
  if (rule === undefined) {
    const shape = Object.values(LOAD_SHAPES).find(({ name }) => name === load.shape)
    if (shape === undefined) {
      throw new StageError(
        `${where}.shape`,
        `there is no load shape '${load.shape}'; known: ${[...RULES, ...Object.values(LOAD_SHAPES).map(({ name }) => name)].join(', ')}`,
        'Name one of them.',
      )
    }
    return spreadMonths(spreadYear(load.kwh_per_year, shape), shape, calendar)
  }
  if (rule === 'heat_pump') return scaled(load, heatPumpWeights(load, where, outdoorC()))
  if (rule === 'even') return scaled(load, Array.from<number>({ length: HOURS_PER_YEAR }).fill(1))
  return scaled(load, chargingWeights(load, rule === 'ev_timed' ? 0 : HOME_FROM_HOUR, where, calendar))
}

/** Nothing that is stated may count for nothing. */
function refuseOthers({ kw, heat_pump: pump, shape }: NewLoad, rule: Rule | undefined, where: string): void {
  const isCar = rule === 'ev_timed' || rule === 'ev_unmanaged'
  const needs = (key: string, has: boolean, belongs: boolean, fix: string): void => {
    if (has === belongs) return
    const message = belongs ? `the shape ${shape} needs ${key}` : `${key} does not belong to the shape ${shape}`
    throw new StageError(`${where}.${key}`, message, belongs ? fix : `Take ${key} out, or correct the shape.`)
  }
  needs('kw', kw !== undefined, isCar, 'State the power of the charger, kW, from its label.')
  needs(
    'heat_pump',
    pump !== undefined,
    rule === 'heat_pump',
    'State balance_f and two points of cop from the data sheet.',
  )
}

function scaled(load: NewLoad, weights: readonly number[]): Float64Array {
  return Float64Array.from(splitMicroKwh(microKwh(load.kwh_per_year), weights), (micro) => micro / 1e6)
}

/** The same energy each day, at full power from an hour of the clock on until it is done. */
function chargingWeights(
  { kw = 0, kwh_per_year: kwh }: NewLoad,
  from: number,
  where: string,
  calendar: BillingCalendar,
): number[] {
  const daily = kwh / 365
  if (daily > 24 * kw) {
    throw new StageError(
      `${where}.kw`,
      `${String(kwh)} kWh a year are ${daily.toFixed(1)} kWh a day, more than ${String(kw)} kW give in 24 hours`,
      'Check kwh_per_year and kw.',
    )
  }
  return Array.from({ length: HOURS_PER_YEAR }, (_, h) => {
    const since = ((calendar.clockHour[h] ?? 0) - from + 24) % 24
    return Math.min(kw, Math.max(0, daily - since * kw))
  })
}

const fahrenheitOf = (c: Celsius): Fahrenheit => 32 + c * FAHRENHEIT_PER_KELVIN

/** Heat that is wanted over the coefficient of performance. @source degree hours with a COP linear in the outdoor temperature */
function heatPumpWeights({ heat_pump: pump }: NewLoad, where: string, outdoorC: Float64Array): number[] {
  const [first, second] = pump?.cop ?? []
  if (pump === undefined || first === undefined || second === undefined || first.outdoor_f === second.outdoor_f) {
    throw new StageError(`${where}.heat_pump.cop`, 'the two points have one temperature', 'State two different ones.')
  }
  const slope = (second.cop - first.cop) / (second.outdoor_f - first.outdoor_f)
  const weights = Array.from(outdoorC, (c) => {
    const f = fahrenheitOf(c)
    return Math.max(0, pump.balance_f - f) / Math.max(1, first.cop + slope * (f - first.outdoor_f))
  })
  if (weights.every((weight) => weight === 0)) {
    throw new StageError(
      `${where}.heat_pump.balance_f`,
      `no hour of the climate is below ${String(pump.balance_f)} deg F, so there is nothing to heat`,
      'Check balance_f and the site.',
    )
  }
  return weights
}
