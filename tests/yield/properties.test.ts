import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import { monthlyExtraterrestrialWhM2Day, type MonthlyClimate } from '../../src/climate/index.js'
import type { Project } from '../../src/project/index.js'
import { SOLAR_CONSTANT_W_M2 } from '../../src/sun/index.js'
import { dayTypeSteps, LADDER, runYield, type YieldValues } from '../../src/yield/index.js'

const RUNS = { numRuns: 40 }

/** A climate made of clearness alone, the same all year. */
function climateAt(latitudeDeg: number, clearness: number): MonthlyClimate {
  const outside = monthlyExtraterrestrialWhM2Day(latitudeDeg)
  const twelve = (value: number): number[] => Array.from({ length: 12 }, () => value)
  return {
    kind: 'monthly',
    name: 'test',
    latitudeDeg,
    longitudeDeg: 0,
    elevationM: 0,
    utcOffsetH: 0,
    ghiWhM2Day: outside.map((value) => value * clearness),
    dhiWhM2Day: outside.map((value) => value * clearness * 0.4),
    clearness: twelve(clearness),
    meanC: twelve(12),
    meanMaxC: twelve(17),
    meanMinC: twelve(7),
    windMs: twelve(3),
    spreadRel: 0,
    leftOutRel: 0,
    sitingErrorRel: 0,
    sites: [],
  }
}

interface Knobs {
  readonly tilt?: number
  readonly azimuth?: number
  readonly modules?: number
  readonly albedo?: number
  readonly acW?: number
  readonly losses?: Project['losses']
  readonly second?: boolean
}

function projectOf(knobs: Knobs): Project {
  const array = {
    roof_plane: 'p',
    module: 'm',
    inverter: 'i',
    modules: knobs.modules ?? 8,
    mounting: 'near_roof' as const,
    standoff_in: 4,
  }
  return {
    format: 'gablewatt/2',
    title: 'properties',
    site: { latitude_deg: 40, longitude_deg: 0, albedo: knobs.albedo ?? 0.2 },
    roof_planes: {
      p: { azimuth_deg: knobs.azimuth ?? 180, tilt_deg: knobs.tilt ?? 30 },
      q: { azimuth_deg: 90, tilt_deg: 20 },
    },
    arrays: knobs.second === true ? { a: array, b: { ...array, roof_plane: 'q', modules: 5 } } : { a: array },
    equipment: {
      modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35 } },
      inverters: {
        i: { kind: 'module_level', ac_power_w: knobs.acW ?? 350, weighted_efficiency_pct: 97, night_w: 0.1 },
      },
    },
    ...(knobs.losses === undefined ? {} : { losses: knobs.losses }),
  }
}

function valuesOf(knobs: Knobs, latitude = 40, clearness = 0.5): YieldValues {
  const climate = climateAt(latitude, clearness)
  return runYield(projectOf(knobs), new Map(), { climate, steps: dayTypeSteps(climate, SOLAR_CONSTANT_W_M2) }).result
    .values
}

const close = (a: number, b: number): void =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(a)))
const tilt = fc.integer({ min: 0, max: 90 })
const azimuth = fc.integer({ min: 0, max: 360 })

describe('the energy estimate', () => {
  it('never falls with more albedo', () => {
    fc.assert(
      fc.property(tilt, azimuth, fc.double({ min: 0, max: 0.8, noNaN: true }), (t, z, albedo) => {
        const less = valuesOf({ tilt: t, azimuth: z, albedo }).annual.ac_kwh
        // On a nearly level plane ground light grazes: the temperature model counts its heat, the glass reflects it.
        const allowed = 1e-6 * less
        expect(valuesOf({ tilt: t, azimuth: z, albedo: albedo + 0.1 }).annual.ac_kwh).toBeGreaterThan(less - allowed)
      }),
      RUNS,
    )
  })

  it('grows with a clearer sky and with more modules', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 60 }), fc.double({ min: 0.2, max: 0.7, noNaN: true }), (t, clearness) => {
        const base = valuesOf({ tilt: t }, 40, clearness).annual
        expect(valuesOf({ tilt: t }, 40, clearness + 0.05).annual.poa_kwh_m2).toBeGreaterThan(base.poa_kwh_m2)
        expect(valuesOf({ tilt: t, modules: 9 }, 40, clearness).annual.ac_kwh).toBeGreaterThan(base.ac_kwh)
        close(valuesOf({ tilt: t, modules: 16 }, 40, clearness).annual.ac_kwh, 2 * base.ac_kwh)
      }),
      RUNS,
    )
  })

  it('is the same for an azimuth and its mirror image, since mornings and afternoons are alike', () => {
    fc.assert(
      fc.property(tilt, fc.integer({ min: 0, max: 180 }), fc.integer({ min: -60, max: 60 }), (t, z, latitude) => {
        const east = valuesOf({ tilt: t, azimuth: z }, latitude).annual
        const west = valuesOf({ tilt: t, azimuth: 360 - z }, latitude).annual
        expect(Math.abs(east.poa_kwh_m2 - west.poa_kwh_m2)).toBeLessThan(1e-6 * east.poa_kwh_m2)
        // Cell temperature is not symmetric: afternoons are warmer.
        expect(Math.abs(east.ac_kwh - west.ac_kwh)).toBeLessThan(0.03 * east.ac_kwh)
      }),
      RUNS,
    )
  })

  it('adds up: months to the year, arrays to the system, modules to the array, the ladder to the output', () => {
    fc.assert(
      fc.property(tilt, azimuth, fc.integer({ min: 150, max: 500 }), (t, z, acW) => {
        const values = valuesOf({ tilt: t, azimuth: z, acW, second: true })
        for (const key of ['ac_kwh', 'dc_kwh', 'clipped_kwh'] as const) {
          close(
            values.monthly.reduce((sum, month) => sum + month[key], 0),
            values.annual[key],
          )
          close(
            Object.values(values.arrays).reduce((sum, array) => sum + array.annual[key], 0),
            values.annual[key],
          )
        }
        for (const array of Object.values(values.arrays)) {
          close(
            array.by_module.reduce((sum, module) => sum + module.ac_kwh, 0),
            array.annual.ac_kwh,
          )
        }
        close(values.ladder.night, values.annual.ac_kwh)
        close(values.ladder.dc_cables, values.annual.dc_kwh)
        close(values.ladder.inverter - values.ladder.clipping, values.annual.clipped_kwh)
        close(values.ladder.plane, values.annual.poa_kwh_m2 * values.rated_kw)
        LADDER.slice(2).forEach((step, index) => {
          const before = values.ladder[LADDER[index + 1] as (typeof LADDER)[number]]
          if (step !== 'temperature') expect(values.ladder[step]).toBeLessThanOrEqual(before + 1e-9)
        })
      }),
      RUNS,
    )
  })

  it('loses exactly a proportional loss, and nothing where the loss is zero', () => {
    const none = {
      dirt_pct: 0,
      snow_pct: 0,
      unequal_modules_pct: 0,
      dc_cables_pct: 0,
      ac_cables_pct: 0,
      contacts_pct: 0,
      first_weeks_of_light_pct: 0,
      rating_shortfall_pct: 0,
      out_of_order_pct: 0,
    }
    const clean = valuesOf({ losses: none, acW: 1000 })
    close(clean.ladder.temperature, clean.ladder.dc_cables)
    close(clean.ladder.clipping, clean.ladder.out_of_order)
    const out = valuesOf({ losses: { ...none, out_of_order_pct: 5 }, acW: 1000 })
    close(out.ladder.out_of_order, clean.ladder.out_of_order * 0.95)
    const aged = valuesOf({ losses: { ...none, in_use_years: 10, degradation_pct_per_year: 0.5 }, acW: 1000 })
    close(aged.annual.dc_kwh, clean.annual.dc_kwh * 0.995 ** 10)
  })

  it('never gives a number that is none, at any latitude from -66 to 66', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -66, max: 66, noNaN: true }),
        fc.double({ min: 0.05, max: 0.85, noNaN: true }),
        tilt,
        azimuth,
        (latitude, clearness, t, z) => {
          const values = valuesOf({ tilt: t, azimuth: z, second: true }, latitude, clearness)
          const text = JSON.stringify(values)
          expect(text).not.toMatch(/null|NaN|Infinity/u)
          expect(values.annual.ac_kwh).toBeGreaterThan(0)
          expect(values.annual.performance_ratio).toBeLessThan(1.2)
        },
      ),
      RUNS,
    )
  })

  it('keeps all of the month in its kinds of day', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -60, max: 60, noNaN: true }),
        fc.double({ min: 0.2, max: 0.75, noNaN: true }),
        (latitude, clearness) => {
          const climate = climateAt(latitude, clearness)
          const ghi = climate.ghiWhM2Day.reduce(
            (sum, value, month) =>
              sum + (value * ([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month] ?? 0)) / 1000,
            0,
          )
          expect(Math.abs(valuesOf({ tilt: 0 }, latitude, clearness).annual.ghi_kwh_m2 / ghi - 1)).toBeLessThan(1e-6)
        },
      ),
      RUNS,
    )
  })
})
