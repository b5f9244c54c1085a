import { describe, expect, it } from 'vitest'
import { compareLosses, worst } from './compare-losses.ts'
import { inventedHouse, type HouseParts } from './invented-house.ts'
import type { PlaneInput } from './house-input.ts'

const rect = (width_ft: number, depth_ft: number) => ({ shape: 'rectangle' as const, width_ft, depth_ft })
const slope = (tilt: number, azimuth: number, rest: Partial<PlaneInput> = {}): PlaneInput => ({
  tilt_deg: tilt,
  azimuth_deg: azimuth,
  outline: rect(36, 20),
  ...rest,
})
const group = { plane: 'main', columns: 4, rows: 2, x: 8, y: 4 }
const chimney = (x: number, y: number, height = 5) => ({
  c: { x_ft: x, y_ft: y, width_ft: 2.5, length_ft: 2.5, height_ft: height, kind: 'chimney' },
})
const onePlane = (
  tilt: number,
  azimuth: number,
  rest: Partial<PlaneInput>,
  more: Partial<HouseParts> = {},
): HouseParts => ({
  planes: { main: slope(tilt, azimuth, rest) },
  groups: { a: group },
  ...more,
})

const CASES: Record<string, HouseParts> = {
  'chimney above, 18 deg': onePlane(18, 180, { obstructions: chimney(14, 16.2) }),
  'chimney below, 30 deg': onePlane(30, 180, { obstructions: chimney(14, 1.4) }),
  'chimney beside, 45 deg, west': onePlane(45, 250, { obstructions: chimney(24, 9, 6) }),
  skylight: onePlane(30, 180, { obstructions: { s: { ...chimney(3, 6, 3).c, length_ft: 8, kind: 'skylight' } } }),
  'chimney beside, 35 S': onePlane(25, 0, { obstructions: chimney(5, 9) }, { latitude: -35 }),
  'chimney, 12 S': onePlane(18, 90, { obstructions: chimney(24, 5) }, { latitude: -12 }),
  'chimney, 64 N': onePlane(40, 180, { obstructions: chimney(14, 1.4) }, { latitude: 64 }),
  'steep 70': onePlane(70, 180, { obstructions: chimney(24, 9, 3) }),
  'flat with parapet': onePlane(0, 180, {
    obstructions: { p: { x_ft: 0, y_ft: 0, width_ft: 36, length_ft: 1, height_ft: 3, kind: 'chimney' } },
  }),
  'far obstacle': onePlane(
    30,
    180,
    {},
    { site: { obstacles: { t: { bearing_deg: 190, distance_ft: 38, width_ft: 18, height_ft: 14 } } } },
  ),
  'far obstacle with crown': onePlane(
    30,
    180,
    {},
    {
      site: {
        obstacles: {
          t: {
            bearing_deg: 140,
            distance_ft: 25,
            width_ft: 18,
            height_ft: 14,
            base_height_ft: -4,
            transmittance: [0.6, 0.6, 0.5, 0.3, 0.2, 0.1, 0.1, 0.1, 0.1, 0.2, 0.4, 0.6],
          },
        },
      },
    },
  ),
  'tree 6 ft at 40 ft': onePlane(
    30,
    180,
    {},
    { site: { obstacles: { t: { bearing_deg: 180, distance_ft: 40, width_ft: 6, height_ft: 6 } } } },
  ),
  horizon: onePlane(
    30,
    180,
    {},
    {
      site: {
        horizon: [
          { azimuth_deg: 60, elevation_deg: 4 },
          { azimuth_deg: 120, elevation_deg: 22 },
          { azimuth_deg: 200, elevation_deg: 6 },
          { azimuth_deg: 280, elevation_deg: 12 },
        ],
      },
    },
  ),
  'racks on flat': {
    planes: { main: slope(0, 180, { outline: rect(36, 30) }) },
    groups: { a: { ...group, rows: 3, rowGapIn: 30, moduleTilt: 25, standoffIn: 24, orientation: 'landscape' } },
  },
  'racks on slope turned': {
    planes: { main: slope(10, 90, { outline: rect(40, 34) }) },
    groups: {
      a: {
        ...group,
        columns: 3,
        rows: 3,
        rowGapIn: 40,
        moduleTilt: 25,
        moduleAzimuth: 180,
        standoffIn: 30,
        orientation: 'landscape',
      },
    },
  },
}

describe('loss of light, program against ray caster', () => {
  for (const [name, parts] of Object.entries(CASES))
    it(name, () => {
      const compared = compareLosses(inventedHouse(parts))
      process.stderr.write(
        `${name.padEnd(30)} worst ${worst(compared).toFixed(3)}  ${compared.map((c) => `${c.program.toFixed(2)}/${c.cast.toFixed(2)}`).join(' ')}\n`,
      )
      expect(Math.abs(worst(compared))).toBeLessThan(0.3)
    })
})
