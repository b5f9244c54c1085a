// A second opinion on shade, from geometry alone: bodies in space, points all over each module, rays to sun and sky.
// It shares no line with src/scene, src/sun or src/yield; what it is given are the keys of a project and the places of modules.
import { buildWorld, type Glass, type Thing } from './build-world.ts'
import type { HouseInput, PlacedModule } from './house-input.ts'
import { add, cosDeg, inner, onFrame, sinDeg, times, type Frame, type Vec } from './vectors.ts'

/** How fine the caster looks. */
export interface Fineness {
  /** Points of a module that look at one position of the sun; others look at the next. */
  readonly points: number
  /** Directions of sky and ground, each from a point of its own. */
  readonly directions: number
  /** Longest time between two positions of the sun, minutes. */
  readonly sunMinutes: number
}

/** Fine enough for the comparisons: fineness.test.ts says how far from a much finer look. */
export const USUAL: Fineness = { points: 8, directions: 4000, sunMinutes: 7.5 }

/** The sun of a step and how long the step lasts: the sun stands at its middle. */
export interface SunStep {
  readonly towards: Vec
  readonly month: number
  readonly spanH: number
  /** Declinations of the days that the step stands for, degrees, where it stands for more than the day of `towards`. */
  readonly declinationsDeg?: readonly number[]
}

/** Light on the unshaded module over a year, by where it comes from, in any one unit; sun by step, the others by month. */
export interface LightOfYear {
  readonly suns: readonly (SunStep & { readonly amount: number })[]
  readonly sky: readonly number[]
  readonly ground: readonly number[]
}

/** Share of light from sky and ground that arrives, by month. */
export interface DiffuseShares {
  readonly sky: readonly number[]
  readonly ground: readonly number[]
}

/** What the caster knows of one module. */
export interface CastModule {
  readonly id: string
  readonly array: string
  /** Share of the beam that arrives while the sun moves through a step, 0 to 1. */
  readonly beam: (step: SunStep) => number
  readonly diffuse: () => DiffuseShares
}

/** The first numbers of a sequence that fills the unit interval evenly: indices in a base, mirrored at the point (van der Corput). */
const evenly = (base: number): Float64Array =>
  Float64Array.from({ length: 1 << 16 }, (_, index) => {
    let [sum, digit, left] = [0, 1 / base, index + 1]
    while (left > 0) {
      sum += (left % base) * digit
      left = Math.floor(left / base)
      digit /= base
    }
    return sum
  })
const [BY_TWO, BY_THREE, BY_FIVE] = [evenly(2), evenly(3), evenly(5)]

/** One of a sequence of points that fill a module evenly. */
function pointOf({ frame, width, height }: Glass, index: number): Vec {
  return onFrame(frame, BY_TWO[index % BY_TWO.length]! * width, BY_THREE[index % BY_THREE.length]! * height)
}

/** Height of the far horizon above level in a direction: straight between its points, round the compass. */
export function horizonDeg(points: HouseInput['site']['horizon'], [east, north]: Vec): number {
  if (points === undefined || points.length === 0) return -90
  const bearing = ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360
  const sorted = [...points].sort((a, b) => a.azimuth_deg - b.azimuth_deg)
  const next = sorted.find((point) => point.azimuth_deg >= bearing) ?? sorted[0]!
  const last = sorted.findLast((point) => point.azimuth_deg < bearing) ?? sorted.at(-1)!
  const gap = (((next.azimuth_deg - last.azimuth_deg) % 360) + 360) % 360 || 360
  const gone = (((bearing - last.azimuth_deg) % 360) + 360) % 360
  return last.elevation_deg + ((next.elevation_deg - last.elevation_deg) * gone) / gap
}

const elevationDeg = ([east, north, up]: Vec): number => (Math.atan2(up, Math.hypot(east, north)) * 180) / Math.PI

/**
 * The sun at equal times through a step: turned about the axis of the earth. Of a step that stands for many days each time
 * is taken on another of them, the days in an order that visits early and late ones in turn.
 */
function sunPath(step: SunStep, latitudeDeg: number, minutes: number): Vec[] {
  const days = step.declinationsDeg
  const count = Math.max(1, Math.ceil((step.spanH * 60) / minutes - 1e-9)) * (days === undefined ? 1 : 2)
  const [sinPhi, cosPhi] = [sinDeg(latitudeDeg), cosDeg(latitudeDeg)]
  const sinDay = step.towards[1] * cosPhi + step.towards[2] * sinPhi
  const hourAngle = Math.atan2(-step.towards[0], step.towards[2] * cosPhi - step.towards[1] * sinPhi)
  return Array.from({ length: count }, (_, at) => {
    const angle = hourAngle + (((at + 0.5) / count - 0.5) * step.spanH * Math.PI) / 12
    const day = days?.[Math.floor(((0.5 + at * 0.6180339887498949) % 1) * days.length)]
    const sine = day === undefined ? sinDay : sinDeg(day)
    const cosine = Math.sqrt(1 - sine * sine)
    return [
      -cosine * Math.sin(angle),
      cosPhi * sine - sinPhi * cosine * Math.cos(angle),
      sinPhi * sine + cosPhi * cosine * Math.cos(angle),
    ]
  })
}

/** One of so many directions that fill the half space over a surface, dense by the cosine of incidence. */
function directionOf({ right, upSlope, away }: Frame, index: number, count: number): Vec {
  const squared = (index + 0.5) / count
  const turn = 2 * Math.PI * BY_FIVE[index]!
  const sine = Math.sqrt(squared)
  return add(
    add(times(right, sine * Math.cos(turn)), times(upSlope, sine * Math.sin(turn))),
    times(away, Math.sqrt(1 - squared)),
  )
}

/** Nearest cut of a ray with a thing, ft; Infinity for none. */
function reach(thing: Thing, from: Vec, along: Vec): number {
  let nearest = Infinity
  for (const piece of thing.pieces) {
    const cut = piece(from, along)
    if (cut < nearest) nearest = cut
  }
  return nearest
}

/**
 * Casts the rays of a house.
 *
 * @param house The project, as written.
 * @param modules Where its modules lie on their planes.
 * @param thicknessIn Thickness of a module, in.
 */
export function castHouse(
  house: HouseInput,
  modules: readonly PlacedModule[],
  thicknessIn: number,
  fineness: Fineness = USUAL,
): CastModule[] {
  const { horizon, latitude_deg: latitudeDeg } = house.site
  return buildWorld(house, modules, thicknessIn).map((glass) => {
    let looked = 0
    const things = glass.things.filter(
      (thing) => thing.module !== glass.id && (thing.arrays?.includes(glass.array) ?? true),
    )
    /** Share of light that passes all things in the way, in a month. */
    const passing = (from: Vec, along: Vec, month: number): number => {
      let share = 1
      for (const thing of things)
        if (thing.passes[month]! < 1 && reach(thing, from, along) < Infinity) {
          share *= thing.passes[month]!
          if (share === 0) return 0
        }
      return share
    }
    return {
      id: glass.id,
      array: glass.array,
      beam: (step) => {
        let [arriving, all] = [0, 0]
        for (const sun of sunPath(step, latitudeDeg, fineness.sunMinutes)) {
          const slant = inner(sun, glass.frame.away)
          if (slant <= 0 || sun[2] <= 0) continue
          all += slant * fineness.points
          if (elevationDeg(sun) < horizonDeg(horizon, sun)) continue
          for (let each = 0; each < fineness.points; each += 1) {
            arriving += slant * passing(pointOf(glass, looked), sun, step.month)
            looked += 1
          }
        }
        return all > 0 ? arriving / all : 1
      },
      diffuse: () => diffuseShares(glass, things, fineness.directions, horizon),
    }
  })
}

/** Sky: directions above level. Ground: directions below it, dark where they meet a thing, bright on the module's own roof. */
function diffuseShares(
  glass: Glass,
  things: readonly Thing[],
  count: number,
  horizon: HouseInput['site']['horizon'],
): DiffuseShares {
  const ownRoof = things.filter((thing) => thing.roofOf === glass.plane)
  const others = things.filter((thing) => thing.roofOf !== glass.plane)
  const sky = new Tally()
  const ground = new Tally()
  for (let index = 0; index < count; index += 1) {
    const point = pointOf(glass, index)
    const along = directionOf(glass.frame, index, count)
    const roof = Math.min(...ownRoof.map((thing) => reach(thing, point, along)))
    if (along[2] <= 0) ground.add(others.filter((thing) => reach(thing, point, along) < roof))
    else if (roof < Infinity || elevationDeg(along) < horizonDeg(horizon, along)) sky.addDark()
    else sky.add(others.filter((thing) => reach(thing, point, along) < Infinity))
  }
  return { sky: sky.shares(), ground: ground.shares() }
}

/** Counts rays, and for each month the light that arrives along them. */
class Tally {
  private rays = 0
  private free = 0
  private readonly through = Array.from({ length: 12 }, () => 0)

  addDark(): void {
    this.rays += 1
  }

  add(met: readonly Thing[]): void {
    this.rays += 1
    if (met.length === 0) this.free += 1
    else
      for (let month = 0; month < 12; month += 1)
        this.through[month]! += met.reduce((left, thing) => left * thing.passes[month]!, 1)
  }

  /** Shares of 1 by month; whole where there are no rays. */
  shares(): number[] {
    return this.through.map((sum) => (this.rays > 0 ? (this.free + sum) / this.rays : 1))
  }
}

/**
 * Loss of a module's light over a year, %.
 *
 * @param module As cast.
 * @param light Unshaded light of the year on it.
 */
export function lightLossPct(module: CastModule, light: LightOfYear): number {
  const { sky, ground } = module.diffuse()
  let [arriving, all] = [0, 0]
  for (const step of light.suns) {
    if (step.amount <= 0) continue
    all += step.amount
    arriving += step.amount * module.beam(step)
  }
  for (let month = 0; month < 12; month += 1) {
    all += light.sky[month]! + light.ground[month]!
    arriving += light.sky[month]! * sky[month]! + light.ground[month]! * ground[month]!
  }
  return 100 * (1 - arriving / all)
}
