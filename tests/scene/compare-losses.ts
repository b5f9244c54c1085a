// One house through the program and through the ray caster, under the same sky.
import { Body, EquatorFromVector, GeoVector, MakeTime, RotateVector, Rotation_EQJ_EQD } from 'astronomy-engine'
import type { Project } from '../../src/project/index.js'
import { placeModules } from '../../src/roof/index.js'
import { perez1990, SOLAR_CONSTANT_W_M2 } from '../../src/sun/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { dayTypeSteps, runYield, type SkySteps } from '../../src/yield/index.js'
import { planeLight } from '../../src/yield/plane-light.js'
import { modelSettings } from '../../src/yield/settings.js'
import { skyLight } from '../../src/yield/sky-light.js'
import type { Climate } from '../../src/climate/index.js'
import type { HouseInput } from './house-input.ts'
import { evenClimate, THICKNESS_IN } from './invented-house.ts'
import { castHouse, lightLossPct, USUAL, type Fineness, type LightOfYear, type SunStep } from './ray-caster.ts'

export interface Weather {
  readonly climate: Climate
  readonly steps: SkySteps
}

const known = new Map<number, Weather>()

/** The same sky over a latitude every time it is asked for. */
export function skyOver(latitudeDeg: number): Weather {
  const old = known.get(latitudeDeg)
  if (old !== undefined) return old
  const climate = evenClimate(latitudeDeg)
  const fresh = { climate, steps: dayTypeSteps(climate, SOLAR_CONSTANT_W_M2) }
  known.set(latitudeDeg, fresh)
  return fresh
}

let declinations: number[][] | undefined

/** Declination of the sun at noon of every day, by month: the mean day of a monthly table stands for all of them. */
function declinationsByMonth(): number[][] {
  declinations ??= Array.from({ length: 12 }, (_, month) =>
    Array.from({ length: new Date(Date.UTC(2026, month + 1, 0)).getUTCDate() }, (__, day) => {
      const noon = MakeTime(new Date(Date.UTC(2026, month, day + 1, 12)))
      return EquatorFromVector(RotateVector(Rotation_EQJ_EQD(noon), GeoVector(Body.Sun, noon, true))).dec
    }),
  )
  return declinations
}

/** Unshaded light of the year on the modules of an array: weather and sky model of the program, without any geometry of shade. */
export function lightOf(house: HouseInput, array: string, steps: SkySteps): LightOfYear {
  const project = house as unknown as Project
  const settings = modelSettings(project, new Worksheet())
  const { roof_plane, module_tilt_deg, module_azimuth_deg } = house.arrays[array]!
  const plane = house.roof_planes[roof_plane]!
  const light = planeLight(
    steps,
    skyLight(steps, perez1990),
    module_tilt_deg ?? plane.tilt_deg,
    module_azimuth_deg ?? plane.azimuth_deg,
    settings,
  )
  const days = steps.fileRow === undefined ? declinationsByMonth() : undefined
  const bySun = new Map<number, SunStep & { amount: number }>()
  const sky = Array.from({ length: 12 }, () => 0)
  const ground = Array.from({ length: 12 }, () => 0)
  for (let step = 0; step < steps.length; step += 1) {
    const [month, hours, sun] = [steps.month[step]!, steps.hours[step]!, steps.sunIndex[step]!]
    sky[month]! += light.sky[step]! * hours
    ground[month]! += light.ground[step]! * hours
    const amount = light.direct[step]! * hours
    const before = bySun.get(sun)
    if (before === undefined)
      bySun.set(sun, {
        towards: [steps.sunEast[step]!, steps.sunNorth[step]!, steps.sunUp[step]!],
        month,
        spanH: steps.spanH[step]!,
        ...(days === undefined ? {} : { declinationsDeg: days[month]! }),
        amount,
      })
    else before.amount += amount
  }
  return { suns: [...bySun.values()], sky, ground }
}

export interface Compared {
  readonly id: string
  /** Loss of light by the program and by the caster, %. */
  readonly program: number
  readonly cast: number
}

/** Loss of light of every module, by both. */
export function compareLosses(house: HouseInput, weather?: Weather, fineness: Fineness = USUAL): Compared[] {
  const { climate, steps } = weather ?? skyOver(house.site.latitude_deg)
  const project = house as unknown as Project
  const run = runYield(project, new Map(), { climate, steps })
  const stated = new Map(run.result.values.modules.map(({ id, light_loss_pct }) => [id, light_loss_pct]))
  const lights = new Map(Object.keys(house.arrays).map((id) => [id, lightOf(house, id, steps)]))
  return castHouse(house, placeModules(project, new Worksheet()), THICKNESS_IN, fineness).map((module) => ({
    id: module.id,
    program: stated.get(module.id) ?? Number.NaN,
    cast: lightLossPct(module, lights.get(module.array)!),
  }))
}

/** Largest difference in points of per cent, program less caster. */
export const worst = (all: readonly Compared[]): number =>
  all.reduce((most, { program, cast }) => (Math.abs(program - cast) > Math.abs(most) ? program - cast : most), 0)
