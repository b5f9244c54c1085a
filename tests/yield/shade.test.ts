import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { buildScene, isMet } from '../../src/scene/index.js'
import { horizonElevationDeg, planeAxes } from '../../src/sun/index.js'
import { placeModules } from '../../src/roof/index.js'
import { estimateYield, type YieldValues } from '../../src/yield/index.js'

const RAD = Math.PI / 180
const towards = (azimuth: number, elevation: number) => ({
  east: Math.sin(azimuth * RAD) * Math.cos(elevation * RAD),
  north: Math.cos(azimuth * RAD) * Math.cos(elevation * RAD),
  up: Math.sin(elevation * RAD),
})

/** Solids round the array of a house that is changed, and the middle of its modules. */
function solidsOf(change: (project: Project) => void) {
  const project = houseOf(change)
  const scene = buildScene(project, placeModules(project))
  const middles = scene.faces.map(({ middle }) => middle)
  const mean = (pick: (middle: (typeof middles)[number]) => number) =>
    middles.reduce((sum, middle) => sum + pick(middle), 0) / middles.length
  const origin = { east: mean(({ east }) => east), north: mean(({ north }) => north), up: mean(({ up }) => up) }
  return { origin, solid: scene.worlds.get('south')!.solids[0]! }
}

describe('horizon', () => {
  const points = [
    { azimuthDeg: 90, elevationDeg: 10 },
    { azimuthDeg: 180, elevationDeg: 20 },
    { azimuthDeg: 270, elevationDeg: 0 },
  ]
  it.each([
    [90, 10],
    [135, 15],
    [180, 20],
    [225, 10],
    [270, 0],
    [0, 5],
    [360, 5],
    [45, 7.5],
  ])('at azimuth %i stands at %f degrees', (azimuth, elevation) => {
    expect(horizonElevationDeg(points, azimuth)).toBeCloseTo(elevation, 9)
  })
})

describe('far obstacle', () => {
  // 20 ft wide and 10 ft above the array at 40 ft: seen from the middle it is 2 atan(10/40) = 28.07 deg wide and
  // atan(10/40) = 14.04 deg high straight on (plane trigonometry).
  const { origin, solid: tree } = solidsOf((project) => {
    project.site.obstacles = {
      tree: { bearing_deg: 180, distance_ft: 40, width_ft: 20, height_ft: 10, base_height_ft: -5 },
    }
  })
  const hides = (north: number, azimuth: number, elevation: number): boolean =>
    isMet(tree, origin.east, origin.north + north, origin.up, towards(azimuth, elevation))
  it.each([
    [180, 14.0, true],
    [180, 14.1, false],
    [194, 5, true],
    [194.1, 5, false],
    [166, 5, true],
    [0, 5, false],
    [180, -8, false],
  ])('against azimuth %f, elevation %f: %s', (azimuth, elevation, hidden) => {
    expect(hides(0, azimuth, elevation)).toBe(hidden)
  })

  it('is seen from a module ten feet nearer as higher', () => {
    expect(hides(-10, 180, 18.4)).toBe(true)
    expect(hides(-10, 180, 18.5)).toBe(false)
  })
})

describe('box on the roof', () => {
  const { solid: box } = solidsOf((project) => {
    const plane = project.roof_planes['south']!
    plane.tilt_deg = 0
    plane.azimuth_deg = 180
    plane.obstructions = { chimney: { x_ft: 10, y_ft: 5, width_ft: 2, length_ft: 2, height_ft: 4 } }
  })
  // On a level roof that faces south x is east and y is north.
  const hides = (x: number, y: number, up: number, azimuth: number): boolean =>
    isMet(box, x, y, up, towards(azimuth, 45))
  it('shades a point along its shadow, as long as height over slope of the light', () => {
    // Light from the east at 45 degrees above the roof: the shadow of a 4 ft box reaches 4 ft behind it.
    expect(hides(6.1, 6, 0, 90)).toBe(true)
    expect(hides(5.9, 6, 0, 90)).toBe(false)
    expect(hides(6.1, 7.1, 0, 90)).toBe(false)
    expect(hides(6.1, 6, 0, 270)).toBe(false)
    expect(hides(6.1, 6, 4.01, 90)).toBe(false)
  })

  it('has plane axes at right angles that turn with the roof', () => {
    const { x, y, normal } = planeAxes(30, 180)
    expect(x.east).toBeCloseTo(1, 12)
    expect(y.up).toBeCloseTo(0.5, 12)
    expect(normal.north).toBeCloseTo(-0.5, 12)
  })
})

function house(change: (project: Project) => void): YieldValues {
  return estimateYield(houseOf(change)).values
}

function houseOf(change: (project: Project) => void): Project {
  const project: Project = {
    format: 'gablewatt/2',
    title: 'shade',
    site: { latitude_deg: 38.75, longitude_deg: -90.37, elevation_ft: 500 },
    roof_planes: {
      south: { azimuth_deg: 180, tilt_deg: 26.6, outline: { shape: 'rectangle', width_ft: 40, depth_ft: 17 } },
    },
    arrays: {
      south: {
        roof_plane: 'south',
        module: 'm',
        inverter: 'i',
        mounting: 'near_roof',
        standoff_in: 4,
        arrangement: { blocks: { main: { orientation: 'portrait', rows: 1, columns: 6, x_ft: 4, y_ft: 2 } } },
      },
    },
    equipment: {
      modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35, length_in: 68, width_in: 45, thickness_in: 1.4 } },
      inverters: { i: { kind: 'module_level', ac_power_w: 380, weighted_efficiency_pct: 97 } },
    },
    losses: { snow_pct: 0 },
  }
  change(project)
  return project
}

describe('shade in the estimate', () => {
  const free = house(() => {})
  it('takes nothing where nothing stands', () => {
    expect(free.arrays['south']?.by_module.every((module) => Math.abs(module.light_pct - 100) < 1e-9)).toBe(true)
  })

  it('takes more for a higher wall, and diffuse light too', () => {
    const wall = (height: number, diffuse = true) =>
      house((project) => {
        project.site.obstacles = { wall: { bearing_deg: 180, distance_ft: 20, width_ft: 200, height_ft: height } }
        project.model = { diffuse_shading: diffuse }
      }).annual.ac_kwh
    expect(wall(5)).toBeLessThan(free.annual.ac_kwh)
    expect(wall(10)).toBeLessThan(wall(5))
    expect(wall(10)).toBeLessThan(wall(10, false))
  })

  it('lets light through by the transmittance of a tree', () => {
    const tree = (transmittance: number | number[]) =>
      house((project) => {
        project.site.obstacles = {
          tree: { bearing_deg: 180, distance_ft: 20, width_ft: 200, height_ft: 10, transmittance },
        }
      }).annual.ac_kwh
    expect(tree(1)).toBeCloseTo(free.annual.ac_kwh, 6)
    expect(tree(0.5)).toBeGreaterThan(tree(0))
    const leafless = [1, 1, 1, 0, 0, 0, 0, 0, 0, 0, 1, 1]
    expect(tree(leafless)).toBeGreaterThan(tree(0))
  })

  it('shades the modules next to a chimney most, module by module', () => {
    const values = house((project) => {
      const plane = project.roof_planes['south']
      if (plane !== undefined) {
        plane.obstructions = { chimney: { x_ft: 27.5, y_ft: 3, width_ft: 2.5, length_ft: 2.5, height_ft: 5 } }
      }
    })
    const light = values.arrays['south']?.by_module.map((module) => module.light_pct) ?? []
    expect(light).toHaveLength(6)
    expect(light[5]).toBeLessThan(light[4] ?? 0)
    expect(light[4]).toBeLessThan(light[0] ?? 0)
    expect(light[5]).toBeLessThan(95)
    // A shaded bypass section costs more than the light that is missing.
    expect(values.ladder.bypass).toBeLessThan(values.ladder.snow)
  })

  it('warns when modules have no places and something stands on the roof', () => {
    const project: Project = {
      format: 'gablewatt/2',
      title: 'unplaced',
      site: { latitude_deg: 38.75, longitude_deg: -90.37 },
      roof_planes: {
        south: {
          azimuth_deg: 180,
          tilt_deg: 26.6,
          obstructions: { chimney: { x_ft: 1, y_ft: 1, width_ft: 2, length_ft: 2, height_ft: 3 } },
        },
      },
      arrays: {
        south: { roof_plane: 'south', module: 'm', inverter: 'i', modules: 4, mounting: 'near_roof', standoff_in: 4 },
      },
      equipment: {
        modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35 } },
        inverters: { i: { kind: 'module_level', ac_power_w: 380, weighted_efficiency_pct: 97 } },
      },
    }
    expect(estimateYield(project).findings.map((finding) => finding.id)).toContain('yield.shade-without-places')
  })
})
