// A house in a mirror: each module sees as much of the sky, of the ground and of the sun as its image does, to the last digits.
import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { placeModules } from '../../src/roof/index.js'
import { buildScene } from '../../src/scene/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { planArray } from '../../src/yield/array-plan.js'
import { moduleShade, type ModuleView } from '../../src/yield/shade/index.js'
import type { SkySteps } from '../../src/yield/index.js'
import { skyOver } from './compare-losses.ts'
import type { HouseInput } from './house-input.ts'
import { mirroredEastWest, mirroredId, mirroredNorthSouth, skiesOfBothSides } from './mirror.ts'
import { houseWith, randomHouse } from './random-houses.ts'

/** Relative; what is left are the last digits of sines, and sums in another order. */
const WITHIN = 1e-9

function viewsOf(house: HouseInput): Map<string, ModuleView> {
  const project = house as unknown as Project
  const placements = placeModules(project, new Worksheet())
  const { views, modules } = planArray(project, 'a', placements, buildScene(project, placements))
  return new Map(views.map((view, at) => [modules[at]!.id, view]))
}

/** Shares of the light of sky and ground, and sums over the sun's places of a month, which are the same in either order. */
function lightOf(view: ModuleView, steps: SkySteps): Record<string, number[]> {
  const { sky, ground, through, lit, time, sections } = moduleShade(steps, view, true)
  const twelve = (): number[] => Array.from({ length: 12 }, () => 0)
  const [passed, arrived, free] = [twelve(), twelve(), Array.from({ length: sections + 1 }, () => 0)]
  const seen = new Set<number>()
  for (let step = 0; step < steps.length; step += 1) {
    const sun = steps.sunIndex[step]!
    if (seen.has(sun)) continue
    seen.add(sun)
    passed[steps.month[step]!]! += through[sun]!
    arrived[steps.month[step]!]! += through[sun]! * lit[sun]!
    for (let count = 0; count <= sections; count += 1) free[count]! += time[sun * (sections + 1) + count]!
  }
  return { sky: [...sky], ground: [...ground], passed, arrived, free }
}

const isShaded = ({ sky, ground, arrived, passed }: Record<string, number[]>): boolean =>
  [...sky!, ...ground!].some((share) => share < 1) || arrived!.some((sum, at) => sum < passed![at]!)

const anyHouse = fc.record({
  random: randomHouse,
  sections: fc.constantFrom(1, 2, 3, 3, 4, 6),
  lying: fc.boolean(),
  horizon: fc.option(
    fc.uniqueArray(
      fc.record({
        azimuth_deg: fc.integer({ min: 0, max: 359 }),
        elevation_deg: fc.integer({ min: 0, max: 25 }),
      }),
      { minLength: 2, maxLength: 6, selector: ({ azimuth_deg }) => azimuth_deg },
    ),
    { nil: undefined },
  ),
})

describe.each([
  ['from east to west', mirroredEastWest, (weather: ReturnType<typeof skyOver>) => [weather, weather] as const],
  ['on the other hemisphere, under the mirrored sun', mirroredNorthSouth, skiesOfBothSides],
] as const)('a house drawn at random, mirrored %s', (_, mirrored, skies) => {
  it('gives each mirrored module the same light of sky, ground and sun', () => {
    let [modules, shaded] = [0, 0]
    fc.assert(
      fc.property(anyHouse, ({ random, sections, lying, horizon }) => {
        const drawn = houseWith({ ...random, parts: { ...random.parts, sitePlan: undefined } })
        const module = { ...drawn.equipment!.modules['m']!, bypass_sections: sections }
        const block = drawn.arrays['a']!.arrangement!.blocks['b']!
        const orientation = lying ? ('landscape' as const) : block.orientation
        const house: HouseInput = {
          ...drawn,
          equipment: { ...drawn.equipment!, modules: { m: module } },
          arrays: { a: { ...drawn.arrays['a']!, arrangement: { blocks: { b: { ...block, orientation } } } } },
          site: { ...drawn.site, ...(horizon === undefined ? {} : { horizon }) },
        }
        const [here, there] = skies(skyOver(house.site.latitude_deg))
        const images = viewsOf(mirrored(house))
        for (const [id, view] of viewsOf(house)) {
          const light = lightOf(view, here.steps)
          const image = lightOf(images.get(mirroredId(house, id))!, there.steps)
          modules += 1
          if (isShaded(light)) shaded += 1
          for (const [part, values] of Object.entries(light))
            values.forEach((value, at) => {
              const apart = Math.abs(value - image[part]![at]!)
              expect(apart, `${id}: ${part} ${at}`).toBeLessThanOrEqual(WITHIN * Math.max(1, Math.abs(value)))
            })
        }
      }),
      { numRuns: 120 },
    )
    expect(modules).toBeGreaterThan(200)
    expect(shaded).toBeGreaterThan(modules / 2)
  })
})
