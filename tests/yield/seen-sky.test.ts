import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { placeModules } from '../../src/roof/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { seenSky } from '../../src/yield/index.js'

/** A level roof with one square thing of 4 ft, east of a single row of modules. */
function house(change: Partial<Project['site']> = {}, arranged = true): Project {
  return {
    format: 'gablewatt/2',
    title: 'seen',
    site: { latitude_deg: 38.75, longitude_deg: -90.37, elevation_ft: 500, ...change },
    roof_planes: {
      main: {
        azimuth_deg: 180,
        tilt_deg: 0,
        outline: { shape: 'rectangle', width_ft: 60, depth_ft: 20 },
        obstructions: { box: { x_ft: 40, y_ft: 8, width_ft: 4, length_ft: 4, height_ft: 10 } },
      },
    },
    arrays: {
      main: {
        roof_plane: 'main',
        module: 'm',
        inverter: 'i',
        mounting: 'near_roof',
        standoff_in: 4,
        ...(arranged
          ? { arrangement: { blocks: { a: { orientation: 'portrait', rows: 1, columns: 5, x_ft: 8, y_ft: 7 } } } }
          : { modules: 5 }),
      },
    },
    equipment: {
      modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35, length_in: 72, width_in: 48, thickness_in: 1.4 } },
      inverters: { i: { kind: 'module_level', ac_power_w: 400, weighted_efficiency_pct: 97 } },
    },
  } as unknown as Project
}

const placed = (project: Project) => placeModules(project, new Worksheet())

describe('what a place on the roof sees of the sky', () => {
  it('is hidden by a thing up to the elevation of its top, from the middle of the module', () => {
    const project = house()
    const places = placed(project)
    const sky = seenSky(project, places, { module: 'main.r1c5' })
    const { xFt, widthFt, yFt, heightFt } = places.find(({ id }) => id === 'main.r1c5')!
    const [x, y] = [xFt + widthFt / 2, yFt + heightFt / 2]
    // East through the box: its near side rises 10 ft above the roof, the module lies a little above it.
    const topDeg = (rise: number): number => (Math.atan2(rise, 40 - x) * 180) / Math.PI
    expect(y).toBeGreaterThan(8)
    expect(y).toBeLessThan(12)
    expect(sky.seen(90, topDeg(9))[0]).toBe(0)
    expect(sky.seen(90, topDeg(10.1))).toEqual(Array.from({ length: 12 }, () => 1))
    expect(sky.seen(270, 1)[6]).toBe(1)
    expect(sky).toMatchObject({ id: 'main.r1c5', isModule: true, latitudeDeg: 38.75, tiltDeg: 0, azimuthDeg: 180 })
  })

  it('is that of the module nearest to the middle of an array, or of an array without places', () => {
    const project = house()
    expect(seenSky(project, placed(project), { array: 'main' }).id).toBe('main.r1c3')
    const bare = house({}, false)
    const sky = seenSky(bare, placed(bare), { array: 'main' })
    expect(sky).toMatchObject({ id: 'main', isModule: false })
    expect(() => seenSky(bare, [], { module: 'main.r1c1' })).toThrow(/no module 'main.r1c1'/u)
  })

  it('ends at the far horizon', () => {
    const project = house({
      horizon: [
        { azimuth_deg: 0, elevation_deg: 5 },
        { azimuth_deg: 180, elevation_deg: 15 },
      ],
    })
    const { seen } = seenSky(project, placed(project), { array: 'main' })
    expect([14.5, 15.5].map((deg) => seen(180, deg)[0])).toEqual([0, 1])
    expect([9.5, 10.5].map((deg) => seen(270, deg)[0])).toEqual([0, 1])
  })
})
