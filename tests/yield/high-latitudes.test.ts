import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import { monthlyExtraterrestrialWhM2Day, type MonthlyClimate } from '../../src/climate/index.js'
import type { Project } from '../../src/project/index.js'
import { SOLAR_CONSTANT_W_M2 } from '../../src/sun/index.js'
import { dayTypeSteps, expectedHours, runYield, type YieldRun } from '../../src/yield/index.js'

const twelve = (value: number): number[] => Array.from({ length: 12 }, () => value)

interface Sky {
  readonly clearness?: number
  readonly diffuse?: number
  readonly morning?: number
}

/** Twelve months of the same clearness at a latitude. */
function climateAt(latitudeDeg: number, { clearness = 0.5, diffuse = 0.45, morning = 0.5 }: Sky = {}): MonthlyClimate {
  const ghiWhM2Day = monthlyExtraterrestrialWhM2Day(latitudeDeg).map((value) => value * clearness)
  return {
    kind: 'monthly',
    name: 'test',
    latitudeDeg,
    longitudeDeg: 0,
    elevationM: 0,
    utcOffsetH: 0,
    ghiWhM2Day,
    dhiWhM2Day: ghiWhM2Day.map((ghi) => ghi * diffuse),
    clearness: twelve(clearness),
    meanC: twelve(5),
    meanMaxC: twelve(8),
    meanMinC: twelve(2),
    windMs: twelve(3),
    spreadRel: 0,
    leftOutRel: 0,
    sitingErrorRel: 0,
    morning: { ghi: twelve(morning), dhi: twelve(morning) },
    sites: [],
  }
}

function runAt(climate: MonthlyClimate, azimuthDeg: number, tiltDeg = 30): YieldRun {
  const project: Project = {
    format: 'gablewatt/2',
    title: 'latitudes',
    site: { latitude_deg: climate.latitudeDeg, longitude_deg: 0 },
    roof_planes: { p: { azimuth_deg: azimuthDeg, tilt_deg: tiltDeg } },
    arrays: { a: { roof_plane: 'p', module: 'm', inverter: 'i', modules: 8, mounting: 'near_roof', standoff_in: 4 } },
    equipment: {
      modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35 } },
      inverters: { i: { kind: 'module_level', ac_power_w: 400, weighted_efficiency_pct: 97, night_w: 0.1 } },
    },
    losses: { snow_pct: 0 },
  }
  return runYield(project, new Map(), { climate, steps: dayTypeSteps(climate, SOLAR_CONSTANT_W_M2) })
}

/** Every number of a value, however deep. */
function numbers(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value).flatMap(numbers)
}

describe('the estimate at any latitude', () => {
  const latitude = fc.oneof(
    fc.double({ min: -90, max: 90, noNaN: true }),
    fc.constantFrom(-90, -89.999, -66.56, 0, 23.44, 65.9, 66.56, 67, 71.3, 78, 89.999, 90),
  )

  it('is made of numbers, has no light without sun, and keeps the light of the table', () => {
    fc.assert(
      fc.property(
        latitude,
        fc.double({ min: 0.1, max: 0.8, noNaN: true }),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        fc.double({ min: 0.35, max: 0.65, noNaN: true }),
        fc.integer({ min: 0, max: 360 }),
        (latitudeDeg, clearness, diffuse, morning, azimuthDeg) => {
          const climate = climateAt(latitudeDeg, { clearness, diffuse, morning })
          const run = runAt(climate, azimuthDeg)
          expect(numbers(run.result.values).every(Number.isFinite)).toBe(true)
          const { steps } = run
          const wrong: string[] = []
          const level = new Float64Array(12)
          for (let step = 0; step < steps.length; step += 1) {
            const [dni, dhi, ghi, up] = [steps.dniWM2, steps.dhiWM2, steps.ghiWM2, steps.sunUp].map(
              (column) => column[step]!,
            ) as [number, number, number, number]
            if (!(dni >= 0 && dhi >= 0 && dhi <= ghi + 1e-9)) wrong.push(`${step}: DNI ${dni}, DHI ${dhi}, GHI ${ghi}`)
            if (!(dni <= steps.extraterrestrialWM2[step]! + 1e-6))
              wrong.push(`${step}: DNI ${dni} is more than outside`)
            if (!(Math.abs(dni * up + dhi - ghi) < 1e-6))
              wrong.push(`${step}: DNI ${dni} and DHI ${dhi} are not ${ghi}`)
            level[steps.month[step]!]! += (ghi * steps.hours[step]!) / 1000
          }
          expect(wrong).toEqual([])
          const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
          run.result.values.monthly.forEach((month, index) => {
            const table = (climate.ghiWhM2Day[index]! * days[index]!) / 1000
            // A month of hardly any sun is polar night.
            if (level[index] === 0) {
              expect(table).toBeLessThan((days[index]! * 60) / 1000)
              expect(month.poa_kwh_m2).toBe(0)
              expect(month.ac_kwh).toBeLessThanOrEqual(0)
            } else expect(Math.abs(level[index]! - table)).toBeLessThan(1e-6 * table + 1e-9)
          })
        },
      ),
      { numRuns: 25 },
    )
  })

  it('gives hours whose months are those of the estimate, in polar day and night too', () => {
    for (const latitudeDeg of [-90, -70, 0, 66.6, 71.3, 90]) {
      const run = runAt(climateAt(latitudeDeg, { morning: 0.47 }), 180)
      for (const days of ['dealt', 'mean'] as const) {
        const { kwh } = expectedHours(run, days)
        expect(kwh.every(Number.isFinite)).toBe(true)
        const starts = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365].map((day) => 24 * day)
        run.result.values.monthly.forEach((month, index) => {
          const sum = kwh.subarray(starts[index], starts[index + 1]).reduce((a, b) => a + b, 0)
          expect(sum).toBeCloseTo(month.ac_kwh, 6)
        })
      }
    }
  })

  it('has polar night in winter and the sun all round in summer', () => {
    const { steps, result } = runAt(climateAt(80), 180)
    expect(result.values.monthly[11]!.poa_kwh_m2).toBe(0)
    expect(steps.nightHours[11]).toBe(31 * 24)
    expect(steps.nightHours[5]).toBe(0)
    expect(result.values.monthly[5]!.poa_kwh_m2).toBeGreaterThan(100)
  })

  it('does not care at the pole which way a plane faces', () => {
    const years = [0, 90, 180, 270].map((azimuth) => runAt(climateAt(90), azimuth).result.values.annual.poa_kwh_m2)
    // What is left is March and September, when the sun rises and sets even there.
    expect(Math.max(...years) / Math.min(...years)).toBeLessThan(1.001)
  })

  it('turns south into north below the equator, and leaves east and west', () => {
    for (const latitudeDeg of [10, 34, 52]) {
      const [north, south] = [climateAt(latitudeDeg, { morning: 0.46 }), climateAt(-latitudeDeg, { morning: 0.46 })]
      const year = (climate: MonthlyClimate, azimuth: number): number => {
        const { annual } = runAt(climate, azimuth).result.values
        return annual.poa_kwh_m2 / annual.ghi_kwh_m2
      }
      // The sun is 3 % nearer in January, the summer of the south, so that shares of light by month differ.
      expect(Math.abs(year(north, 180) / year(south, 0) - 1)).toBeLessThan(0.02)
      expect(Math.abs(year(north, 0) / year(south, 180) - 1)).toBeLessThan(0.02)
      expect(year(south, 0)).toBeGreaterThan(year(south, 180))
      expect(year(north, 270)).toBeGreaterThan(1.02 * year(north, 90))
      expect(year(south, 270)).toBeGreaterThan(1.02 * year(south, 90))
      expect(Math.abs(year(north, 270) / year(south, 270) - 1)).toBeLessThan(0.02)
    }
  })
})
