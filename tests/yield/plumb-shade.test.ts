import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { placeModules } from '../../src/roof/index.js'
import { planArray } from '../../src/yield/array-plan.js'
import { buildScene } from '../../src/scene/index.js'
import { faceShadow } from '../../src/yield/shade/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { estimateYield } from '../../src/yield/index.js'

const RAD = Math.PI / 180

interface Thing {
  readonly x_ft: number
  readonly y_ft: number
  readonly width_ft: number
  readonly length_ft: number
  readonly height_ft: number
  readonly kind?: 'chimney' | 'skylight'
}

function house(tiltDeg: number, azimuthDeg: number, things: Record<string, Thing>): Project {
  return {
    format: 'gablewatt/2',
    title: 'plumb',
    site: { latitude_deg: 38.75, longitude_deg: -90.37, elevation_ft: 500 },
    roof_planes: {
      main: {
        azimuth_deg: azimuthDeg,
        tilt_deg: tiltDeg,
        outline: { shape: 'rectangle', width_ft: 40, depth_ft: 22 },
        obstructions: things,
      },
    },
    arrays: {
      main: {
        roof_plane: 'main',
        module: 'm',
        inverter: 'i',
        mounting: 'near_roof',
        standoff_in: 4,
        arrangement: { blocks: { a: { orientation: 'portrait', rows: 2, columns: 5, x_ft: 8, y_ft: 7 } } },
      },
    },
    equipment: {
      modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35, length_in: 68, width_in: 45, thickness_in: 1.4 } },
      inverters: { i: { kind: 'module_level', ac_power_w: 380, weighted_efficiency_pct: 97 } },
    },
    losses: { snow_pct: 0 },
  }
}

/**
 * Lit share of a module by walking along rays in a world of east, north and up, in steps of 0.02 ft: a point is inside
 * the thing when it is above the footprint as seen in plan, above the roof and below the level top. Nothing of the
 * product's coordinates is used but where the module lies on the slope.
 */
function litByWalking(
  tiltDeg: number,
  azimuthDeg: number,
  thing: Thing,
  module: { xFt: number; yFt: number; widthFt: number; heightFt: number },
  heightFt: number,
  sun: { east: number; north: number; up: number },
): number {
  const [sinT, cosT] = [Math.sin(tiltDeg * RAD), Math.cos(tiltDeg * RAD)]
  // In plan: ahead is uphill, right is along the eave as seen by someone who faces the slope.
  const uphill = { east: -Math.sin(azimuthDeg * RAD), north: -Math.cos(azimuthDeg * RAD) }
  const right = { east: uphill.north, north: -uphill.east }
  const run = sun.east * uphill.east + sun.north * uphill.north
  const side = sun.east * right.east + sun.north * right.north
  const topZ = (thing.y_ft + thing.length_ft) * sinT + thing.height_ft
  const [near, far] = [thing.y_ft * cosT, (thing.y_ft + thing.length_ft) * cosT]
  let lit = 0
  const grid = 24
  for (let i = 0; i < grid; i++) {
    for (let j = 0; j < grid; j++) {
      const along = module.xFt + (module.widthFt * (i + 0.5)) / grid
      const up = module.yFt + (module.heightFt * (j + 0.5)) / grid
      // The glass lies heightFt away from the roof at right angles.
      let [x, y, z] = [along, up * cosT - heightFt * sinT, up * sinT + heightFt * cosT]
      let hit = false
      for (let step = 0; step < 3000 && z < topZ && !hit; step++) {
        hit = x > thing.x_ft && x < thing.x_ft + thing.width_ft && y > near && y < far
        x += side * 0.02
        y += run * 0.02
        z += sun.up * 0.02
      }
      if (!hit) lit++
    }
  }
  return lit / grid ** 2
}

describe('things on a roof plane have plumb sides and level tops', () => {
  const chimney: Thing = { x_ft: 15, y_ft: 3, width_ft: 2.5, length_ft: 2.5, height_ft: 5, kind: 'chimney' }
  const cases: [number, number, number, number][] = []
  for (const [tilt, azimuth] of [
    [27, 180],
    [45, 180],
    [10, 140],
    [27, 250],
    [0, 180],
  ] as const) {
    for (const [sunAzimuth, elevation] of [
      [180, 28],
      [150, 20],
      [215, 35],
      [250, 12],
      [180, 60],
    ] as const) {
      cases.push([tilt, azimuth, sunAzimuth, elevation])
    }
  }
  it('shade modules as rays in the world say, from below, beside and above', () => {
    let shadedCases = 0
    for (const thing of [
      chimney,
      { ...chimney, x_ft: 27.5, y_ft: 12, height_ft: 4 },
      { ...chimney, y_ft: 19, height_ft: 6 },
    ]) {
      for (const [tilt, azimuth, sunAzimuth, elevation] of cases) {
        const project = house(tilt, azimuth, { chimney: thing })
        const placements = placeModules(project, new Worksheet())
        const plan = planArray(project, 'main', placements, buildScene(project, placements))
        const sun = {
          east: Math.sin(sunAzimuth * RAD) * Math.cos(elevation * RAD),
          north: Math.cos(sunAzimuth * RAD) * Math.cos(elevation * RAD),
          up: Math.sin(elevation * RAD),
        }
        for (const [index, placement] of placements.entries()) {
          const shadow = faceShadow(plan.views[index]!, sun)
          const lit = litByWalking(tilt, azimuth, thing, placement, 5.4 / 12, sun)
          // 48 points against 576.
          expect(Math.abs(shadow.lit - lit)).toBeLessThan(0.07)
          if (lit < 0.9) shadedCases++
        }
      }
    }
    expect(shadedCases).toBeGreaterThan(40)
  })

  const cost = (things: Record<string, Thing>, tilt = 27): number =>
    100 *
    (1 -
      estimateYield(house(tilt, 180, things)).values.annual.ac_kwh /
        estimateYield(house(tilt, 180, {})).values.annual.ac_kwh)

  it('stand as they are told on a level roof, whatever they are', () => {
    expect(cost({ a: { ...chimney, kind: 'skylight' } }, 0)).toBeCloseTo(cost({ a: chimney }, 0), 9)
  })

  it('run with the roof on top when they are skylights', () => {
    // A skylight stands as high above the roof at its lower end as at its upper one.
    const skylight: Thing = { x_ft: 15, y_ft: 1.8, width_ft: 3, length_ft: 5, height_ft: 1.5 }
    expect(cost({ a: { ...skylight, kind: 'skylight' } })).toBeLessThan(cost({ a: skylight }))
  })

  it('stand out from a wall at right angles, without NaN', () => {
    for (const tilt of [61, 75, 90]) expect(cost({ chimney: { ...chimney, y_ft: 19 } }, tilt)).toBeGreaterThan(0.1)
  })
})
