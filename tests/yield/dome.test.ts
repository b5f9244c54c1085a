import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { placeModules } from '../../src/roof/index.js'
import { buildScene } from '../../src/scene/index.js'
import { planArray } from '../../src/yield/array-plan.js'
import { domeShares } from '../../src/yield/shade/index.js'

const RAD = Math.PI / 180

function house(tiltDeg: number, change: (project: Project) => void): Project {
  const project: Project = {
    format: 'gablewatt/2',
    title: 'dome',
    site: { latitude_deg: 40, longitude_deg: -90 },
    roof_planes: {
      south: {
        azimuth_deg: 180,
        tilt_deg: tiltDeg,
        eave_height_ft: 10,
        eave_left: { x_ft: 0, y_ft: 0 },
        outline: { shape: 'rectangle', width_ft: 40, depth_ft: 17 },
      },
    },
    arrays: {
      south: {
        roof_plane: 'south',
        module: 'm',
        inverter: 'i',
        mounting: 'near_roof',
        standoff_in: 0,
        arrangement: { blocks: { main: { orientation: 'portrait', rows: 2, columns: 5, x_ft: 10, y_ft: 3 } } },
      },
    },
    equipment: {
      modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35, length_in: 68, width_in: 45 } },
      inverters: { i: { kind: 'module_level', ac_power_w: 380, weighted_efficiency_pct: 97 } },
    },
  }
  change(project)
  return project
}

function views(project: Project) {
  const placements = placeModules(project)
  return planArray(project, 'south', placements, buildScene(project, placements)).views
}

describe('the dome of the sky', () => {
  // Level ground beside a wall without end that stands up to the angle a above level: (1 + cos a) / 2 of an even sky
  // (view factor of an infinite strip, elementary).
  it.each([10, 20, 45])('is hidden by a long wall of %d deg as its view factor says', (angle) => {
    const height = 20 * Math.tan(angle * RAD)
    const project = house(0, ({ site }) => {
      site.obstacles = {
        wall: {
          corners: [-2000, 2000].flatMap((x) => [20, 21].map((y) => ({ x_ft: x, y_ft: x > 0 ? 41 - y : y }))),
          height_ft: 10 + height,
        },
      }
    })
    // Wall at y 20 ft; the middle of a module of row 1 is 5.83 ft from the eave.
    const [first] = views(project)
    const distance = 20 - (3 + 68 / 24)
    const seen = (1 + Math.cos(Math.atan(height / distance))) / 2
    const { sky } = domeShares(first!)
    expect(Math.abs(sky[0]! - seen)).toBeLessThan(0.003)
  })

  it('is within 0.12 % of the sky of what many more directions give, and 0.1 % of the ground as a plane sees it', () => {
    for (const tilt of [5, 27, 45]) {
      const project = house(tilt, (each) => {
        each.roof_planes['south']!.obstructions = {
          above: { kind: 'chimney', x_ft: 15, y_ft: 15, width_ft: 2.5, length_ft: 2, height_ft: 5 },
          beside: { kind: 'dormer', x_ft: 30, y_ft: 4, width_ft: 6, length_ft: 6, height_ft: 4 },
        }
        each.site.obstacles = {
          oak: { at: { x_ft: 10, y_ft: -25 }, width_ft: 24, height_ft: 40, transmittance: 0.2 },
          house: { at: { x_ft: 40, y_ft: -40 }, width_ft: 40, length_ft: 30, height_ft: 30 },
        }
      })
      for (const view of views(project)) {
        const [few, many] = [domeShares(view), domeShares(view, 2 ** 17)]
        expect(Math.abs(few.sky[0]! - many.sky[0]!)).toBeLessThan(0.0012)
        // A plane of tilt t sees (1 - cos t) / 2 of the ground.
        const groundView = (1 - Math.cos(tilt * RAD)) / 2
        expect(groundView * Math.abs(few.ground[0]! - many.ground[0]!)).toBeLessThan(0.001)
      }
    }
  })

  it.each([1, 2, 4, 5, 12])('is as bright for a module of %d bypass sections as for one of three', (sections) => {
    const near = (count: number) =>
      views(
        house(27, (each) => {
          each.roof_planes['south']!.obstructions = {
            wall: { kind: 'wing', x_ft: 2, y_ft: 0, width_ft: 7, length_ft: 12, height_ft: 8 },
          }
          each.site.obstacles = {
            oak: { at: { x_ft: 20, y_ft: -12 }, width_ft: 16, height_ft: 25, transmittance: 0.3 },
          }
          each.equipment.modules!['m']!.bypass_sections = count
        }),
      )
    const usual = near(3)
    near(sections).forEach((view, at) => {
      const [own, other] = [domeShares(view), domeShares(usual[at]!, 2 ** 17)]
      expect(other.sky[0]).toBeLessThan(0.97)
      expect(Math.abs(own.sky[0]! - other.sky[0]!)).toBeLessThan(0.0015)
    })
  })

  it('is hidden by a tree as much as it keeps light back, month by month', () => {
    const sky = (transmittance: number | number[]) =>
      domeShares(
        views(
          house(27, ({ site }) => {
            site.obstacles = { oak: { at: { x_ft: 15, y_ft: -20 }, width_ft: 20, height_ft: 35, transmittance } }
          }),
        )[0]!,
      ).sky
    const solid = 1 - sky(0)[0]!
    expect(solid).toBeGreaterThan(0.05)
    const bare = sky([0.5, 0.25, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0.5])
    expect((1 - bare[0]!) / solid).toBeCloseTo(0.5, 2)
    expect((1 - bare[1]!) / solid).toBeCloseTo(0.75, 2)
    expect(bare[2]).toBeCloseTo(1, 12)
    expect((1 - bare[3]!) / solid).toBeCloseTo(1, 2)
  })

  it('is half hidden twice by two trees in a row', () => {
    const sky = (two: boolean) =>
      domeShares(
        views(
          house(0, ({ site }) => {
            const wall = (y: number) => ({
              corners: [-500, 500].flatMap((x) => [0, 1].map((d) => ({ x_ft: x, y_ft: y + (x > 0 ? 1 - d : d) }))),
              height_ft: 25,
              transmittance: 0.5,
            })
            site.obstacles = two ? { a: wall(-8), b: wall(-8.5) } : { a: wall(-8) }
          }),
        )[0]!,
      ).sky[0]!
    expect((1 - sky(true)) / (1 - sky(false))).toBeCloseTo(1.5, 1)
  })

  it('leaves the ground as it is where only the own roof is below', () => {
    const [view] = views(house(30, () => {}))
    expect(domeShares(view!)).toEqual({ sky: new Float64Array(12).fill(1), ground: new Float64Array(12).fill(1) })
  })

  it('darkens the ground of rows on racks behind others', () => {
    const project = house(0, (each) => {
      each.arrays['south'] = {
        ...each.arrays['south']!,
        module_tilt_deg: 30,
        arrangement: {
          blocks: { main: { orientation: 'portrait', rows: 2, columns: 5, x_ft: 4, y_ft: 1, row_gap_in: 24 } },
        },
      }
    })
    const all = views(project)
    const [front, behind] = [domeShares(all[2]!), domeShares(all[7]!)]
    expect(front.ground[0]).toBe(1)
    expect(behind.ground[0]).toBeLessThan(0.8)
    expect(behind.sky[0]).toBeLessThan(front.sky[0]!)
  })
})
