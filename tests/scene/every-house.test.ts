// What must hold for every house, drawn at random: more things never give more light or energy, mirrored houses have mirrored
// figures, and the ray caster agrees.
import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { runYield } from '../../src/yield/index.js'
import { compareLosses, skyOver, worst, type Weather } from './compare-losses.ts'
import type { HouseInput } from './house-input.ts'
import { mirroredEastWest, mirroredId, mirroredNorthSouth, skiesOfBothSides } from './mirror.ts'
import { inventedHouse } from './invented-house.ts'
import { houseWith, randomHouse } from './random-houses.ts'

/** Light and energy of every module, by id. */
function modulesOf(house: HouseInput, { climate, steps }: Weather): { id: string; lost: number; kwh: number }[] {
  const { values } = runYield(house as unknown as Project, new Map(), { climate, steps }).result
  return values.modules.map(({ id, light_loss_pct, ac_kwh }) => ({ id, lost: light_loss_pct, kwh: ac_kwh }))
}

describe('a house', () => {
  it('has the same figures whatever house was worked out before it', () => {
    const facing = (azimuth_deg: number, tilt_deg = 0): HouseInput =>
      inventedHouse({
        planes: {
          main: {
            tilt_deg,
            azimuth_deg,
            outline: { shape: 'rectangle', width_ft: 36, depth_ft: 20 },
            obstructions: { c: { x_ft: 14, y_ft: 1, width_ft: 2, length_ft: 2, height_ft: 6 } },
          },
        },
        groups: { a: { plane: 'main', columns: 2, rows: 1, x: 12, y: 4 } },
      })
    const weather = skyOver(38)
    const after = (...before: HouseInput[]): unknown => {
      for (const house of before) modulesOf(house, weather)
      return modulesOf(facing(180), weather)
    }
    expect(after(facing(180, 30), facing(90))).toEqual(after(facing(180, 30)))
  })
})

describe('a house drawn at random', () => {
  it('loses the light that the ray caster says', () => {
    fc.assert(
      fc.property(randomHouse, (random) => {
        // Half of the houses lie within 0.04 points, 99 of 100 within 0.3; the others are rows close together on racks, whose
        // shallow shadows fall between points, and steep planes that face away from the sun and have little light to lose.
        expect(Math.abs(worst(compareLosses(houseWith(random))))).toBeLessThan(0.75)
      }),
      { numRuns: 12 },
    )
  })

  it('never has more light or energy with one thing more', () => {
    fc.assert(
      fc.property(randomHouse, (random) => {
        const weather = skyOver(random.parts.latitude ?? 0)
        const more = modulesOf(houseWith(random), weather)
        const fewer = modulesOf(houseWith(random, random.additions.length - 1), weather)
        more.forEach(({ lost, kwh }, at) => {
          expect(lost).toBeGreaterThanOrEqual(fewer[at]!.lost - 1e-9)
          // The curve of a partly shaded module is read between its points.
          expect(kwh).toBeLessThanOrEqual(fewer[at]!.kwh * (1 + 1e-6))
        })
      }),
      { numRuns: 20 },
    )
  })

  it.each<[string, (house: HouseInput) => HouseInput, (weather: Weather) => readonly [Weather, Weather]]>([
    ['mirrored from east to west', mirroredEastWest, (weather) => [weather, weather]],
    ['on the other hemisphere, under the mirrored sun', mirroredNorthSouth, skiesOfBothSides],
  ])('has the same figures %s', (_, mirrored, skies) => {
    fc.assert(
      fc.property(randomHouse, fc.boolean(), (random, withDiffuse) => {
        const drawn = houseWith({ ...random, parts: { ...random.parts, sitePlan: undefined } })
        const house = { ...drawn, model: { diffuse_shading: withDiffuse } }
        const [here, there] = skies(skyOver(house.site.latitude_deg))
        const others = new Map(modulesOf(mirrored(house), there).map((module) => [module.id, module]))
        for (const { id, lost } of modulesOf(house, here))
          expect(Math.abs(others.get(mirroredId(house, id))!.lost - lost)).toBeLessThan(1e-9)
      }),
      { numRuns: 12 },
    )
  })
})
