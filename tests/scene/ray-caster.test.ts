// The ray caster itself, against shapes that can be worked out by hand.
import { describe, expect, it } from 'vitest'
import { convex, cylinder, prism, rectangle, triangles, type Corner } from './bodies.ts'
import { cornersOf } from './outline-corners.ts'
import type { HouseInput, OutlineInput, PlacedModule } from './house-input.ts'
import { castHouse, horizonDeg, USUAL } from './ray-caster.ts'
import { frameAt, sinDeg, towards, unit, type Vec } from './vectors.ts'

const sunAt = (bearingDeg: number, heightDeg: number): Vec => {
  const [east, north] = towards(bearingDeg)
  return unit([east, north, Math.tan((heightDeg * Math.PI) / 180)])
}

/** One module of 4 by 5 ft on a flat roof of its own, its lower left corner 1 ft in. */
function flat(rest: Partial<HouseInput['site']>, tilt = 0, standoffIn = 0): [HouseInput, PlacedModule[]] {
  const house: HouseInput = {
    site: { latitude_deg: 40, longitude_deg: -90, ...rest },
    roof_planes: { top: { azimuth_deg: 180, tilt_deg: tilt } },
    arrays: { a: { roof_plane: 'top', standoff_in: standoffIn } },
  }
  return [house, [{ id: 'a.r1c1', array: 'a', xFt: 1, yFt: 1, widthFt: 4, heightFt: 5 }]]
}

const still = (sun: Vec, month = 0) => ({ towards: sun, month, spanH: 0 })

describe('a frame', () => {
  it('of a slope that faces south has east to its right and rises to the north', () => {
    const { right, upSlope, away } = frameAt([0, 0, 0], 30, 180)
    expect(right[0]).toBeCloseTo(1, 12)
    expect(upSlope[1]).toBeCloseTo(Math.sqrt(0.75), 12)
    expect(upSlope[2]).toBeCloseTo(0.5, 12)
    expect(away[1]).toBeCloseTo(-0.5, 12)
  })
})

describe('bodies', () => {
  const cube = prism(
    [
      [1, 1],
      [3, 1],
      [3, 3],
      [1, 3],
    ],
    [
      { out: [0, 0, 1], limit: 2 },
      { out: [0, 0, -1], limit: 0 },
    ],
  )
  const meets = (from: Vec, along: Vec): boolean => cube.some((piece) => piece(from, along) < Infinity)

  it('are met from outside, from inside, and not behind the eye', () => {
    expect(meets([0, 2, 1], [1, 0, 0])).toBe(true)
    expect(meets([2, 2, 1], [0, 0, 1])).toBe(true)
    expect(meets([4, 2, 1], [1, 0, 0])).toBe(false)
    expect(meets([0, 2, 2.1], [1, 0, 0])).toBe(false)
    expect(meets([0, 2, 1.5], unit([1, 0, 0.4]))).toBe(true)
    expect(meets([0, 2, 1.5], unit([1, 0, 0.6]))).toBe(false)
  })

  it('of no thickness, a touch along a side, and a side seen on edge hide nothing', () => {
    const nothing = convex([
      { out: [1, 0, 0], limit: 1 },
      { out: [-1, 0, 0], limit: -1 },
    ])
    expect(nothing([0, 0, 0], [1, 0, 0])).toBe(Infinity)
    expect(rectangle(frameAt([1, 0, 0], 90, 270), 4, 4)([1, 0, 0], [0, 1, 0])).toBe(Infinity)
  })

  it('that are round are met at half their width', () => {
    const trunk = cylinder([0, 10, 0], 2, 1, 6)
    const up = (height: number): Vec => unit([0, 8, height])
    expect(trunk([1.99, 0, 3], [0, 1, 0])).toBeCloseTo(10 - Math.sqrt(4 - 1.99 ** 2), 9)
    expect(trunk([2.01, 0, 3], [0, 1, 0])).toBe(Infinity)
    expect(trunk([0, 0, 0.5], [0, 1, 0])).toBe(Infinity)
    expect(trunk([0, 0, 0], up(5.99))).toBeLessThan(Infinity)
    expect(trunk([0, 0, 0], up(6.01))).toBe(Infinity)
    expect(trunk([0, 10, 0], [0, 0, 1])).toBe(1)
  })

  it.each<[string, OutlineInput, number]>([
    ['rectangle', { shape: 'rectangle', width_ft: 20, depth_ft: 10 }, 200],
    ['hip', { shape: 'hip', width_ft: 20, depth_ft: 10, ridge_ft: 8, ridge_offset_ft: 2 }, 140],
    ['triangle', { shape: 'triangle', width_ft: 20, depth_ft: 10 }, 100],
    ...(['lower_left', 'lower_right', 'upper_left', 'upper_right'] as const).map(
      (notch_at): [string, OutlineInput, number] => [
        `l_shape, ${notch_at}`,
        { shape: 'l_shape', width_ft: 20, depth_ft: 10, notch_width_ft: 5, notch_depth_ft: 4, notch_at },
        180,
      ],
    ),
  ])('over a %s are cut into triangles that fill it', (_, outline, area) => {
    const sum = triangles(cornersOf(outline)).reduce(
      (total, [a, b, c]) => total + ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2,
      0,
    )
    expect(sum).toBeCloseTo(area, 9)
  })

  it('over a star and over a polygon written clockwise are filled too', () => {
    const star: Corner[] = [
      [0, 3],
      [-1, 1],
      [-3, 0],
      [-1, -1],
      [0, -3],
      [1, -1],
      [3, 0],
      [1, 1],
    ]
    for (const corners of [star, [...star].reverse()]) {
      const sum = triangles(corners).reduce(
        (total, [a, b, c]) => total + ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2,
        0,
      )
      expect(sum).toBeCloseTo(12, 9)
    }
  })
})

describe('beam', () => {
  it('is cut by the shadow of a box as trigonometry says', () => {
    // A box 2 ft high south of the module, its north face 0.5 ft from it, as wide as the world: in a sun at 45 deg the
    // shadow is 2 ft long and takes 1.5 of 5 ft.
    const [house, modules] = flat({})
    const box = { x_ft: -100, y_ft: -1.5, width_ft: 200, length_ft: 2, height_ft: 2 }
    const cast = castHouse(
      { ...house, roof_planes: { top: { azimuth_deg: 180, tilt_deg: 0, obstructions: { box } } } },
      modules,
      0,
      { ...USUAL, points: 5000 },
    )[0]!
    expect(cast.beam(still(sunAt(180, 45)))).toBeCloseTo(0.7, 3)
    expect(cast.beam(still(sunAt(0, 45)))).toBeCloseTo(1, 9)
    // In a sun at 60 deg from the side the shadow reaches as far to the north as 2 cos(60) ft at 45 deg of height.
    expect(cast.beam(still(sunAt(120, 45)))).toBeCloseTo(0.9, 3)
  })

  it('passes leaves by month, through two trees by the product', () => {
    const leaves = Array.from({ length: 12 }, (_, month) => (month === 6 ? 0.3 : 0.8))
    const tree = { bearing_deg: 180, distance_ft: 40, width_ft: 400, height_ft: 80, transmittance: leaves }
    const [house, modules] = flat({ obstacles: { tree, far: { ...tree, distance_ft: 50, transmittance: 0.5 } } })
    const cast = castHouse(house, modules, 0, USUAL)[0]!
    expect(cast.beam(still(sunAt(180, 40), 6))).toBeCloseTo(0.15, 9)
    expect(cast.beam(still(sunAt(180, 40), 0))).toBeCloseTo(0.4, 9)
    expect(cast.beam(still(sunAt(180, 61), 0))).toBeCloseTo(0.8, 1)
  })

  it('stops below the far horizon, which is straight between its points', () => {
    const horizon = [
      { azimuth_deg: 300, elevation_deg: 30 },
      { azimuth_deg: 90, elevation_deg: 10 },
    ]
    expect(horizonDeg(horizon, towards(195))).toBeCloseTo(20, 9)
    expect(horizonDeg(horizon, towards(0))).toBeCloseTo(22, 9)
    const cast = castHouse(...([...flat({ horizon }), 0] as const))[0]!
    expect(cast.beam(still(sunAt(195, 19.9)))).toBe(0)
    expect(cast.beam(still(sunAt(195, 20.1)))).toBeCloseTo(1, 9)
  })

  it('is followed through a step by turning the sun about the axis of the earth', () => {
    // At the equinox on the equator the sun moves 15 deg an hour straight down in the west: a horizon of 22.5 deg hides the
    // second of the two hours round 16:30. Weights are the sines of its height.
    const [house, modules] = flat({
      latitude_deg: 0,
      horizon: [
        { azimuth_deg: 0, elevation_deg: 22.5 },
        { azimuth_deg: 180, elevation_deg: 22.5 },
      ],
    })
    const cast = castHouse(house, modules, 0, { ...USUAL, sunMinutes: 0.25 })[0]!
    expect(cast.beam({ towards: sunAt(270, 22.5), month: 0, spanH: 2 })).toBeCloseTo(
      integral(22.5, 37.5) / integral(7.5, 37.5),
      2,
    )
  })
})

/** Integral of the sine between two angles in degrees. */
const integral = (from: number, to: number): number => Math.cos((from * Math.PI) / 180) - Math.cos((to * Math.PI) / 180)

describe('sky and ground', () => {
  const fine = { ...USUAL, directions: 30000 }

  it('of a free module are whole at any tilt', () => {
    for (const tilt of [0, 30, 90]) {
      const cast = castHouse(...([...flat({}, tilt), 0, fine] as const))[0]!
      expect(cast.diffuse().sky[0]).toBe(1)
      expect(cast.diffuse().ground[0]).toBe(1)
    }
  })

  it('lie above and below level as (1 + cos tilt) / 2 says', () => {
    // Seen straight on by an upright module, an endless wall of 45 deg leaves 1 - sin 45 of its sky, and nothing below level
    // is hidden where the wall begins at its height.
    const wall = { bearing_deg: 180, distance_ft: 1000, width_ft: 1e6, height_ft: 1000, base_height_ft: 0 }
    const [house, modules] = flat({ obstacles: { wall } }, 90)
    const { sky, ground } = castHouse(house, modules, 0, fine)[0]!.diffuse()
    expect(sky[0]).toBeCloseTo(1 - Math.SQRT1_2, 2)
    expect(ground[0]).toBeCloseTo(1, 2)
  })

  it('of a level module beside an endless wall keep (1 + cos of its height) / 2 of the sky', () => {
    for (const height of [200, 577.35, 1732.05]) {
      const wall = { bearing_deg: 90, distance_ft: 1000, width_ft: 1e6, height_ft: height }
      const [house, modules] = flat({ obstacles: { wall } })
      const { sky } = castHouse(house, modules, 0, fine)[0]!.diffuse()
      expect(sky[0]).toBeCloseTo((1 + Math.cos(Math.atan(height / 1000))) / 2, 3)
    }
  })

  it('below an even far horizon keep cos2 of its height', () => {
    for (const elevation of [5, 20, 45]) {
      const horizon = [0, 180].map((azimuth_deg) => ({ azimuth_deg, elevation_deg: elevation }))
      const { sky } = castHouse(...([...flat({ horizon }), 0, fine] as const))[0]!.diffuse()
      expect(sky[0]).toBeCloseTo(1 - sinDeg(elevation) ** 2, 3)
    }
  })
})
