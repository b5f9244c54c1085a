import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import { monthlyFromHourly, type HourlyClimate, type MonthlyClimate } from '../../src/climate/index.js'
import { loadProject, type Project } from '../../src/project/index.js'
import { SOLAR_CONSTANT_W_M2 } from '../../src/sun/index.js'
import { dealDays } from '../../src/yield/deal-days.js'
import {
  dayTypeSteps,
  expectedHours,
  hourlySteps,
  partOfSystem,
  runYield,
  type DayChoice,
  type ExpectedHours,
  type YieldRun,
} from '../../src/yield/index.js'

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
const example = (name: string) =>
  loadProject({ path: new URL(`../../examples/${name}.yaml`, import.meta.url).pathname })
const lark = example('lark-hollow')
const harbor = example('harbor-point')
const larkRun = runYield(lark.project, lark.files)
const harborRun = runYield(harbor.project, harbor.files)

function byMonth({ kwh }: ExpectedHours): number[] {
  let from = 0
  return DAYS.map((days) => {
    const sum = kwh.subarray(from, from + 24 * days).reduce((all, each) => all + each, 0)
    from += 24 * days
    return sum
  })
}

const total = (kwh: ArrayLike<number>): number => Array.from(kwh).reduce((sum, each) => sum + each, 0)

/** Middle of the output of a day, h of local standard time. @param day 0 = 1 January. */
function middleH({ kwh }: ExpectedHours, day: number): number {
  let [sum, moment] = [0, 0]
  for (let hour = 0; hour < 24; hour += 1) {
    const each = Math.max(0, kwh[24 * day + hour] ?? 0)
    sum += each
    moment += each * (hour + 0.5)
  }
  return moment / sum
}

/** A south roof without shade under a monthly climate. */
function southRoof(longitudeDeg: number, utcOffsetH: number, nightW = 0): YieldRun {
  const twelve = (value: number): number[] => Array.from({ length: 12 }, () => value)
  const climate: MonthlyClimate = {
    kind: 'monthly',
    name: 'even',
    latitudeDeg: 35,
    longitudeDeg,
    elevationM: 0,
    utcOffsetH,
    ghiWhM2Day: [2700, 3500, 4700, 5800, 6500, 7000, 6900, 6300, 5300, 4000, 2900, 2400],
    dhiWhM2Day: twelve(1600),
    clearness: twelve(0.55),
    meanC: twelve(14),
    meanMaxC: twelve(19),
    meanMinC: twelve(9),
    windMs: twelve(3),
    spreadRel: 0,
    leftOutRel: 0,
    sitingErrorRel: 0,
    sites: [],
  }
  const project: Project = {
    format: 'gablewatt/2',
    title: 'hours',
    site: { latitude_deg: 35, longitude_deg: longitudeDeg, albedo: 0.2 },
    roof_planes: { p: { azimuth_deg: 180, tilt_deg: 25 } },
    arrays: { a: { roof_plane: 'p', module: 'm', inverter: 'i', modules: 10, mounting: 'near_roof', standoff_in: 4 } },
    equipment: {
      modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35 } },
      inverters: { i: { kind: 'module_level', ac_power_w: 500, weighted_efficiency_pct: 97, night_w: nightW } },
    },
  }
  return runYield(project, new Map(), { climate, steps: dayTypeSteps(climate, SOLAR_CONSTANT_W_M2) })
}

describe('hours of the expected year', () => {
  it.each<[string, YieldRun, DayChoice]>([
    ['dealt days', larkRun, 'dealt'],
    ['mean days', larkRun, 'mean'],
    ['a weather file', harborRun, 'dealt'],
    ['inverters that draw power at night', southRoof(-90, -6, 3), 'dealt'],
  ])('add up to each month of the estimate: %s', (_, run, days) => {
    const hours = expectedHours(run, days)
    expect(hours.kwh).toHaveLength(8760)
    const { monthly, annual } = run.result.values
    for (const [month, sum] of byMonth(hours).entries()) expect(sum).toBeCloseTo(monthly[month]?.ac_kwh ?? 0, 8)
    expect(total(hours.kwh)).toBeCloseTo(annual.ac_kwh, 7)
  })

  it('keeps the hours of a weather file where they are', () => {
    const { kwh, from } = expectedHours(harborRun)
    expect(from).toBe('weather_file')
    const { steps, system } = harborRun
    const step = system.acW.reduce((best, watts, index) => (watts > (system.acW[best] ?? 0) ? index : best), 0)
    const { month, day = 1, hour } = steps.label(step)
    const index = 24 * (total(DAYS.slice(0, month - 1)) + day - 1) + hour - 1
    expect(kwh[index]).toBeCloseTo((system.acW[step] ?? 0) / 1000, 12)
    expect(Math.max(...kwh)).toBe(kwh[index])
  })

  it('leaves 29 February of a leap year out and says how much it was', () => {
    const { climate } = harborRun
    if (climate.kind !== 'hourly') throw new Error('an hourly climate was expected')
    const leap = withLeapDay(climate)
    const steps = hourlySteps(leap, SOLAR_CONSTANT_W_M2)
    const run = runYield(harbor.project, harbor.files, { climate: leap, steps })
    const hours = expectedHours(run)
    expect(hours.kwh).toHaveLength(8760)
    expect(hours.leapDayKwh).toBeGreaterThan(0)
    // The day that is put in repeats the weather of 28 February under the sun of a day later.
    const twin = total(hours.kwh.subarray(24 * 58, 24 * 59))
    expect(Math.abs(hours.leapDayKwh / twin - 1)).toBeLessThan(0.02)
    expect(total(hours.kwh) + hours.leapDayKwh).toBeCloseTo(run.result.values.annual.ac_kwh, 6)
  })

  it('moves solar time to clock time by the equation of time and the longitude', () => {
    const onMeridian = expectedHours(southRoof(-90, -6), 'mean')
    // The Astronomical Almanac's extremes of the equation of time: +16.4 min about 3 November, -14.2 min about 11
    // February (from memory). A south roof without shade has the middle of its output a little before solar noon,
    // because the cells are warmer after it: the same little in both months.
    const november = middleH(onMeridian, 306)
    const february = middleH(onMeridian, 41)
    expect((february - november) * 60).toBeCloseTo(30.6, 0)
    expect((12 - november) * 60 - 16.4).toBeGreaterThan(0)
    expect((12 - november) * 60 - 16.4).toBeLessThan(2)
    const west = expectedHours(southRoof(-97.5, -6), 'mean')
    expect((middleH(west, 306) - november) * 60).toBeCloseTo(30, 1)
    const otherZone = expectedHours(southRoof(-90, -5), 'mean')
    expect(middleH(otherZone, 306) - november).toBeCloseTo(1, 3)
  })

  it('is below zero only in the dark', () => {
    const { kwh } = expectedHours(southRoof(-90, -6, 3))
    const noon = kwh.filter((_, hour) => hour % 24 === 12)
    const midnight = kwh.filter((_, hour) => hour % 24 === 0)
    expect(Math.min(...noon)).toBeGreaterThan(0)
    // Ten inverters of 3 W draw 0.03 kWh in an hour. The parts of the night in the two hours of sunrise and sunset, of at
    // least 9.6 h in June at this latitude, are spread over the wholly dark ones.
    expect(Math.max(...midnight)).toBeLessThan(0)
    for (const each of midnight) expect(Math.abs(each / -0.03 - 1)).toBeLessThan(2 / (9.6 - 2))
  })

  it('exports never less with dealt days than with mean days: the mean hides dull and clear hours', () => {
    const dealt = expectedHours(larkRun, 'dealt').kwh
    const mean = expectedHours(larkRun, 'mean').kwh
    const exported = (kwh: Float64Array, use: number): number =>
      kwh.reduce((sum, each) => sum + Math.max(0, each - use), 0)
    fc.assert(
      fc.property(fc.double({ min: 0, max: 8, noNaN: true }), (use) => {
        expect(exported(dealt, use)).toBeGreaterThanOrEqual(exported(mean, use) * (1 - 1e-3) - 1e-6)
      }),
      { numRuns: 50 },
    )
    expect(exported(dealt, 2.5)).toBeGreaterThan(1.05 * exported(mean, 2.5))
  })

  it('dealt from the monthly means of a weather file, exports what its own hours export', () => {
    const { climate } = harborRun
    if (climate.kind !== 'hourly') throw new Error('an hourly climate was expected')
    const means = monthlyFromHourly(climate)
    const run = runYield(harbor.project, harbor.files, {
      climate: means,
      steps: dayTypeSteps(means, SOLAR_CONSTANT_W_M2),
    })
    const whole = harborRun.result.values.annual.ac_kwh
    const scale = whole / run.result.values.annual.ac_kwh
    const exportShare = (kwh: Float64Array, use: number): number =>
      kwh.reduce((sum, each) => sum + Math.max(0, each - use), 0) / whole
    const own = expectedHours(harborRun).kwh
    const dealt = expectedHours(run, 'dealt').kwh.map((each) => each * scale)
    const mean = expectedHours(run, 'mean').kwh.map((each) => each * scale)
    for (const use of [0.5, 1, 2, 3]) {
      const error = (kwh: Float64Array): number => Math.abs(exportShare(kwh, use) - exportShare(own, use))
      // Measured in shares of the output: 0.003 to 0.013 for dealt days, 0.017 to 0.086 for mean days.
      expect(error(dealt)).toBeLessThan(0.015)
      expect(error(mean)).toBeGreaterThan(5 * error(dealt))
    }
  })

  it('is the same every time', () => {
    expect(expectedHours(runYield(lark.project, lark.files)).kwh).toEqual(expectedHours(larkRun).kwh)
  })
})

function withLeapDay(climate: HourlyClimate): HourlyClimate {
  const at = 24 * 59
  const insert = <List extends Uint8Array | Uint16Array | Float64Array>(list: List, again: (value: number) => number) =>
    (list.constructor as unknown as { from: (values: number[]) => List }).from([
      ...list.subarray(0, at),
      ...Array.from(list.subarray(at - 24, at), again),
      ...list.subarray(at),
    ])
  const same = (value: number): number => value
  return {
    ...climate,
    length: 8784,
    month: insert(climate.month, same),
    day: insert(climate.day, () => 29),
    hour: insert(climate.hour, same),
    middleH: insert(climate.middleH, same),
    dayOfYear: Uint16Array.from({ length: 8784 }, (_, row) => Math.floor(row / 24) + 1),
    ghiWM2: insert(climate.ghiWM2, same),
    dniWM2: insert(climate.dniWM2, same),
    dhiWM2: insert(climate.dhiWM2, same),
    dryBulbC: insert(climate.dryBulbC, same),
    windMs: insert(climate.windMs, same),
    snowDepthCm: insert(climate.snowDepthCm, same),
  }
}

describe('dealing kinds of day', () => {
  const kinds = (days: number): Map<number, number> => new Map(Array.from({ length: 10 }, (_, i) => [i + 1, days / 10]))
  const rankOf = (mixture: ReadonlyMap<number, number>): number =>
    [...mixture].reduce((sum, [kind, share]) => sum + kind * share, 0)

  it.each([28, 30, 31])('gives every kind its days in a month of %i', (days) => {
    for (let month = 0; month < 12; month += 1) {
      const dealt = dealDays(kinds(days), month)
      expect(dealt).toHaveLength(days)
      const got = new Map<number, number>()
      for (const mixture of dealt) {
        expect(total([...mixture.values()])).toBeCloseTo(1, 9)
        for (const [kind, share] of mixture) got.set(kind, (got.get(kind) ?? 0) + share)
      }
      for (const [kind, each] of kinds(days)) expect(got.get(kind)).toBeCloseTo(each, 8)
    }
  })

  it('mixes them: weeks, and the same weekday through a month, are nearer the month than random days', () => {
    const weeks: number[] = []
    const weekdays: number[] = []
    for (let month = 0; month < 12; month += 1) {
      const ranks = dealDays(kinds(DAYS[month] ?? 30), month).map(rankOf)
      const mean = total(ranks) / ranks.length
      const off = (some: number[]): number => total(some) / some.length - mean
      for (let from = 0; from + 7 <= ranks.length; from += 1) weeks.push(off(ranks.slice(from, from + 7)))
      for (let weekday = 0; weekday < 7; weekday += 1) weekdays.push(off(ranks.filter((_, day) => day % 7 === weekday)))
    }
    const rms = (all: number[]): number => Math.sqrt(total(all.map((each) => each ** 2)) / all.length)
    // Ranks 1 to 10 of equal likelihood have a standard deviation of 2.87: 1.09 for the mean of 7 random days, 1.37 for
    // that of 4.4.
    expect(rms(weeks)).toBeLessThan(1.09 * 0.65)
    expect(rms(weekdays)).toBeLessThan(1.37 * 0.65)
  })
})

describe('part of a system', () => {
  const ids = (run: YieldRun): string[] => run.arrays.flatMap(({ plan }) => plan.modules.map((module) => module.id))

  it('with every module is the whole', () => {
    for (const run of [larkRun, harborRun]) {
      const part = partOfSystem(run, new Set(ids(run)))
      expect(total(part.acW)).toBeCloseTo(total(run.system.acW), 6)
      expect(expectedHours(run, 'dealt', part).kwh).toEqual(expectedHours(run).kwh)
    }
  })

  it('behind module-level inverters, the parts add up to the whole', () => {
    const kwhOf = (kept: string[]): number =>
      total(expectedHours(larkRun, 'dealt', partOfSystem(larkRun, new Set(kept))).kwh)
    fc.assert(
      fc.property(fc.subarray(ids(larkRun)), (kept) => {
        const rest = ids(larkRun).filter((id) => !kept.includes(id))
        expect(kwhOf(kept) + kwhOf(rest)).toBeCloseTo(larkRun.result.values.annual.ac_kwh, 6)
      }),
      { numRuns: 10 },
    )
  })

  it('behind one string inverter, a part is that of its own load', () => {
    const kept = ids(harborRun).filter((_, i) => i < 9)
    const own = runYield(
      {
        ...harbor.project,
        arrays: { south: harbor.project.arrays['south'] as Project['arrays'][string] },
      },
      harbor.files,
    )
    const part = partOfSystem(harborRun, new Set(kept))
    expect(total(expectedHours(harborRun, 'dealt', part).kwh)).toBeCloseTo(own.result.values.annual.ac_kwh, 6)
  })
})
