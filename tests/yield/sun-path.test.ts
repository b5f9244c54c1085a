import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { MEAN_DAY_OF_YEAR, nearbyClimate, parseEpw } from '../../src/climate/index.js'
import { atDay, ephemeris } from '../../src/sun/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { dayTypeSteps } from '../../src/yield/day-type-steps.js'
import { hourlySteps } from '../../src/yield/hourly-steps.js'
import { COLUMNS, courseOf, HOUR_STEP_DEG, ROW_STEP_DEG, rowOf, sunGrid } from '../../src/yield/shade/sun-grid.js'
import { sunPath } from '../../src/yield/shade/sun-path.js'
import type { SkySteps } from '../../src/yield/sky-steps.js'

const RAD = Math.PI / 180
/** Sine of a height from which on no place that a step passes over lies below the horizon. */
const HIGH_UP = 0.25
/** First day of each month, from 0, and the end of the year. */
const STARTS: readonly number[] = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365]
const epw = readFileSync(
  new URL('../../examples/weather/USA_WA_Seattle-Tacoma.Intl.AP.727930_TMY3.epw', import.meta.url),
  'utf8',
)
const hourly = hourlySteps(parseEpw(epw).climate, 1361.1)
const monthly = dayTypeSteps(
  nearbyClimate({ latitudeDeg: 40, longitudeDeg: -90, elevationM: 200 }, new Worksheet()),
  1361.1,
)

describe('the grid of the sun', () => {
  it('has the sun of a declination and an hour angle, and finds both again', () => {
    for (const latitude of [-35, 0, 12, 47, 64]) {
      const grid = sunGrid(latitude)
      for (let at = 0; at < grid.places.length; at += 97) {
        const place = grid.places[at]!
        const towards = { east: grid.east[place]!, north: grid.north[place]!, up: grid.up[place]! }
        expect(Math.hypot(towards.east, towards.north, towards.up)).toBeCloseTo(1, 12)
        const { declinationDeg, hourAngleDeg } = courseOf(latitude, towards)
        expect(rowOf(declinationDeg)).toBeCloseTo(Math.floor(place / COLUMNS), 6)
        expect((hourAngleDeg + 180) / HOUR_STEP_DEG - 0.5).toBeCloseTo(place % COLUMNS, 6)
      }
    }
  })

  it('has the sun in the south at noon in the north, in the north in the south, in the east in the morning', () => {
    const noon = (latitude: number) => {
      const grid = sunGrid(latitude)
      const place = 9 * COLUMNS + COLUMNS / 2
      return { north: grid.north[place]!, east: grid.east[place]!, morning: grid.east[place - 30]! }
    }
    expect(noon(40).north).toBeLessThan(-0.6)
    expect(noon(-40).north).toBeGreaterThan(0.6)
    expect(Math.abs(noon(40).east)).toBeLessThan(0.02)
    expect(noon(40).morning).toBeGreaterThan(0.8)
  })
})

/** Mean declination and hour angle of the places of a sun, degrees. */
function meanCourse(steps: SkySteps, sun: number) {
  const { from, place, share } = sunPath(steps)
  let [row, hour, all] = [0, 0, 0]
  for (let at = from[sun]!; at < from[sun + 1]!; at += 1) {
    row += share[at]! * Math.floor(place[at]! / COLUMNS)
    hour += share[at]! * (((place[at]! % COLUMNS) + 0.5) * HOUR_STEP_DEG - 180)
    all += share[at]!
  }
  return { declinationDeg: row * ROW_STEP_DEG - 23.5, hourAngleDeg: hour, all }
}

describe('the path of the sun', () => {
  it('passes the place of the sun at the middle of each hour, and stands for the whole of it', () => {
    const { from, place } = sunPath(hourly)
    for (let step = 0; step < hourly.length; step += 61) {
      const sun = hourly.sunIndex[step]!
      const towards = { east: hourly.sunEast[step]!, north: hourly.sunNorth[step]!, up: hourly.sunUp[step]! }
      const { declinationDeg, hourAngleDeg } = courseOf(hourly.latitudeDeg, towards)
      const mean = meanCourse(hourly, sun)
      expect(mean.all).toBeCloseTo(1, 9)
      // Near the horizon some of the places lie below it and do not count.
      if (towards.up < HIGH_UP) continue
      expect(mean.declinationDeg).toBeCloseTo(declinationDeg, 6)
      expect(Math.abs(mean.hourAngleDeg - hourAngleDeg)).toBeLessThan(0.3)
      const columns = new Set([...place.subarray(from[sun], from[sun + 1])].map((each) => each % COLUMNS))
      expect(columns.size * HOUR_STEP_DEG).toBeGreaterThanOrEqual(15 * hourly.spanH[step]! - 1e-9)
      expect(columns.size * HOUR_STEP_DEG).toBeLessThanOrEqual(Math.max(HOUR_STEP_DEG, 15 * hourly.spanH[step]!) + 4)
    }
  })

  it.each([
    ['hours of a file', hourly],
    ['mean days', monthly],
  ])('stays above the horizon wherever it can: %s', (_, steps) => {
    const { from, place, share } = sunPath(steps)
    const { up } = sunGrid(steps.latitudeDeg)
    let low = 0
    for (let sun = 0; sun < steps.sunCount; sun += 1) {
      const heights = [...place.subarray(from[sun], from[sun + 1])].map((each) => up[each]!)
      const above = heights.filter((height) => height > 0).length
      expect([0, heights.length]).toContain(above)
      if (above === 0) low += 1
      const all = share.subarray(from[sun], from[sun + 1]).reduce((sum, each) => sum + each, 0)
      expect(all).toBeCloseTo(1, 9)
    }
    expect(low / steps.sunCount).toBeLessThan(0.02)
  })

  it('passes all days of a month where the mean day stands for them', () => {
    const { declinationDeg } = ephemeris()
    const done = new Set<number>()
    for (let step = 0; step < monthly.length; step += 1) {
      const month = monthly.month[step]!
      if (done.has(month) || monthly.sunUp[step]! < HIGH_UP) continue
      done.add(month)
      const first = STARTS[month] ?? 0
      const next = STARTS[month + 1] ?? 0
      let mean = 0
      for (let day = first; day < next; day += 1) mean += atDay(declinationDeg, day + 0.5) / (next - first)
      expect(meanCourse(monthly, monthly.sunIndex[step]!).declinationDeg).toBeCloseTo(mean, 6)
      // The mean day was chosen for its light, and stands within a degree of the mean declination.
      expect(Math.abs(atDay(declinationDeg, (MEAN_DAY_OF_YEAR[month] ?? 0) - 0.5) - mean)).toBeLessThan(1)
    }
    expect(done.size).toBe(12)
  })

  it('has the sunlit part of an hour at sunrise only', () => {
    const spans = [...hourly.spanH]
    expect(Math.min(...spans)).toBeGreaterThan(0)
    expect(Math.max(...spans)).toBe(1)
    const cut = spans.filter((span) => span < 0.999)
    // Two a day, but where the sun rises or sets on the hour.
    expect(cut.length).toBeGreaterThan(650)
    expect(cut.length).toBeLessThanOrEqual(730)
    for (let step = 0; step < hourly.length; step += 1) {
      if (hourly.spanH[step]! < 0.999) expect(hourly.sunUp[step]!).toBeLessThan(Math.sin(9 * RAD))
    }
  })
})
