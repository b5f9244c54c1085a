import { describe, expect, it } from 'vitest'
import { productionLimits, readProduction, reviewProduction, type ReviewValues } from '../../src/fieldwork/index.js'
import type { Production } from '../../src/project/index.js'
import type { Result } from '../../src/worksheet/index.js'
import { dayOf, drawKinds, model, project, run } from './synthetic.js'
import { stoppedMeters } from '../../src/fieldwork/review/signs/stopped-meters.js'
import { kindsOfDay } from '../../src/fieldwork/review/index.js'

const METERS: Production = { meter_columns: { 'Meter 1 (kWh)': 'east inverter', 'Meter 2 (kWh)': 'west inverter' } }
const FIRST = dayOf('2026-04-01')

/** Two meters that share what the system gives, seven to three; @param east What is left of the first on a day. */
function table(east: (at: number) => number, isCounter = false): string {
  const kinds = drawKinds(120, 0.29, 77)
  let [one, two] = [1000, 500]
  const rows = kinds.map((kind, at) => {
    const kwh = kindsOfDay(model, FIRST + at)[kind]!
    const own = [0.7 * kwh * east(at), 0.3 * kwh] as const
    one += own[0]
    two += own[1]
    const date = new Date((FIRST + at) * 86_400_000).toISOString().slice(0, 10)
    const cells = isCounter ? [one, two] : own
    return [date, ...cells.map((each) => each.toFixed(3))].join(',')
  })
  return `date,Meter 1 (kWh),Meter 2 (kWh)\n${rows.join('\n')}\n`
}
function review(text: string, mapping: Production = METERS): Result<ReviewValues> {
  const read = readProduction('p.csv', text, mapping, productionLimits(project, run))
  if (read.series === undefined) throw new Error(read.problems.map(({ message }) => message).join('\n'))
  return reviewProduction({ project, run, series: read.series })
}
const told = (text: string, mapping?: Production): string[] =>
  review(text, mapping).values.signs.map(({ kind, where, from, to }) => `${kind} ${where} ${from} ${to}`)

describe('two meters in one table', () => {
  it('make the system together, and show no sign while both work', () => {
    const { values } = review(table(() => 1))
    expect(values.signs).toEqual([])
    const sum = table(() => 1)
      .trim()
      .split('\n')
      .slice(1)
      .reduce((total, line) => total + Number(line.split(',')[1]) + Number(line.split(',')[2]), 0)
    expect(values.measured_kwh).toBeCloseTo(sum, 3)
  })
  it('an inverter that stops is named by its meter, once, with its days', () => {
    const stopped = table((at) => (at >= 40 && at < 60 ? 0 : 1))
    expect(told(stopped)).toEqual(['string_or_inverter meter east inverter 2026-05-11 2026-05-30'])
    const [sign] = review(stopped).values.signs
    const lost = drawKinds(120, 0.29, 77)
      .slice(40, 60)
      .reduce((sum, kind, at) => sum + 0.7 * kindsOfDay(model, FIRST + 40 + at)[kind]!, 0)
    expect(sign!.lost_kwh / lost).toBeCloseTo(1, 1)
    expect(sign!.probability).toBeGreaterThan(0.99)
  })
  it('so it is from two counters', () => {
    const stopped = table((at) => (at >= 40 && at < 60 ? 0 : 1), true)
    expect(told(stopped, { ...METERS, meter: 'cumulative' })).toEqual([
      'string_or_inverter meter east inverter 2026-05-11 2026-05-30',
    ])
  })
  it('one day is a sign that is not sure, and half of the output is no stop', () => {
    const [sign] = review(table((at) => (at === 50 ? 0 : 1))).values.signs
    expect([sign?.where, (sign?.probability ?? 1) < 0.99]).toEqual(['meter east inverter', true])
    expect(told(table((at) => (at === 50 ? 0.2 : 1)))).toEqual([])
  })
  it('a column that is not there is named', () => {
    expect(() =>
      review(
        table(() => 1),
        { meter_columns: { 'Meter 1 (kWh)': 'a', 'Meter 9 (kWh)': 'b' } },
      ),
    ).toThrow(/no column 'Meter 9 \(kWh\)' \(meter_columns\)/)
  })
  it('modules cannot be declared beside them', () => {
    expect(() =>
      review(
        table(() => 1),
        { ...METERS, module_columns: {} },
      ),
    ).toThrow(/cannot stand together/)
  })
  it('in a season of snow a stop may be snow on one roof', () => {
    const periods = Array.from({ length: 30 }, (_, day) => ({
      firstDay: day,
      days: 1,
      kwh: day < 20 ? 10 : 6,
      moduleKwh: [day < 20 ? 4 : 0, 6],
    }))
    const chance = (isSnowy: boolean): (number | undefined)[] =>
      stoppedMeters(['a', 'b'], periods, () => isSnowy).map(({ probability }) => probability)
    expect([chance(true), chance(false)]).toEqual([[0.7], [0.995]])
  })
})
