import { monthlyFromHourly, type HourlyClimate } from '../../src/climate/index.js'
import type { Project } from '../../src/project/index.js'
import { SOLAR_CONSTANT_W_M2 } from '../../src/sun/index.js'
import { dayTypeSteps, hourlySteps, runYield } from '../../src/yield/index.js'

/** The year of one plane by both methods. */
export interface MethodCase {
  readonly file: string
  readonly tilt: number
  readonly azimuth: number
  readonly ratio: number
  /** Monthly less hourly method, percent of the year: with the month's own morning and diffuse light. */
  readonly difference: number
  /** The same with a symmetric day and the diffuse light of the correlation alone. */
  readonly symmetric: number
}

const isSouth = (one: MethodCase): boolean => one.azimuth >= 135 && one.azimuth <= 225

/** Planes that are judged together. */
export const GROUPS: readonly { readonly name: string; readonly belongs: (one: MethodCase) => boolean }[] = [
  { name: 'azimuth 135 to 225, tilt <= 34', belongs: (one) => one.tilt <= 34 && isSouth(one) },
  { name: 'azimuth 90 and 270, tilt 18 and 34', belongs: (one) => one.tilt > 0 && one.tilt <= 34 && !isSouth(one) },
  { name: 'azimuth 135 to 225, tilt 60', belongs: (one) => one.tilt === 60 && isSouth(one) },
  { name: 'azimuth 90 and 270, tilt 60', belongs: (one) => one.tilt === 60 && !isSouth(one) },
]

function projectOf(tilt: number, azimuth: number, ratio: number): Project {
  return {
    format: 'gablewatt/2',
    title: 'comparison of methods',
    site: { latitude_deg: 40, longitude_deg: -100 },
    roof_planes: { p: { azimuth_deg: azimuth, tilt_deg: tilt } },
    arrays: { a: { roof_plane: 'p', module: 'm', inverter: 'i', modules: 10, mounting: 'near_roof', standoff_in: 4 } },
    equipment: {
      modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35 } },
      inverters: { i: { kind: 'module_level', ac_power_w: 400 / ratio, weighted_efficiency_pct: 97 } },
    },
    losses: { snow_pct: 0 },
  }
}

/**
 * Twenty planes of a weather file by both methods, snow off.
 *
 * @param ratios Rated DC power over AC power.
 */
export function methodCases(file: string, climate: HourlyClimate, ratios: readonly number[]): MethodCase[] {
  const means = monthlyFromHourly(climate)
  const plain = { ...means, morning: undefined }
  const hours = { climate, steps: hourlySteps(climate, SOLAR_CONSTANT_W_M2) }
  const days = { climate: means, steps: dayTypeSteps(means, SOLAR_CONSTANT_W_M2) }
  const even = { climate: plain, steps: dayTypeSteps(plain, SOLAR_CONSTANT_W_M2, 'correlation') }
  return [0, 18, 34, 60].flatMap((tilt) =>
    [90, 135, 180, 225, 270].flatMap((azimuth) =>
      ratios.map((ratio): MethodCase => {
        const project = projectOf(tilt, azimuth, ratio)
        const [hourly, monthly, before] = [hours, days, even].map(
          (context) => runYield(project, new Map(), context).result.values.annual.ac_kwh,
        ) as [number, number, number]
        const percent = (kwh: number): number => 100 * (kwh / hourly - 1)
        return { file, tilt, azimuth, ratio, difference: percent(monthly), symmetric: percent(before) }
      }),
    ),
  )
}

/** Bias, root mean square and largest of some differences. */
export function summary(differences: readonly number[]): {
  readonly bias: number
  readonly rms: number
  readonly largest: number
} {
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length
  return {
    bias: mean(differences),
    rms: Math.sqrt(mean(differences.map((value) => value * value))),
    largest: Math.max(...differences.map(Math.abs)),
  }
}
