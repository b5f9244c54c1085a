import type { SimulatedFault } from './simulated-year.js'

/** Faults whose sizes the table of `npm run compare:faults` states. @param start First day of the fault, from 0. */
export function simulatedFaults(start: number): readonly (SimulatedFault & {
  readonly finds: readonly string[]
  readonly needs: 'day' | 'interval'
  readonly size: string
})[] {
  const from = (length: number, left: number) => (kwh: number, day: number) =>
    day >= start && day < start + length ? kwh * left : kwh
  const level = ['string_or_inverter', 'level_drop', 'low_level', 'module', 'snow']
  return [
    { kind: 'outage', size: 'whole system, 1 day', needs: 'day', finds: ['outage', 'snow'], left: from(1, 0) },
    { kind: 'outage', size: 'whole system, 12 days', needs: 'day', finds: ['outage', 'snow'], left: from(12, 0) },
    { kind: 'half', size: 'one of two inverters, 60 days', needs: 'day', finds: level, left: from(60, 0.5) },
    { kind: 'half', size: 'one of two inverters, 30 days', needs: 'day', finds: level, left: from(30, 0.5) },
    { kind: 'third', size: 'one of three strings, 90 days', needs: 'day', finds: level, left: from(90, 0.667) },
    { kind: 'third', size: 'one of three strings, 180 days', needs: 'day', finds: level, left: from(180, 0.667) },
    { kind: 'low', size: '75 % all the year', needs: 'day', finds: level, left: (kwh) => 0.75 * kwh },
    { kind: 'low', size: '70 % all the year', needs: 'day', finds: level, left: (kwh) => 0.7 * kwh },
    {
      kind: 'shade',
      size: 'trees take 60 % before 10 h, half a year',
      needs: 'interval',
      finds: ['shade'],
      left: (kwh, day, hour) => (hour < 10 && day >= start && day < start + 180 ? 0.4 * kwh : kwh),
    },
    {
      kind: 'soiling',
      size: '0.3 % a day for 90 days, washed off by rain',
      needs: 'day',
      finds: ['soiling'],
      left: (kwh, day) => (day >= start && day < start + 90 ? kwh * (1 - 0.003 * (day - start)) : kwh),
    },
    {
      kind: 'stop',
      size: '4 bright hours of one day',
      needs: 'interval',
      finds: ['outage'],
      left: (kwh, day, hour) => (day === start && hour > 10 && hour < 14 ? 0 : kwh),
    },
    {
      kind: 'trips',
      size: 'one hour of noon on 8 days',
      needs: 'interval',
      finds: ['trips'],
      left: (kwh, day, hour) => (day >= start && day < start + 40 && day % 5 === 0 && hour > 12 && hour < 13 ? 0 : kwh),
    },
    { kind: 'unit', size: 'kWh for Wh', needs: 'day', finds: ['unit'], left: (kwh) => kwh / 1000 },
  ]
}
