import { describe, expect, it } from 'vitest'
import { daysWithoutOutput } from '../../src/fieldwork/review/signs/no-output.js'
import { performanceOf } from '../../src/fieldwork/review/performance.js'

const kindsKwh = [4, 6, 10, 14, 18, 22, 26, 30, 34, 40]
const day = (at: number, kwh: number) => ({ day: 20_000 + at, kwh, kindsKwh, expectedKwh: 20.4, modelled: undefined })

describe('days without output', () => {
  it('what a meter counts beside an inverter that is off is none; a tenth of a clear day is some', () => {
    expect(daysWithoutOutput([day(0, 20), day(1, 0.1), day(2, -0.05), day(3, 4)], undefined)).toMatchObject([
      { kind: 'outage', fromDay: 20_001, toDay: 20_002, lostKwh: 40.8 },
    ])
    expect(daysWithoutOutput([day(0, 20), day(1, 0.3), day(2, 4)], undefined)).toEqual([])
  })
  it('in a month of snow it may be snow, and is no sure outage', () => {
    // 2024-10-04 and the days after it.
    const snowIn = [20, 15, 10, 3, 0, 0, 0, 0, 0, 20, 20, 20]
    expect(daysWithoutOutput([day(0, 0), day(1, 0)], snowIn)).toMatchObject([{ kind: 'snow', toDay: 20_001 }])
  })
})

it('present output: the interval widens with slow weather, and a mended system is never below the present', () => {
  const days = Array.from({ length: 60 }, (_, at) => day(at, 10))
  const collected = { signs: [], hints: [], ageing: undefined, presentDays: days, presentLevel: 0.5, mendedLevel: 1 }
  const narrow = performanceOf(collected, 1, 0.29, { method: 0.05, slowWeather: 0 })
  const wide = performanceOf(collected, 1, 0.29, { method: 0.05, slowWeather: 0.04 })
  expect(narrow).toMatchObject({ present: 0.5, mended: 1, values: { performance_pct: 50 } })
  expect(wide.values.performance_low_pct).toBeLessThan(narrow.values.performance_low_pct)
  expect(performanceOf({ ...collected, mendedLevel: 0.4 }, 1, 0.29, { method: 0, slowWeather: 0 }).mended).toBe(0.5)
})
