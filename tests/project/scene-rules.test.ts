import { describe, expect, test } from 'vitest'
import { loadText, problemsOf } from './support.js'

const house = (obstacles: string, plane = 'eave_left: { x_ft: 0, y_ft: 0 }, eave_height_ft: 10', more = ''): string => `
format: gablewatt/2
title: scene
site:
  latitude_deg: 38
  longitude_deg: -90
  obstacles: { ${obstacles} }
roof_planes:
  s: { azimuth_deg: 180, tilt_deg: 20, ${plane} }
arrays:
  s: { roof_plane: s, module: m, inverter: i, modules: 3, mounting: near_roof, standoff_in: 4 }
equipment:
  modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35 } }
  inverters: { i: { kind: module_level, ac_power_w: 450, weighted_efficiency_pct: 97 } }
${more}`
const first = (...args: Parameters<typeof house>): string => problemsOf(house(...args))[0] ?? ''
const square = 'corners: [{ x_ft: 0, y_ft: -30 }, { x_ft: 9, y_ft: -30 }, { x_ft: 9, y_ft: -20 }]'

describe('an obstacle', () => {
  test.each([
    'a: { bearing_deg: 3, distance_ft: 10, width_ft: 3, height_ft: 20, base_height_ft: -4 }',
    'a: { at: { x_ft: 0, y_ft: -30 }, width_ft: 3, height_ft: 20, ground_ft: 2 }',
    'a: { at: { x_ft: 0, y_ft: -30 }, width_ft: 3, length_ft: 4, faces_deg: 20, height_ft: 20 }',
    `a: { ${square}, height_ft: 20, transmittance: 0.4 }`,
  ])('has one place and one shape: %s', (obstacle) => {
    expect(Object.keys(loadText(house(obstacle)).project.site.obstacles ?? {})).toEqual(['a'])
  })

  test.each([
    ['a: { height_ft: 20 }', 'site.obstacles.a.bearing_deg  missing; state where it is'],
    ['a: { bearing_deg: 3, width_ft: 3, height_ft: 20 }', 'site.obstacles.a.distance_ft  missing'],
    ['a: { bearing_deg: 3, distance_ft: 10, height_ft: 20 }', 'site.obstacles.a.width_ft  missing'],
    ['a: { bearing_deg: 3, distance_ft: 10, width_ft: 3, height_ft: 20, ground_ft: 1 }', 'ground_ft  goes with at'],
    ['a: { bearing_deg: 3, distance_ft: 10, width_ft: 3, height_ft: 20, length_ft: 1 }', 'length_ft  goes with at'],
    ['a: { at: { x_ft: 0, y_ft: -30 }, height_ft: 20 }', 'width_ft  missing; state the diameter'],
    [
      'a: { at: { x_ft: 0, y_ft: -30 }, width_ft: 3, height_ft: 20, faces_deg: 3 }',
      'faces_deg  a round thing faces nowhere',
    ],
    [
      'a: { at: { x_ft: 0, y_ft: -30 }, width_ft: 3, height_ft: 20, bearing_deg: 3 }',
      'bearing_deg  its place is given',
    ],
    [
      'a: { at: { x_ft: 0, y_ft: -30 }, width_ft: 3, height_ft: 20, distance_ft: 3 }',
      'distance_ft  its place is given',
    ],
    [
      'a: { at: { x_ft: 0, y_ft: -30 }, width_ft: 3, height_ft: 20, base_height_ft: 20 }',
      'base_height_ft  20 ft is not below',
    ],
    [`a: { ${square}, at: { x_ft: 0, y_ft: 0 }, height_ft: 20 }`, 'at  at and corners both give its place'],
    [`a: { ${square}, width_ft: 4, height_ft: 20 }`, 'width_ft  corners give the figure already'],
    [
      'a: { corners: [{ x_ft: 0, y_ft: 0 }, { x_ft: 9, y_ft: 9 }, { x_ft: 9, y_ft: 0 }, { x_ft: 0, y_ft: 8 }], height_ft: 20 }',
      'corners  the figure crosses or touches itself: the edge from corner 1 meets the edge from corner 3',
    ],
    [
      'a: { corners: [{ x_ft: 0, y_ft: 0 }, { x_ft: 5, y_ft: 5 }, { x_ft: 9, y_ft: 9 }], height_ft: 20 }',
      'corners  the figure has no area',
    ],
  ])('that is not one is refused with its place: %s', (obstacle, problem) => {
    expect(problemsOf(house(obstacle)).join('\n')).toContain(problem)
  })

  test('at a place of the plan needs a roof plane in space', () => {
    const tree = 'a: { at: { x_ft: 0, y_ft: -30 }, width_ft: 3, height_ft: 20 }'
    expect(first(tree, 'street_side: true')).toContain('site.obstacles.a.at  has a place on the plan, but none')
    expect(first(tree, 'eave_height_ft: 9')).toContain('none of the roof planes that it could shade does')
  })
})

describe('the place of a roof plane', () => {
  test('needs the height of its eave, and is given once', () => {
    expect(first('', 'eave_left: { x_ft: 0, y_ft: 0 }')).toContain('roof_planes.s.eave_height_ft  missing')
    const plan = `site_plan:
  lot: [{ x_ft: 0, y_ft: 0 }, { x_ft: 90, y_ft: 0 }, { x_ft: 90, y_ft: 90 }]
  roof_planes: { s: { eave_left: { x_ft: 1, y_ft: 2 } } }
`
    expect(first('', 'eave_left: { x_ft: 0, y_ft: 0 }, eave_height_ft: 9', plan)).toContain(
      'roof_planes.s.eave_left  site_plan.roof_planes.s gives the place of this plane already',
    )
    expect(loadText(house('', 'eave_height_ft: 9', plan)).project.site_plan?.roof_planes).toHaveProperty('s')
  })
})
