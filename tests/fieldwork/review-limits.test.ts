import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { ProductionSeries, Span } from '../../src/fieldwork/production/index.js'
import { readProduction } from '../../src/fieldwork/index.js'
import { findSigns, judgeSum, type SignRequest } from '../../src/fieldwork/review/find-signs.js'
import { countDays } from '../../src/fieldwork/review/count-days.js'
import type { ModuleReview } from '../../src/fieldwork/review/review-values.js'
import { flatTop } from '../../src/fieldwork/review/signs/clipping.js'
import { measuredClockShift } from '../../src/fieldwork/review/signs/clock-shift.js'
import { reviewModules } from '../../src/fieldwork/review/signs/modules.js'
import { median, soilingTrend } from '../../src/fieldwork/review/signs/soiling.js'
import { weatherOfDays } from '../../src/fieldwork/review/weather-of-days.js'
import { monthAround, yearAround } from '../../src/fieldwork/review/project-rest.js'
import { productionLimits } from '../../src/fieldwork/review/system-limits.js'
import { ratedAcKw } from '../../src/roof/index.js'
import { Worksheet, type Finding } from '../../src/worksheet/index.js'
import { microHouse, stringHouse } from '../drawings/demo-packet.js'
import { dayOf, model, project, run } from './synthetic.js'

const HOUR = 3_600_000
const DAY = 24 * HOUR
const place = { latitudeDeg: 38.75, longitudeDeg: -90, utcOffsetH: -6 }

function series(
  spans: readonly Partial<Span>[],
  resolution: ProductionSeries['resolution'] = 'interval',
): ProductionSeries {
  return {
    resolution,
    stepMin: 60,
    unit: 'kwh',
    meter: 'interval',
    clock: 'standard',
    spans: spans.map((span, line) => ({ startMs: 0, endMs: HOUR, kwh: 0, moduleKwh: [], line, ...span })),
    moduleIds: [],
    findings: [],
    taken: [],
  }
}

/** Readings of equal length through days, by the power in kW at a clock hour. */
const days = (count: number, kwAt: (hour: number, day: number) => number, stepH = 1): Span[] =>
  Array.from({ length: count * (24 / stepH) }, (_, at) => {
    const startMs = dayOf('2026-06-01') * DAY + at * stepH * HOUR
    const hour = (at * stepH) % 24
    return {
      startMs,
      endMs: startMs + stepH * HOUR,
      kwh: stepH * kwAt(hour, Math.floor((at * stepH) / 24)),
      moduleKwh: [],
      line: at,
    }
  })

describe('the verdict of the measured sum', () => {
  const judged = (
    percentile: number,
    weather: number | null = null,
    resolution: 'day' | 'month' = 'day',
  ): readonly Finding[] => {
    const worksheet = new Worksheet()
    judgeSum(
      {
        file: { resolution, interval_min: null, unit: 'kwh', meter: 'interval', clock: 'standard' },
        percentile,
        percentile_of_weather: weather,
        measured_kwh: 402,
        measured_over_expected: 0.804,
        expected: {
          mean_kwh: 500,
          p10_kwh: 440,
          p90_kwh: 560,
          weather_p10_kwh: 450,
          weather_p90_kwh: 550,
          method_uncertainty_pct: 4,
          slow_weather_pct: 3,
        },
      },
      worksheet,
    )
    return worksheet.result({}).findings
  }
  const idsOf = (findings: readonly Finding[]): string[] => findings.map(({ id }) => id)

  test('low below percentile 10, hardly luck below 2.5, high above 97.5', () => {
    expect(idsOf(judged(9.99))).toEqual(['output.below-range'])
    expect(judged(10)).toEqual([])
    expect(judged(97.5)).toEqual([])
    expect(idsOf(judged(97.51))).toEqual(['output.above-range'])
    const [low, lower] = [judged(2.5)[0], judged(2.49)[0]]
    expect(low?.fix).toBe(
      'one good system in ten is here by luck: compare again when more days are in, best with the weather of these days (--weather)',
    )
    expect(lower?.fix).toBe('so little is hardly luck: check inverter lights, breakers, error messages and new shade')
    expect([low?.severity, judged(98)[0]?.severity]).toEqual(['warning', 'note'])
  })

  test('low for the weather, within the method: a note', () => {
    expect(idsOf(judged(12, 9.99))).toEqual(['output.low-for-the-weather'])
    expect(judged(12, 10)).toEqual([])
    expect(idsOf(judged(9, 1))).toEqual(['output.below-range'])
    expect(judged(12, 3)[0]).toMatchObject({
      severity: 'note',
      message:
        '402 kWh is 80 % of what is expected: low for weather luck alone (percentile 3.0), but within what is known of the method (percentile 12.0)',
    })
  })

  test('says how much, of what, and where it lies', () => {
    expect(judged(3)[0]?.message).toBe(
      '402 kWh is 80 % of what is expected, below the range of 80 % of cases (440 to 560 kWh): percentile 3.0',
    )
    expect(judged(99)[0]).toMatchObject({
      message:
        '402 kWh is 80 % of what is expected, more than nearly any weather gives (440 to 560 kWh): percentile 99.0',
      fix: 'be glad, or check the scale of the meter and the number of modules in the project file',
    })
  })

  test('of months: whole ones only', () => {
    expect(judged(1, null, 'month')[0]?.fix).toContain(
      '; leave out a month in which the system was switched on or not read to its end',
    )
    expect(judged(1)[0]?.fix).not.toContain('leave out a month')
  })
})

describe('a flat top', () => {
  const top = (spans: readonly Span[]) => flatTop(series(spans))

  test('four readings and an hour and a half on two days, not less', () => {
    const held = (hours: number, count: number, stepH: number) =>
      top(
        days(
          5,
          (hour, day) => (day < count && hour >= 10 && hour < 10 + hours ? 3.5 : hour > 6 && hour < 18 ? 1 : 0),
          stepH,
        ),
      )
    expect(held(4, 2, 1)).toEqual({ levelKw: 3.5, days: 2, hours: 8 })
    expect(held(3, 2, 1)).toBeUndefined()
    expect(held(4, 1, 1)).toBeUndefined()
    expect(held(1.5, 2, 0.25)).toEqual({ levelKw: 3.5, days: 2, hours: 3 })
    expect(held(1.25, 2, 0.25)).toBeUndefined()
  })

  test('within 0.3 % of the level, which is the third highest reading', () => {
    const wavy = (share: number) =>
      top(days(3, (hour) => (hour >= 9 && hour < 15 ? 4 * (hour % 2 === 0 ? 1 : 1 - share) : 0)))
    expect(wavy(0.0029)?.levelKw).toBe(4)
    expect(wavy(0.0031)).toBeUndefined()
    // One reading that sticks out does not raise the level, nor is it part of the top.
    const spiked = top(days(3, (hour, day) => (hour >= 9 && hour < 15 ? (hour === 9 && day === 0 ? 5 : 4) : 0)))
    expect(spiked).toEqual({ levelKw: 4, days: 3, hours: 17 })
  })

  test('of nothing, of days, and over a midnight there is none', () => {
    expect(top(days(3, () => 0))).toBeUndefined()
    expect(
      flatTop(
        series(
          days(4, () => 4),
          'day',
        ),
      ),
    ).toBeUndefined()
    const night = top(days(3, (hour) => (hour >= 22 || hour < 2 ? 4 : 1)))
    expect(night).toBeUndefined()
  })
})

describe('dirt', () => {
  /** A clear day each week, by its ratio. */
  const weekly = (ratios: readonly number[]) =>
    ratios.map((ratio, week) => ({ day: 20_000 + 7 * week, kwh: 10 * ratio, ratio }))
  const falling = (weeks: number, by: number) => weekly(Array.from({ length: weeks }, (_, week) => 1 - by * week))

  test('a fall over at least six weeks, of at least 5 %, that is no chance', () => {
    expect(soilingTrend(falling(5, 0.05))).toBeUndefined()
    const trend = soilingTrend(falling(6, 0.02))
    // Slope 0.02 a week at the level 0.95 of the middle; 15 pairs all fall: score -15 of a spread sqrt(6 x 5 x 17 / 18).
    expect(trend?.weeks).toBe(6)
    expect(trend?.lossPerWeek).toBeCloseTo(0.02 / 0.95, 9)
    expect(trend?.lossOverall).toBeCloseTo(0.1 / 0.95, 9)
    const z = (15 - 1) / Math.sqrt((6 * 5 * 17) / 18)
    expect(trend?.chance).toBeCloseTo(0.5 * (1 - erf(z / Math.SQRT2)), 4)
    // 8 weeks of 0.7 % are 4.9 % of the level over 7 weeks; of 0.8 % more than 5 %.
    expect(soilingTrend(falling(8, 0.0068))).toBeUndefined()
    expect(soilingTrend(falling(8, 0.0071))).toBeDefined()
    // A fall that half of the weeks contradict may be chance.
    expect(soilingTrend(weekly([1, 0.8, 0.95, 0.75, 0.97, 0.72, 0.98]))).toBeUndefined()
    expect(soilingTrend(falling(8, -0.02))).toBeUndefined()
  })

  test('of each week the best day counts', () => {
    const clouds = falling(8, 0.02).flatMap((day) =>
      [{ ...day, day: day.day + 3, ratio: 0.1 }, day].toSorted((a, b) => a.day - b.day),
    )
    expect(soilingTrend(clouds)?.lossOverall).toBeCloseTo(soilingTrend(falling(8, 0.02))?.lossOverall ?? 0, 9)
  })

  test('median of odd and even numbers', () => {
    expect([median([3, 1, 2]), median([4, 1, 2, 3]), median([])]).toEqual([2, 2.5, 0])
  })
})

/** @source Abramowitz & Stegun 7.1.26 */
function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * x)
  const sum =
    0.254829592 * t - 0.284496736 * t ** 2 + 1.421413741 * t ** 3 - 1.453152027 * t ** 4 + 1.061405429 * t ** 5
  return 1 - sum * Math.exp(-(x ** 2))
}

describe('modules beside their neighbours', () => {
  const expected = ['a', 'b', 'c', 'd', 'e'].map((id, at) => ({ id, ac_kwh: 400 + 10 * at }))
  const review = (count: number, share: (module: number, day: number) => number | undefined) =>
    reviewModules(
      expected.map(({ id }) => id),
      Array.from({ length: count }, (_, day) => ({
        firstDay: dayOf('2026-06-01') + day,
        days: 1,
        kwh: 1,
        moduleKwh: expected.map(({ ac_kwh: kwh }, at) => {
          const part = share(at, day)
          return part === undefined ? undefined : (kwh / 365) * part
        }),
      })),
      expected as never,
    )

  test('dead after three days in a row below a tenth, up to the end', () => {
    const dead = (days: number, value = 0.09, from = 10 - days, to = 10) =>
      review(10, (module, day) => (module === 1 && day >= from && day < to ? value : 1))[1]?.dead_since
    expect(dead(3)).toBe('2026-06-08')
    expect(dead(2)).toBeNull()
    expect(dead(5, 0.11)).toBeNull()
    expect(dead(5, 0.09, 3, 8)).toBeNull()
  })

  test('days without a reading of it neither end nor count', () => {
    const found = review(10, (module, day) => (module === 1 && day >= 5 ? (day === 7 ? undefined : 0) : 1))[1]
    expect(found?.dead_since).toBe('2026-06-06')
    const none = review(10, (module, day) => (module === 1 && day >= 7 ? (day === 8 ? undefined : 0) : 1))[1]
    expect(none?.dead_since).toBeNull()
  })

  test('each against what its place gives, relative to the middle one', () => {
    const found = review(4, (module) => (module === 2 ? 0.8 : 1))
    expect(found.map(({ relative_pct: share }) => Math.round(share * 1000) / 1000)).toEqual([100, 100, 80, 100, 100])
    expect(found[2]?.measured_kwh).toBeCloseTo((4 * 420 * 0.8) / 365, 9)
  })

  test('weak below 85 %; what is dead is not called weak', () => {
    const told = (modules: readonly Partial<ModuleReview>[]): string[] => {
      const worksheet = new Worksheet()
      findSigns(
        request({
          modules: modules.map((each) => ({ id: 'm', measured_kwh: 1, relative_pct: 100, dead_since: null, ...each })),
        }),
        worksheet,
      )
      return worksheet.result({}).findings.map(({ id, severity, message }) => `${severity} ${id} ${message}`)
    }
    expect(told([{ relative_pct: 85 }])).toEqual([])
    expect(told([{ relative_pct: 84.9 }])).toEqual([
      'warning output.module-weak module m gives 85 % of what its place should give beside its neighbours',
    ])
    expect(told([{ relative_pct: 20, dead_since: '2026-06-08' }])).toEqual([
      'warning output.module-dead module m has given nothing since 2026-06-08 while its neighbours work',
    ])
  })
})

function request(change: Partial<SignRequest>): SignRequest {
  return {
    series: series([]),
    counted: { periods: [], missing: [], leftOutKwh: 0 },
    observed: [],
    model,
    place,
    modules: [],
    ratedAcKw: 6,
    ...change,
  }
}
const told = (change: Partial<SignRequest>): readonly Finding[] => {
  const worksheet = new Worksheet()
  findSigns(request(change), worksheet)
  return worksheet.result({}).findings
}

describe('what the signs say', () => {
  test('missing days in runs, at most five of them', () => {
    const first = dayOf('2026-06-01')
    const missing = (list: readonly number[], leftOutKwh = 0) =>
      told({ counted: { periods: [], missing: list.map((day) => first + day), leftOutKwh } })[0]
    expect(missing([])).toBeUndefined()
    expect(missing([0])?.message).toBe('1 day without complete readings: 2026-06-01')
    expect(missing([0, 1, 2, 5], 2.2)?.message).toBe(
      '4 days without complete readings: 2026-06-01 to 2026-06-03, 2026-06-06; 2.2 kWh read on such days are left out',
    )
    expect(missing([0, 2, 4, 6, 8])?.message.endsWith('2026-06-09')).toBe(true)
    expect(missing([0, 2, 4, 6, 8, 10])?.message.endsWith('2026-06-09 ...')).toBe(true)
    expect(missing([0])?.severity).toBe('note')
  })

  test('a limit below 90 % of the inverters is a warning, at them a note', () => {
    const at = (ratedKw: number) =>
      told({ series: series(days(2, (hour) => (hour >= 9 && hour < 15 ? 4 : 0))), ratedAcKw: ratedKw })[0]
    expect([at(4.45)?.severity, at(4.44)?.severity]).toEqual(['warning', 'note'])
    expect(at(4.45)?.message).toBe(
      'the power stays at 4.00 kW for 12.0 h on 2 days; the inverters are rated 4.45 kW together',
    )
    expect(at(4.45)?.fix).toBe('ask the installer or utility for an export or power limit that is set below the rating')
    expect(at(4)?.fix).toBe('this is the limit of the inverters, as designed; the estimate counts it in')
  })

  test('dirt with its loss a week and over all weeks', () => {
    const observed = Array.from({ length: 8 }, (_, week) => ({
      day: 20_000 + 7 * week,
      kwh: 1,
      ratio: 1 - 0.02 * week,
    }))
    const [found] = told({ observed })
    // 0.02 of the level 0.93, 7 weeks.
    expect(found?.message).toMatch(
      /^what the clearest day of each week gives falls by 2\.2 % a week, 15 % over 8 weeks \(chance without a trend: 0\.0 %\)$/u,
    )
    expect([found?.severity, found?.id]).toEqual(['warning', 'output.dirt'])
  })
})

describe('the clock', () => {
  const noonH = 12 + 90 / 15 - 6
  /** Days whose power lies evenly round an hour of the clock; where the sun stands the model decides. */
  const around = (hours: number, count: number) => {
    const spans = days(count, (hour) => (hour >= 6 && hour < 18 ? 1 : 0), 0.25).map((span) => ({
      ...span,
      startMs: span.startMs + hours * HOUR,
      endMs: span.endMs + hours * HOUR,
    }))
    const observed = Array.from({ length: count }, (_, day) => ({ day: dayOf('2026-06-01') + day, kwh: 12, ratio: 1 }))
    return measuredClockShift(
      series(spans),
      observed,
      { ...model, centreSolarH: model.centreSolarH.map(() => 12) },
      place,
    )
  }

  test('as far as the middle of the day lies from noon by the sun; five clear days at least', () => {
    expect(noonH).toBe(12)
    // The equation of time is under 3 minutes in the first half of June.
    expect(Math.abs(around(0, 10)?.shiftH ?? 1)).toBeLessThan(0.06)
    expect((around(1, 10)?.shiftH ?? 0) - (around(0, 10)?.shiftH ?? 0)).toBeCloseTo(1, 6)
    expect(around(1, 5)?.days).toBe(5)
    expect(around(1, 4)).toBeUndefined()
    expect(around(0, 40)?.days).toBe(10)
  })

  test('half an hour is told, less is not; one hour late is likely daylight saving time', () => {
    const at = (hours: number) => {
      const spans = days(10, (hour) => (hour >= 6 && hour < 18 ? 1 : 0), 0.25).map((span) => ({
        ...span,
        startMs: span.startMs + hours * HOUR,
        endMs: span.endMs + hours * HOUR,
      }))
      const observed = Array.from({ length: 10 }, (_, day) => ({ day: dayOf('2026-06-01') + day, kwh: 12, ratio: 1 }))
      return told({
        series: series(spans),
        observed,
        model: { ...model, centreSolarH: model.centreSolarH.map(() => 12) },
      }).find(({ id }) => id === 'output.clock-shift')
    }
    expect(at(0.4)).toBeUndefined()
    expect(at(0.6)?.fix).toMatch(/^check the clock of the logger/u)
    expect(at(1)?.fix).toBe(
      'check a clock on daylight saving time (declare clock: local), or stamps at the end of hours (declare stamps_mark: ending)',
    )
    expect(at(1)?.message).toBe('the middle of 5 clear days comes 1.0 h later than the sun allows')
    expect(at(1.4)?.fix).toMatch(/^check the clock of the logger/u)
    expect(at(-1)?.message).toContain('1.0 h earlier')
    expect(at(-1)?.fix).toMatch(/^check the clock of the logger, the time zone \(clock: utc\?\), or the direction/u)
  })
})

describe('days that count', () => {
  test('readings over all daylight make a day, a hole of an hour does not, nights may lack', () => {
    const count = (keep: (hour: number, day: number) => boolean) =>
      countDays(
        series(
          days(3, () => 1).filter(({ startMs }) =>
            keep((startMs / HOUR) % 24, Math.floor(startMs / DAY) - dayOf('2026-06-01')),
          ),
        ),
        place,
      )
    expect(count(() => true).periods).toHaveLength(3)
    expect(count((hour) => hour >= 4 && hour < 20).periods).toHaveLength(3)
    const holed = count((hour, day) => day !== 1 || hour !== 12)
    expect(holed.periods.map(({ firstDay }) => firstDay - dayOf('2026-06-01'))).toEqual([0, 2])
    expect(holed.missing.map((day) => day - dayOf('2026-06-01'))).toEqual([1])
    expect(holed.leftOutKwh).toBe(23)
    expect(holed.periods.map(({ kwh }) => kwh)).toEqual([24, 24])
  })
})

describe('the stretch of a projection', () => {
  const iso = (day: number): string => new Date(day * DAY).toISOString().slice(0, 10)

  test('the month of the last day; twelve months from the first, then calendar years', () => {
    expect(monthAround(dayOf('2026-06-14')).map(iso)).toEqual(['2026-06-01', '2026-07-01'])
    expect(monthAround(dayOf('2026-12-31')).map(iso)).toEqual(['2026-12-01', '2027-01-01'])
    expect(yearAround(dayOf('2026-06-08'), dayOf('2027-06-07')).map(iso)).toEqual(['2026-06-08', '2027-06-08'])
    expect(yearAround(dayOf('2026-06-08'), dayOf('2027-06-08')).map(iso)).toEqual(['2027-01-01', '2028-01-01'])
  })
})

describe('limits of a reading', () => {
  test('the inverters together: each on its module, or each unit once', () => {
    expect(ratedAcKw(microHouse())).toBeCloseTo((15 * 366) / 1000, 9)
    expect(ratedAcKw(stringHouse())).toBeCloseTo(6, 9)
  })

  test('an hour at 115 % of the lesser rating; a day at 1.6 times the clearest kind of day', () => {
    const limits = productionLimits(project, run)
    const rated = Math.min(ratedAcKw(project), run.result.values.rated_kw)
    const start = dayOf('2026-06-10') * DAY
    expect(limits.mostKwh(start, start + HOUR)).toBeCloseTo(1.15 * rated, 9)
    const clear = Math.max(...[5, 6].map((month) => model.kindsKwh[month]?.[9] ?? 0))
    expect(limits.mostKwh(start, start + DAY)).toBeCloseTo(Math.min(1.6 * clear, 24 * 1.15 * rated), 9)
    expect(limits.mostKwh(start, start + 3 * DAY)).toBeCloseTo(Math.min(4.8 * clear, 72 * 1.15 * rated), 9)
    const winter = dayOf('2026-12-10') * DAY
    const [december, january] = [11, 0].map((month) => model.kindsKwh[month]?.[9] ?? 0)
    expect(limits.mostKwh(winter, winter + DAY)).toBeCloseTo(1.6 * Math.max(december ?? 0, january ?? 0), 9)
  })
})

describe('the weather of the very days', () => {
  const name = 'weather.epw'
  const text = readFileSync(
    new URL('../../examples/weather/USA_WA_Seattle-Tacoma.Intl.AP.727930_TMY3.epw', import.meta.url),
    'utf8',
  )
  // A typical year is put together from many; as a measured one its rows all bear one year.
  const measured = text.replaceAll(/^\d{4}(?=,\d{1,2},\d{1,2},\d{1,2},)/gmu, '2025')
  const read = (rows: readonly string[]): ProductionSeries => {
    const { series: found } = readProduction(
      'p.csv',
      `date,kWh\n${rows.join('\n')}\n`,
      { clock: 'standard' },
      productionLimits(project, run),
    )
    if (found === undefined) throw new Error('not read')
    return found
  }

  test('every measured day of that year has its energy, the last one too', () => {
    const rows = ['2025-06-09,10', '2025-06-10,11', '2025-06-11,12']
    const { kwhByDay } = weatherOfDays(project, name, measured, read(rows))
    expect([...kwhByDay.keys()]).toEqual([0, 1, 2].map((at) => dayOf('2025-06-09') + at))
    for (const kwh of kwhByDay.values()) expect(kwh).toBeGreaterThan(0)
    expect(() => weatherOfDays(project, name, measured, read(['2026-06-09,10', '2026-06-10,11']))).toThrow(
      /holds the year 2025, the measured days are 2026-06-09 to 2026-06-10/u,
    )
    // A table whose columns nobody states is read as an hourly file, which has no day in it then.
    expect(() => weatherOfDays(project, name, 'Time,GHI\n2025-06-09 12:00,700\n', read(rows))).toThrow(
      'holds no whole day of weather',
    )
  })
})
