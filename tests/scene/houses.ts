// Invented houses in space and on planes of their own, for the comparison of the program with the ray caster.
import type { BoxInput, ObstacleInput, OutlineInput, PlaneInput } from './house-input.ts'
import type { Group, HouseParts } from './invented-house.ts'

const rect = (width_ft: number, depth_ft: number): OutlineInput => ({ shape: 'rectangle', width_ft, depth_ft })
const slope = (tilt: number, azimuth: number, rest: Partial<PlaneInput> = {}): PlaneInput => ({
  tilt_deg: tilt,
  azimuth_deg: azimuth,
  outline: rect(36, 20),
  ...rest,
})
const group: Group = { plane: 'main', columns: 2, rows: 2, x: 12, y: 4 }
const chimney = (x: number, y: number, height = 5): { c: BoxInput } => ({
  c: { x_ft: x, y_ft: y, width_ft: 2.5, length_ft: 2.5, height_ft: height, kind: 'chimney' },
})
const own = (plane: PlaneInput, more: Partial<HouseParts> = {}): HouseParts => ({
  planes: { main: plane },
  groups: { a: group },
  ...more,
})
const trees = (obstacles: Record<string, ObstacleInput>): Partial<HouseParts> => ({ site: { obstacles } })
/** Leaves from April to October. */
const LEAVES = [0.6, 0.6, 0.5, 0.3, 0.2, 0.1, 0.1, 0.1, 0.1, 0.2, 0.4, 0.6]

/** Planes that are worlds of their own: things on them, far things, horizons, racks. */
export const OWN_PLANES: Record<string, HouseParts> = {
  'steep plane behind a thin crown': own(
    slope(70, 180),
    trees({ t: { bearing_deg: 180, distance_ft: 25, width_ft: 60, height_ft: 15, transmittance: 0.0001 } }),
  ),
  'chimney above the array, 18 deg': own(slope(18, 180, { obstructions: chimney(14, 16.2) })),
  'chimney below it, 30 deg': own(slope(30, 180, { obstructions: chimney(14, 1.4) })),
  'chimney beside it, 45 deg, west': own(slope(45, 250, { obstructions: chimney(24, 9, 6) })),
  'dormer beside it': own(
    slope(30, 180, { obstructions: { s: { ...chimney(3, 6, 3).c, length_ft: 8, kind: 'dormer' } } }),
  ),
  'chimney, 35 S': own(slope(25, 0, { obstructions: chimney(5, 9) }), { latitude: -35 }),
  'chimney, 12 S': own(slope(18, 90, { obstructions: chimney(24, 5) }), { latitude: -12 }),
  'chimney, 64 N': own(slope(40, 180, { obstructions: chimney(14, 1) }), { latitude: 64 }),
  'box square to a wall of 70 deg': own(slope(70, 180, { obstructions: chimney(24, 9, 3) })),
  'parapet on a flat roof': own(
    slope(0, 180, {
      obstructions: { p: { x_ft: 0, y_ft: 0, width_ft: 36, length_ft: 1, height_ft: 3, kind: 'parapet' } },
    }),
  ),
  'wing on a slope': own(
    slope(22, 200, {
      obstructions: { w: { x_ft: 24.5, y_ft: 0, width_ft: 10, length_ft: 14, height_ft: 4, kind: 'wing' } },
    }),
  ),
  'far tree': own(slope(30, 180), trees({ t: { bearing_deg: 190, distance_ft: 38, width_ft: 18, height_ft: 14 } })),
  'far crown with leaves': own(
    slope(30, 180),
    trees({
      t: { bearing_deg: 140, distance_ft: 25, width_ft: 18, height_ft: 14, base_height_ft: -4, transmittance: LEAVES },
    }),
  ),
  'two far trees, one for the other array': {
    planes: { main: slope(26, 180, { outline: rect(50, 20) }) },
    groups: { a: { ...group, rows: 1 }, b: { ...group, rows: 1, x: 28 } },
    ...trees({
      t: { bearing_deg: 200, distance_ft: 30, width_ft: 12, height_ft: 16, arrays: ['b'] },
      u: { bearing_deg: 205, distance_ft: 40, width_ft: 20, height_ft: 18, transmittance: 0.4 },
    }),
  },
  'one crown behind another': own(
    slope(30, 180),
    trees({
      t: { bearing_deg: 180, distance_ft: 25, width_ft: 24, height_ft: 16, transmittance: 0.5 },
      u: { bearing_deg: 180, distance_ft: 45, width_ft: 50, height_ft: 30, transmittance: 0.4 },
    }),
  ),
  '6 ft tree at 40 ft': own(
    slope(30, 180),
    trees({ t: { bearing_deg: 180, distance_ft: 40, width_ft: 6, height_ft: 6 } }),
  ),
  'far horizon': own(slope(30, 180), {
    site: {
      horizon: [
        { azimuth_deg: 60, elevation_deg: 4 },
        { azimuth_deg: 120, elevation_deg: 22 },
        { azimuth_deg: 200, elevation_deg: 6 },
        { azimuth_deg: 280, elevation_deg: 12 },
      ],
    },
  }),
  'racks on a flat roof': {
    planes: { main: slope(0, 180, { outline: rect(36, 30) }) },
    groups: {
      a: { ...group, columns: 2, rows: 3, rowGapIn: 30, moduleTilt: 25, standoffIn: 24, orientation: 'landscape' },
    },
  },
  'rows of racks close together': {
    planes: { main: slope(0, 180, { outline: rect(36, 34) }) },
    groups: {
      a: { ...group, x: 3, y: 3, rows: 3, rowGapIn: 3, moduleTilt: 10, standoffIn: 12, orientation: 'landscape' },
    },
  },
  'rows of racks close together, 60 N': {
    latitude: 60,
    planes: { main: slope(0, 180, { outline: rect(36, 34) }) },
    groups: {
      a: { ...group, x: 3, y: 3, rows: 3, rowGapIn: 6, moduleTilt: 10, standoffIn: 12, orientation: 'landscape' },
    },
  },
  'rows of racks close together, 64 N': {
    latitude: 64,
    planes: { main: slope(0, 180, { outline: rect(36, 34) }) },
    groups: {
      a: { ...group, x: 3, y: 3, rows: 3, rowGapIn: 6, moduleTilt: 10, standoffIn: 12, orientation: 'landscape' },
    },
  },
  'racks on an east slope turned south': {
    planes: { main: slope(10, 90, { outline: rect(40, 34) }) },
    groups: {
      a: {
        ...group,
        columns: 2,
        rows: 3,
        rowGapIn: 40,
        moduleTilt: 25,
        moduleAzimuth: 180,
        standoffIn: 30,
        orientation: 'landscape',
      },
    },
  },
  'racks on a north slope turned south': {
    planes: { main: slope(20, 0, { outline: rect(40, 34) }) },
    groups: {
      a: {
        ...group,
        columns: 2,
        rows: 1,
        moduleTilt: 25,
        moduleAzimuth: 180,
        standoffIn: 30,
        orientation: 'landscape',
      },
    },
  },
}

const space = (
  tilt: number,
  azimuth: number,
  x: number,
  y: number,
  eave: number,
  rest: Partial<PlaneInput> = {},
): PlaneInput => slope(tilt, azimuth, { eave_left: { x_ft: x, y_ft: y }, eave_height_ft: eave, ...rest })

/** A gable of 36 by 34.64 ft with its ridge from west to east; the south eave runs along y = 0 from x = 0. */
const gable = (rest: Partial<PlaneInput> = {}): Record<string, PlaneInput> => ({
  main: space(30, 180, 0, 0, 10, rest),
  back: space(30, 0, 36, 34.64, 10),
})

/** Houses whose planes stand in space. */
export const IN_SPACE: Record<string, HouseParts> = {
  'gable, modules at the back': {
    planes: gable(),
    groups: { a: group, b: { plane: 'back', columns: 3, rows: 1, x: 8, y: 8 } },
  },
  'gable with a wing to the south': {
    planes: {
      ...gable(),
      east: space(35, 90, 12, -20, 9, { outline: rect(20, 8.5) }),
      west: space(35, 270, -2, 0, 9, { outline: rect(20, 8.5) }),
    },
    groups: { a: { ...group, x: 14, y: 3 }, e: { plane: 'east', columns: 3, rows: 1, x: 2, y: 1.5 } },
  },
  'low plane beside a high house': {
    planes: { main: space(15, 180, 0, 0, 8), high: space(25, 180, -30, 0, 18, { outline: rect(29, 20) }) },
    groups: { a: { ...group, x: 1 } },
  },
  'low plane below a higher one': {
    planes: { main: space(20, 180, 0, 0, 8, { outline: rect(36, 14) }), up: space(30, 180, 0, 13.2, 20) },
    groups: { a: { ...group, y: 1, rows: 2 } },
  },
  'chimney and a plane behind': {
    planes: gable({ obstructions: chimney(14, 16.5, 7) }),
    groups: { b: { plane: 'back', columns: 4, rows: 1, x: 10, y: 13 } },
  },
  'round tree and a house to the south': {
    planes: gable(),
    groups: { a: group },
    ...trees({
      maple: {
        at: { x_ft: 10, y_ft: -28 },
        width_ft: 20,
        height_ft: 34,
        base_height_ft: 7,
        ground_ft: 2,
        transmittance: LEAVES,
      },
      house: { at: { x_ft: 40, y_ft: -40 }, width_ft: 30, length_ft: 24, faces_deg: 20, height_ft: 28 },
    }),
  },
  'building of five corners and a wall of the plan, plan turned': {
    // Its place stands on the site plan.
    planes: { main: slope(30, 180, { eave_height_ft: 10 }) },
    groups: { a: group },
    site: {
      obstacles: {
        wall: {
          corners: [
            { x_ft: -14, y_ft: -10 },
            { x_ft: -4, y_ft: -10 },
            { x_ft: -4, y_ft: -9 },
            { x_ft: -13, y_ft: -9 },
            { x_ft: -13, y_ft: 14 },
            { x_ft: -14, y_ft: 14 },
          ],
          height_ft: 24,
          ground_ft: -1,
        },
      },
    },
    sitePlan: {
      up_azimuth_deg: 25,
      roof_planes: { main: { eave_left: { x_ft: 2, y_ft: -1 } } },
      buildings: {
        shed: {
          corners: [
            { x_ft: 10, y_ft: -30 },
            { x_ft: 28, y_ft: -30 },
            { x_ft: 30, y_ft: -20 },
            { x_ft: 20, y_ft: -14 },
            { x_ft: 10, y_ft: -18 },
          ],
          height_ft: 22,
        },
        unknown: {
          corners: [
            { x_ft: 40, y_ft: -12 },
            { x_ft: 50, y_ft: -12 },
            { x_ft: 50, y_ft: -2 },
          ],
        },
      },
    },
  },
  'concave crown with leaves': {
    planes: gable(),
    groups: { a: group },
    ...trees({
      hedge: {
        corners: [
          { x_ft: -8, y_ft: -22 },
          { x_ft: 30, y_ft: -22 },
          { x_ft: 30, y_ft: -6 },
          { x_ft: 22, y_ft: -6 },
          { x_ft: 22, y_ft: -14 },
          { x_ft: 0, y_ft: -14 },
          { x_ft: 0, y_ft: -6 },
          { x_ft: -8, y_ft: -6 },
        ],
        height_ft: 30,
        base_height_ft: 6,
        transmittance: 0.5,
      },
    }),
  },
  'hip roof in L, 12 S': {
    latitude: -12,
    planes: {
      main: space(22, 0, 36, 0, 10, {
        outline: {
          shape: 'l_shape',
          width_ft: 36,
          depth_ft: 18,
          notch_width_ft: 10,
          notch_depth_ft: 8,
          notch_at: 'upper_right',
        },
      }),
      side: space(22, 90, 36, -50, 10, { outline: { shape: 'triangle', width_ft: 30, depth_ft: 16 } }),
      hip: space(40, 270, -20, 10, 14, {
        outline: { shape: 'hip', width_ft: 26, depth_ft: 14, ridge_ft: 8, ridge_offset_ft: 4 },
      }),
    },
    groups: { a: { ...group, x: 2, y: 1 }, s: { plane: 'side', columns: 2, rows: 1, x: 11, y: 1 } },
  },
  'polygon plane behind a parapet, 64 N': {
    latitude: 64,
    planes: {
      main: space(3, 180, 0, 0, 12, {
        outline: {
          shape: 'polygon',
          corners: [
            { x_ft: 0, y_ft: 0 },
            { x_ft: 40, y_ft: 0 },
            { x_ft: 40, y_ft: 24 },
            { x_ft: 20, y_ft: 30 },
            { x_ft: 0, y_ft: 24 },
          ],
        },
        obstructions: { p: { x_ft: 0, y_ft: 0, width_ft: 40, length_ft: 1, height_ft: 2.5, kind: 'parapet' } },
      }),
    },
    groups: {
      a: { ...group, columns: 2, rows: 2, moduleTilt: 30, standoffIn: 10, rowGapIn: 60, orientation: 'landscape' },
    },
  },
  'racks of two arrays on two flat roofs, 35 S': {
    latitude: -35,
    planes: {
      main: space(0, 0, 36, 0, 12),
      low: space(0, 0, 36, 22, 9),
    },
    groups: {
      a: { ...group, rows: 1, y: 1, moduleTilt: 30, standoffIn: 24, orientation: 'landscape' },
      b: { ...group, plane: 'low', rows: 2, moduleTilt: 20, standoffIn: 12, rowGapIn: 30, orientation: 'landscape' },
    },
  },
  'round crown high on a bare trunk': {
    planes: gable(),
    groups: { a: group },
    ...trees({ oak: { at: { x_ft: 15, y_ft: -8 }, width_ft: 16, height_ft: 40, base_height_ft: 21, ground_ft: -1 } }),
  },
  'round tower': {
    planes: gable(),
    groups: { a: { ...group, rows: 1 } },
    ...trees({ silo: { at: { x_ft: 19, y_ft: -14 }, width_ft: 20, height_ft: 27 } }),
  },
  'steep low plane before the walls of a house': {
    planes: {
      main: space(65, 180, 0, 0, 0.5, { outline: rect(20, 8) }),
      house: space(10, 180, 2, -34, 9, { outline: rect(24, 20) }),
    },
    groups: { a: { ...group, rows: 1, x: 6, y: 1 } },
  },
  'upright wall beside a low plane': {
    planes: {
      main: space(12, 180, 0, 0, 8),
      wall: space(90, 270, 40, 24, 14, { outline: { shape: 'triangle', width_ft: 30, depth_ft: 12 } }),
    },
    groups: { a: { ...group, x: 24 } },
  },
  'far tree seen from two planes in space': {
    planes: gable(),
    groups: { a: group, b: { plane: 'back', columns: 3, rows: 1, x: 8, y: 6 } },
    ...trees({
      t: { bearing_deg: 225, distance_ft: 40, width_ft: 16, height_ft: 20, base_height_ft: -9 },
      u: { bearing_deg: 90, distance_ft: 35, width_ft: 20, height_ft: 12, arrays: ['a'] },
    }),
  },
}
