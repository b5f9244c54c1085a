import type { Project } from '../project/index.js'
import type { Worksheet } from '../worksheet/index.js'
import { SPREAD_SOURCE } from './clipping-within-hour.js'
import type { SystemAc } from './system-ac.js'

/** Less does not show in a printed kWh. */
const LEAST_KWH = 0.05

/** Writes down what clouds within the hour take at the limits of the inverters. */
export function recordWithinHour({ model }: Project, { withinHourKwh }: SystemAc, worksheet: Worksheet): void {
  if (withinHourKwh < LEAST_KWH) return
  worksheet.step({
    id: 'yield.clipping-within-hour',
    says: 'Energy that inverters cut off because clouds come and go within the hour, on top of what means of the hour lose',
    formula: 'E = s phi(x) + (P - L) Phi(x) less the greater of 0 and P - L, x = (P - L) / s, summed over the year',
    inputs: [{ symbol: 's', value: 'spread of light on the plane, scaled to power', unit: 'W', from: 'source' }],
    result: { symbol: 'E', value: withinHourKwh, unit: 'kWh' },
    source: SPREAD_SOURCE,
  })
  if (model?.clipping_within_hour !== undefined) return
  worksheet.assume({
    path: 'model.clipping_within_hour',
    value: 'published_spread',
    unit: '',
    why: `means of an hour hide the peaks that an inverter cuts off; this takes ${withinHourKwh.toFixed(1)} kWh a year`,
    source: SPREAD_SOURCE,
  })
}
