// Things that touch modules, have no size, stand round the house, or meet the sun on an edge.
import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { runYield } from '../../src/yield/index.js'
import { compareLosses, skyOver, worst, type Weather } from './compare-losses.ts'
import type { BoxInput, HouseInput, ObstacleInput } from './house-input.ts'
import { inventedHouse } from './invented-house.ts'
import { sinDeg, cosDeg } from './vectors.ts'

const LATITUDE = 38

/** Two modules of 3.7 by 5.7 ft from (12, 4) on a plane of 36 by 20 ft that faces south, its eave over y = 0. */
function house(
  things: { boxes?: Record<string, BoxInput>; obstacles?: Record<string, ObstacleInput> },
  tilt = 25,
  inSpace = true,
): HouseInput {
  return inventedHouse({
    latitude: LATITUDE,
    planes: {
      main: {
        azimuth_deg: 180,
        tilt_deg: tilt,
        outline: { shape: 'rectangle', width_ft: 36, depth_ft: 20 },
        ...(inSpace ? { eave_left: { x_ft: 0, y_ft: 0 }, eave_height_ft: 10 } : {}),
        obstructions: things.boxes ?? {},
      },
    },
    groups: { a: { plane: 'main', columns: 2, rows: 1, x: 12, y: 4 } },
    site: { obstacles: things.obstacles ?? {} },
  })
}

/** Module sizes, in whole ft to the caster's digits. */
const [WIDE, LONG] = [3.7, 5.7]
const box = (x: number, y: number, width: number, length: number, height = 3): Record<string, BoxInput> => ({
  b: { x_ft: x, y_ft: y, width_ft: width, length_ft: length, height_ft: height, kind: 'chimney' },
})

const run = (of: HouseInput, { climate, steps }: Weather = skyOver(LATITUDE)) =>
  runYield(of as unknown as Project, new Map(), { climate, steps }).result
const lost = (of: HouseInput, weather?: Weather): number[] =>
  run(of, weather).values.modules.map(({ light_loss_pct }) => light_loss_pct)

describe('things that touch modules', () => {
  it.each<[string, Record<string, BoxInput>]>([
    ['below', box(12, 3, 2, 1)],
    ['above', box(12, 4 + LONG, 2, 1)],
    ['at the left', box(11, 5, 1, 3)],
    ['in the middle of the group, with the right side on the edge of the left module', box(12 + WIDE, 5, 0.04, 3)],
  ])('%s shade as the ray caster has it', (_, boxes) => {
    expect(Math.abs(worst(compareLosses(house({ boxes }))))).toBeLessThan(0.3)
  })
})

describe('things without size', () => {
  const free = lost(house({}))
  it('take nothing', () => {
    expect(free.every((each) => Math.abs(each) < 1e-9)).toBe(true)
    expect(lost(house({ boxes: box(12, 1, 4, 2, 0) }))).toEqual(free)
    const line = [0, 5, 10].map((x_ft) => ({ x_ft, y_ft: -10 }))
    expect(lost(house({ obstacles: { line: { corners: line, height_ft: 30 } } }))).toEqual(free)
  })

  it('but nearly so take next to nothing, and figures stay figures', () => {
    const [left, right] = lost(
      house({ obstacles: { wire: { at: { x_ft: 16, y_ft: -8 }, width_ft: 0.01, height_ft: 40 } } }),
    )
    for (const each of [left!, right!]) {
      expect(each).toBeGreaterThanOrEqual(0)
      expect(each).toBeLessThan(0.3)
    }
  })
})

describe('a solid round the house', () => {
  it('is an error, and no light comes through it', () => {
    const round = [
      { x_ft: -20, y_ft: -20 },
      { x_ft: 60, y_ft: -20 },
      { x_ft: 60, y_ft: 50 },
      { x_ft: -20, y_ft: 50 },
    ]
    const result = run(house({ obstacles: { hall: { corners: round, height_ft: 60 } } }))
    expect(
      result.findings.filter(({ id, severity }) => id === 'scene.module-inside' && severity === 'error'),
    ).not.toEqual([])
    for (const { light_loss_pct } of result.values.modules) expect(light_loss_pct).toBeGreaterThan(99.95)
  })

  it('of a height that ends below the modules takes nothing', () => {
    const low = [
      { x_ft: -20, y_ft: -20 },
      { x_ft: 60, y_ft: -20 },
      { x_ft: 60, y_ft: 50 },
      { x_ft: -20, y_ft: 50 },
    ]
    const result = run(house({ obstacles: { hall: { corners: low, height_ft: 9 } } }))
    expect(result.findings.filter(({ id }) => id === 'scene.module-inside')).toEqual([])
    for (const { light_loss_pct } of result.values.modules) expect(light_loss_pct).toBeLessThan(2)
  })
})

describe('a plane of any slope', () => {
  it.each([0, 59.9, 60, 60.1, 89, 90])('%f deg: a box above the modules takes what the ray caster says', (tilt) => {
    const boxes = box(14, 11, 5, 1, 2)
    expect(Math.abs(worst(compareLosses(house({ boxes }, tilt, false))))).toBeLessThan(0.3)
  })
})

describe('the sun on an edge', () => {
  const { climate, steps } = skyOver(LATITUDE)

  /** One hour at noon with the sun due south at a height. */
  const noon = (heightDeg: number): Weather => {
    const one = (value: number): Float64Array => Float64Array.of(value)
    return {
      climate,
      steps: {
        ...steps,
        length: 1,
        sunCount: 1,
        fileRow: Uint32Array.of(0),
        month: Uint8Array.of(2),
        sunIndex: Uint32Array.of(0),
        hours: one(1),
        spanH: one(1),
        sunEast: one(0),
        sunNorth: one(-cosDeg(heightDeg)),
        sunUp: one(sinDeg(heightDeg)),
        zenithRad: one(((90 - heightDeg) * Math.PI) / 180),
        airMass: one(1.5),
        extraterrestrialWM2: one(1361),
        dniWM2: one(800),
        dhiWM2: one(0),
        ghiWM2: one(0),
        dryBulbC: one(10),
        windMs: one(2),
      },
    }
  }

  it('of a tree with its middle due south takes as much from the left as from the right', () => {
    const tree = { at: { x_ft: 12 + WIDE + 0.25 / 12, y_ft: -20 }, width_ft: 6, height_ft: 60 }
    const [left, right] = lost(house({ obstacles: { tree } }), noon(45))
    expect(left).toBeGreaterThan(1)
    expect(left).toBeCloseTo(right!, 6)
  })

  it('of a wall takes more the higher it is, a little higher too', () => {
    const wall = (height: number): HouseInput =>
      house({
        obstacles: { w: { at: { x_ft: 18, y_ft: -10 }, width_ft: 400, length_ft: 1, faces_deg: 0, height_ft: height } },
      })
    const losses = [20, 21.5, 21.6, 21.7, 23, 26, 30, 40].map((height) => lost(wall(height), noon(40))[0]!)
    losses.forEach((each, at) => expect(each).toBeGreaterThanOrEqual(losses[at - 1] ?? 0))
    expect(losses[0]).toBeLessThan(20)
    expect(losses.at(-1)).toBeCloseTo(100, 6)
  })
})
