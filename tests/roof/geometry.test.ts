import { tiltDegOf } from '../../src/project/facts.js'
import { describe, expect, test } from 'vitest'
import { roofSurface } from '../../src/roof/index.js'
import { planeAxes } from '../../src/sun/index.js'
import type { Outline } from '../../src/project/index.js'
import { StageError, Worksheet } from '../../src/worksheet/index.js'

function surface(outline: Outline, worksheet = new Worksheet()) {
  const result = roofSurface('south', { azimuth_deg: 180, tilt_deg: 60, outline }, worksheet)
  if (result === undefined) throw new Error('no surface')
  return result
}

function polygon(...corners: [x: number, y: number][]): Outline {
  return { shape: 'polygon', corners: corners.map(([x_ft, y_ft]) => ({ x_ft, y_ft })) }
}

function refusal(act: () => unknown): StageError {
  try {
    act()
  } catch (error) {
    if (error instanceof StageError) return error
  }
  throw new Error('nothing was refused')
}

describe('areas and edges', () => {
  // Elementary plane geometry: (a + b) / 2 * h and so on.
  test.each<[string, Outline, number, string]>([
    ['rectangle', { shape: 'rectangle', width_ft: 40, depth_ft: 16 }, 640, 'eave rake ridge rake'],
    ['trapezoid', { shape: 'hip', width_ft: 40, depth_ft: 15, ridge_ft: 20 }, 450, 'eave hip ridge hip'],
    ['triangle', { shape: 'triangle', width_ft: 24, depth_ft: 10 }, 120, 'eave hip hip'],
    ['hip without ridge', { shape: 'hip', width_ft: 24, depth_ft: 10, ridge_ft: 0 }, 120, 'eave hip hip'],
    ['polygon', polygon([0, 0], [10, 0], [14, 4], [14, 9], [7, 12], [0, 12]), 149.5, 'eave valley rake hip ridge rake'],
  ])('%s', (_, outline, areaFt2, kinds) => {
    const plane = surface(outline)
    expect(plane.areaFt2).toBeCloseTo(areaFt2, 9)
    expect(plane.planAreaFt2).toBeCloseTo(areaFt2 / 2, 9)
    expect(plane.edges.map((edge) => edge.kind).join(' ')).toBe(kinds)
  })

  test.each(['lower_left', 'lower_right', 'upper_left', 'upper_right'] as const)('L without %s', (notch_at) => {
    const size = { width_ft: 30, depth_ft: 20, notch_width_ft: 12, notch_depth_ft: 8 }
    const plane = surface({ shape: 'l_shape', ...size, notch_at })
    expect(plane.areaFt2).toBeCloseTo(504, 9)
    expect(plane.corners).toHaveLength(6)
    const level = notch_at.startsWith('lower') ? 'eave' : 'ridge'
    expect(plane.edges.filter((edge) => edge.kind === level)).toHaveLength(2)
  })

  test('inferred kinds of edges are told', () => {
    const worksheet = new Worksheet()
    surface(polygon([0, 0], [10, 0], [10, 8], [0, 8]), worksheet)
    const told = worksheet.result({}).assumptions.map(({ path, value }) => [path.split('.').at(-2), value])
    expect(told).toEqual([
      ['0', 'eave'],
      ['1', 'rake'],
      ['2', 'ridge'],
      ['3', 'rake'],
    ])
  })
})

describe('refused outlines', () => {
  test.each<[string, Outline, string, RegExp]>([
    [
      'bow tie',
      polygon([0, 0], [10, 0], [2, 8], [9, 9]),
      'roof_planes.south.outline.corners',
      /crosses itself.*corner 2.*corner 4/,
    ],
    ['clockwise', polygon([0, 0], [0, 8], [10, 8], [10, 0]), 'roof_planes.south.outline.corners', /clockwise/],
    ['flat', polygon([0, 0], [5, 0], [10, 0]), 'roof_planes.south.outline.corners', /no area/],
    [
      'spike',
      polygon([0, 0], [10, 0], [10, 8], [10, 4], [0, 4]),
      'roof_planes.south.outline.corners',
      /crosses itself/,
    ],
    ['double corner', polygon([0, 0], [10, 0], [10, 0], [10, 8]), 'roof_planes.south.outline.corners.1', /same point/],
    ['no corners', { shape: 'polygon' }, 'roof_planes.south.outline.corners', /needs corners/],
    ['no depth', { shape: 'rectangle', width_ft: 4 }, 'roof_planes.south.outline.depth_ft', /needs depth_ft/],
    ['no ridge', { shape: 'hip', width_ft: 4, depth_ft: 3 }, 'roof_planes.south.outline.ridge_ft', /needs ridge_ft/],
    [
      'no notch place',
      { shape: 'l_shape', width_ft: 9, depth_ft: 9, notch_width_ft: 3, notch_depth_ft: 3 },
      'roof_planes.south.outline.notch_at',
      /notch_at/,
    ],
    [
      'notch too large',
      { shape: 'l_shape', width_ft: 9, depth_ft: 9, notch_width_ft: 9, notch_depth_ft: 3, notch_at: 'lower_left' },
      'roof_planes.south.outline',
      /leaves nothing/,
    ],
  ])('%s', (_, outline, where, message) => {
    const error = refusal(() => surface(outline))
    expect(error.where).toBe(where)
    expect(error.message).toMatch(message)
    expect(error.fix).not.toBe('')
  })

  test('slope missing or contradictory', () => {
    expect(refusal(() => tiltDegOf({}, 'roof_planes.south')).message).toMatch(/slope .* not stated/)
    expect(refusal(() => tiltDegOf({ tilt_deg: 30, pitch_in_12: 6 }, 'roof_planes.south')).message).toMatch(
      /26\.6 degrees\) do not agree/,
    )
    expect(tiltDegOf({ pitch_in_12: 12 })).toBeCloseTo(45, 12)
  })
})

describe('plane to east, north, up', () => {
  test('south plane: x is east, y is north and up', () => {
    const axes = planeAxes(30, 180)
    expect(axes.x).toMatchObject({ east: expect.closeTo(1, 12), up: expect.closeTo(0, 12) })
    expect(axes.y.north).toBeCloseTo(Math.cos(Math.PI / 6), 12)
    expect(axes.y.up).toBeCloseTo(1 / 2, 12)
  })

  test.each([
    [90, { east: 0, north: 1 }],
    [270, { east: 0, north: -1 }],
    [0, { east: -1, north: 0 }],
  ])('seen from outside, the eave of a plane that faces %d runs to the right', (azimuth, right) => {
    const { x } = planeAxes(20, azimuth)
    expect(x.east).toBeCloseTo(right.east, 12)
    expect(x.north).toBeCloseTo(right.north, 12)
  })

  test.each([0, 33, 180, 211])('axes of azimuth %d are a right-handed set of unit vectors', (azimuth) => {
    const { x, y, normal } = planeAxes(35, azimuth)
    expect(x.north * y.up - x.up * y.north).toBeCloseTo(normal.east, 12)
    expect(x.up * y.east - x.east * y.up).toBeCloseTo(normal.north, 12)
    expect(x.east * y.north - x.north * y.east).toBeCloseTo(normal.up, 12)
  })
})
