import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { placeModules } from '../../src/roof/index.js'
import { buildScene, sceneFindings } from '../../src/scene/index.js'

/** An invented gable roof, 40 by 30 ft in plan, its eaves 10 ft high, with six modules on the south side. */
function gable(change: (project: Project) => void = () => {}): Project {
  const project: Project = {
    format: 'gablewatt/2',
    title: 'gable',
    site: { latitude_deg: 40, longitude_deg: -90 },
    roof_planes: {
      south: {
        azimuth_deg: 180,
        tilt_deg: 30,
        eave_height_ft: 10,
        eave_left: { x_ft: 0, y_ft: 0 },
        outline: { shape: 'rectangle', width_ft: 40, depth_ft: 15 / Math.cos(Math.PI / 6) },
      },
      north: {
        azimuth_deg: 0,
        tilt_deg: 30,
        eave_height_ft: 10,
        eave_left: { x_ft: 40, y_ft: 30 },
        outline: { shape: 'rectangle', width_ft: 40, depth_ft: 15 / Math.cos(Math.PI / 6) },
      },
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
  }
  change(project)
  return project
}

const told = (change?: (project: Project) => void): string[] => {
  const project = gable(change)
  return sceneFindings(project, buildScene(project, placeModules(project))).map(
    ({ severity, id, where }) => `${severity} ${id} ${where}`,
  )
}

const lot = [
  { x_ft: -50, y_ft: -50 },
  { x_ft: 90, y_ft: -50 },
  { x_ft: 90, y_ft: 80 },
  { x_ft: -50, y_ft: 80 },
]
const rectangle = (x: number, y: number, width: number, depth: number) => [
  { x_ft: x, y_ft: y },
  { x_ft: x + width, y_ft: y },
  { x_ft: x + width, y_ft: y + depth },
  { x_ft: x, y_ft: y + depth },
]

describe('what does not fit together in space', () => {
  it('is nothing where a gable roof stands as it is', () => {
    expect(told()).toEqual([])
  })

  it('is a plane that knows no place among several', () => {
    expect(
      told((project) => {
        delete project.roof_planes['south']!.eave_left
      }),
    ).toEqual(['note scene.plane-not-in-space roof_planes.south'])
    expect(
      told((project) => {
        delete project.roof_planes['south']!.eave_height_ft
        project.site.obstacles = { oak: { at: { x_ft: 10, y_ft: -20 }, width_ft: 20, height_ft: 30 } }
      }),
    ).toEqual(['warning scene.plane-not-in-space roof_planes.south'])
    expect(
      told((project) => {
        delete project.roof_planes['south']!.eave_left
        delete project.roof_planes['north']
      }),
    ).toEqual([])
  })

  it('is a module inside of something, and not one a foot beside it', () => {
    const oak = (y: number) =>
      told((project) => {
        project.site.obstacles = { oak: { at: { x_ft: 10, y_ft: y }, width_ft: 20, height_ft: 30 } }
      })
    expect(oak(0)).toContain('error scene.module-inside arrays.south')
    // The lowest module edge lies 2 ft up the slope: 1.73 ft behind the eave, 0.2 ft nearer for its height.
    expect(oak(-8.5)).toEqual([])
    expect(oak(-8.3)).toEqual(['error scene.module-inside arrays.south'])
  })

  it('is a plane inside a building that has a height as well', () => {
    const plan = (height: number | undefined, up: number | undefined = 0) =>
      told((project) => {
        project.site_plan = {
          ...(up === undefined || Number.isNaN(up) ? {} : { up_azimuth_deg: up }),
          lot,
          buildings: {
            house: { corners: rectangle(1, 1, 38, 28), ...(height === undefined ? {} : { height_ft: height }) },
          },
        }
      })
    expect(plan(undefined)).toEqual([])
    expect(plan(9.5)).toEqual(['warning scene.buried site_plan.buildings.house'])
    expect(plan(16)).toContain('warning scene.plane-inside roof_planes.south')
    expect(plan(undefined, Number.NaN)).toEqual(['warning scene.north-assumed site_plan.up_azimuth_deg'])
    expect(plan(undefined, 90)).toEqual([
      'warning scene.plane-off-building roof_planes.south',
      'warning scene.plane-off-building roof_planes.north',
      'note scene.building-without-height site_plan.buildings.house',
    ])
  })

  it('is a roof inside a roof, but no valley', () => {
    const wing = (y: number) =>
      told((project) => {
        project.roof_planes['wing'] = {
          azimuth_deg: 180,
          tilt_deg: 30,
          eave_height_ft: 10,
          eave_left: { x_ft: 29, y_ft: y },
          outline: { shape: 'rectangle', width_ft: 8, depth_ft: 10 },
        }
      })
    expect(wing(2)).toContain('warning scene.plane-inside roof_planes.wing')
    expect(wing(-6)).toEqual([])
  })

  it('is a tree inside the house, and a chimney beyond the roof', () => {
    expect(
      told((project) => {
        project.site.obstacles = { bush: { at: { x_ft: 20, y_ft: 15 }, width_ft: 5, height_ft: 8 } }
      }),
    ).toEqual(['warning scene.buried site.obstacles.bush'])
    const chimney = (x: number) =>
      told((project) => {
        project.roof_planes['south']!.obstructions = {
          stack: { kind: 'chimney', x_ft: x, y_ft: 10, width_ft: 2, length_ft: 2, height_ft: 4 },
        }
      })
    expect(chimney(41)).toEqual(['warning scene.floats roof_planes.south.obstructions.stack'])
    expect(chimney(39)).toEqual([])
    expect(chimney(-3)).toEqual(['warning scene.floats roof_planes.south.obstructions.stack'])
  })

  it('is a building of the plan without a height', () => {
    expect(
      told((project) => {
        project.site_plan = {
          up_azimuth_deg: 0,
          lot,
          buildings: { house: { corners: rectangle(1, 1, 38, 28) }, shed: { corners: rectangle(60, 0, 10, 10) } },
        }
      }),
    ).toEqual(['note scene.building-without-height site_plan.buildings.shed'])
  })
})
