import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { placeModules } from '../../src/roof/index.js'
import { buildScene, isMet } from '../../src/scene/index.js'
import { RandomSource } from '../../src/values/index.js'
import { moduleModel } from '../../src/yield/equipment-models.js'
import { planArray } from '../../src/yield/array-plan.js'
import { Worksheet } from '../../src/worksheet/index.js'

/** An invented roof between a wing, a tree, a house, a wall and a chimney, near and far. */
const project: Project = {
  format: 'gablewatt/2',
  title: 'views',
  site: {
    latitude_deg: 40,
    longitude_deg: -90,
    obstacles: {
      oak: { at: { x_ft: 10, y_ft: -25 }, width_ft: 24, height_ft: 40, base_height_ft: 6, transmittance: 0.2 },
      house: { at: { x_ft: 60, y_ft: -40 }, width_ft: 40, length_ft: 30, faces_deg: 30, height_ft: 30 },
      wall: { bearing_deg: 120, distance_ft: 20, width_ft: 60, height_ft: 6, base_height_ft: -3 },
    },
  },
  roof_planes: {
    south: {
      azimuth_deg: 190,
      tilt_deg: 27,
      eave_height_ft: 10,
      eave_left: { x_ft: 0, y_ft: 0 },
      outline: { shape: 'rectangle', width_ft: 40, depth_ft: 17 },
      obstructions: { stack: { kind: 'chimney', x_ft: 25, y_ft: 3, width_ft: 2.5, length_ft: 2.5, height_ft: 5 } },
    },
    wing: {
      azimuth_deg: 100,
      tilt_deg: 35,
      eave_height_ft: 14,
      eave_left: { x_ft: 44, y_ft: -20 },
      outline: { shape: 'triangle', width_ft: 20, depth_ft: 12 },
    },
  },
  arrays: {
    south: {
      roof_plane: 'south',
      module: 'm',
      inverter: 'i',
      mounting: 'near_roof',
      standoff_in: 4,
      arrangement: { blocks: { main: { orientation: 'portrait', rows: 2, columns: 5, x_ft: 5, y_ft: 2 } } },
    },
  },
  equipment: {
    modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35, length_in: 68, width_in: 45 } },
    inverters: { i: { kind: 'module_level', ac_power_w: 380, weighted_efficiency_pct: 97 } },
  },
}

const placements = placeModules(project)
const plan = planArray(project, 'south', placements, buildScene(project, placements))

describe('the cones in which a module sees things', () => {
  it('hold every direction in which a point of it sees them, up or anywhere', () => {
    const random = new RandomSource(14)
    let met = 0
    let nearest = Infinity
    for (let draw = 0; draw < 60_000; draw += 1) {
      const view = plan.views[draw % plan.views.length]!
      const up = 2 * random.uniform() - 1
      const angle = 2 * Math.PI * random.uniform()
      const level = Math.sqrt(1 - up * up)
      const towards = { east: level * Math.sin(angle), north: level * Math.cos(angle), up }
      const at = 3 * Math.floor(random.uniform() * (view.points.length / 3))
      const [east, north, height] = [view.points[at]!, view.points[at + 1]!, view.points[at + 2]!]
      for (const seen of [...view.opaque, ...view.porous]) {
        if (!isMet(seen.solid, east, north, height, towards)) continue
        met += 1
        for (const cone of up > 0 ? [seen.above, seen.whole] : [seen.whole]) {
          const within = cone.east * towards.east + cone.north * towards.north + cone.up * towards.up - cone.cosine
          expect(within).toBeGreaterThanOrEqual(0)
          nearest = Math.min(nearest, within)
        }
      }
    }
    expect(met).toBeGreaterThan(3000)
    // The cones are no wider than they must be, or nothing would be gained: some direction comes near the rim.
    expect(nearest).toBeLessThan(0.1)
  })
})

describe('an array without places', () => {
  it('does not see the things on its own roof, but all else', () => {
    const { arrangement: _, ...array } = project.arrays['south']!
    const unplaced: Project = { ...project, arrays: { south: { ...array, modules: 6 } } }
    const { views, uncounted } = planArray(unplaced, 'south', [], buildScene(unplaced, []))
    expect(uncounted).toBe(1)
    const paths = new Set([...views[0]!.opaque, ...views[0]!.porous].map(({ solid }) => solid.path))
    expect(paths).toEqual(
      new Set(['site.obstacles.oak', 'site.obstacles.house', 'site.obstacles.wall', 'roof_planes.wing']),
    )
  })
})

describe('a module without a value for weak light', () => {
  it('counts with the middle of the usual range, said as an assumption', () => {
    const worksheet = new Worksheet()
    // 95 to 98 % of the rating at 200 W/m2: a straight line in the logarithm of the light.
    expect(moduleModel(plan, worksheet).lowLightSlope).toBeCloseTo((0.965 - 1) / Math.log(0.2), 12)
    const [assumed] = worksheet.result({}).assumptions
    expect(assumed).toMatchObject({ path: 'equipment.modules.m.efficiency_at_200_pct', value: 96.5, unit: '%' })
  })
})
