// Random houses with things round them, drawn by fast-check so that a failure shrinks.
import * as fc from '../fast-check.js'
import type { BoxInput, HouseInput, ObstacleInput, PlaneInput } from './house-input.ts'
import { inventedHouse, type HouseParts } from './invented-house.ts'

const tenths = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: min * 10, max: max * 10 }).map((value) => value / 10)

/** A thing and where it goes. */
export type Addition =
  | { readonly kind: 'box'; readonly box: BoxInput }
  | { readonly kind: 'obstacle'; readonly obstacle: ObstacleInput }
  | { readonly kind: 'plane'; readonly plane: PlaneInput }

const WIDTH_FT = 30
const DEPTH_FT = 18

/** Boxes beside, above and below the two modules, which lie from x 11 to 19 and y 5 to 13. */
const boxOnRoof: fc.Arbitrary<Addition> = fc
  .record({
    place: fc.constantFrom([0, 0, 10, 16], [20, 0, 9, 16], [11, 0, 8, 4.5], [11, 13.2, 8, 4]),
    x: fc.integer({ min: 0, max: 9 }),
    y: fc.integer({ min: 0, max: 9 }),
    width: fc.integer({ min: 1, max: 10 }),
    length: fc.integer({ min: 1, max: 10 }),
    height_ft: tenths(0.5, 8),
    kind: fc.constantFrom('chimney', 'dormer', 'skylight', 'vent', 'parapet', 'wing'),
  })
  .map(({ place: [left, low, across, along], x, y, width, length, height_ft, kind }) => ({
    kind: 'box' as const,
    box: {
      x_ft: left + (across * x) / 10,
      y_ft: low + (along * y) / 10,
      width_ft: ((across * (10 - x)) / 10) * (width / 10),
      length_ft: ((along * (10 - y)) / 10) * (length / 10),
      height_ft,
      kind,
    },
  }))

const transmittance = fc.oneof(
  { weight: 2, arbitrary: fc.constant(undefined) },
  tenths(0.1, 0.9),
  fc.array(tenths(0, 1), { minLength: 12, maxLength: 12 }),
)
/** Without the keys that are undefined. */
const stated = <T extends object>(value: T): { [K in keyof T]: Exclude<T[K], undefined> } =>
  Object.fromEntries(Object.entries(value).filter(([, one]) => one !== undefined)) as never

const farTree: fc.Arbitrary<Addition> = fc
  .record({
    bearing_deg: fc.integer({ min: 0, max: 359 }),
    distance_ft: fc.integer({ min: 25, max: 90 }),
    width_ft: fc.integer({ min: 2, max: 40 }),
    height_ft: fc.integer({ min: 2, max: 40 }),
    transmittance,
  })
  .map((obstacle) => ({ kind: 'obstacle', obstacle: stated(obstacle) }))

/** Within 20 ft of a place that is at least 45 ft from the middle of the house, at (15, 8). */
const placed: fc.Arbitrary<Addition> = fc
  .record({
    bearing: fc.integer({ min: 0, max: 359 }),
    distance: fc.integer({ min: 45, max: 90 }),
    shape: fc.constantFrom('round', 'box', 'star', 'triangle'),
    size: fc.integer({ min: 4, max: 20 }),
    other: fc.integer({ min: 4, max: 20 }),
    faces_deg: fc.integer({ min: 0, max: 359 }),
    base_height_ft: fc.option(fc.integer({ min: 1, max: 9 }), { nil: undefined }),
    ground_ft: fc.option(fc.integer({ min: -10, max: 10 }), { nil: undefined }),
    tall: fc.integer({ min: 10, max: 60 }),
    transmittance,
  })
  .map(({ bearing, distance, shape, size, other, faces_deg, tall, ...rest }) => {
    const turn = (bearing * Math.PI) / 180
    const [x, y] = [15 + distance * Math.sin(turn), 8 + distance * Math.cos(turn)]
    const common = { ...stated(rest), height_ft: tall }
    if (shape === 'round')
      return { kind: 'obstacle', obstacle: { ...common, at: { x_ft: x, y_ft: y }, width_ft: size } }
    if (shape === 'box')
      return {
        kind: 'obstacle',
        obstacle: { ...common, at: { x_ft: x, y_ft: y }, width_ft: size, length_ft: other, faces_deg },
      }
    // A star of four rays is not convex. What lets light through stays convex.
    const radii = shape === 'star' && rest.transmittance === undefined ? [size, size / 4] : [size]
    const count = shape === 'star' ? 8 : 3
    const corners = Array.from({ length: count }, (_, at) => {
      const angle = ((faces_deg + (360 * at) / count) * Math.PI) / 180
      const radius = radii[at % radii.length]!
      return { x_ft: x + radius * Math.cos(angle), y_ft: y + radius * Math.sin(angle) }
    })
    return { kind: 'obstacle', obstacle: { ...common, corners } }
  })

/** Another roof plane with the walls below it, 50 ft or more away. */
const otherPlane: fc.Arbitrary<Addition> = fc
  .record({
    bearing: fc.integer({ min: 0, max: 359 }),
    distance: fc.integer({ min: 60, max: 80 }),
    tilt_deg: fc.integer({ min: 0, max: 75 }),
    azimuth_deg: fc.integer({ min: 0, max: 359 }),
    eave_height_ft: fc.integer({ min: 6, max: 30 }),
    width_ft: fc.integer({ min: 5, max: 30 }),
    depth_ft: fc.integer({ min: 5, max: 25 }),
    shape: fc.constantFrom('rectangle', 'triangle', 'hip', 'l_shape'),
  })
  .map(({ bearing, distance, width_ft, depth_ft, shape, ...plane }) => {
    const turn = (bearing * Math.PI) / 180
    const size = { shape, width_ft, depth_ft } as const
    return {
      kind: 'plane',
      plane: {
        ...plane,
        eave_left: { x_ft: 15 + distance * Math.sin(turn), y_ft: 8 + distance * Math.cos(turn) },
        outline: {
          ...size,
          ...(shape === 'hip' ? { ridge_ft: width_ft / 3 } : {}),
          ...(shape === 'l_shape'
            ? { notch_width_ft: width_ft / 3, notch_depth_ft: depth_ft / 2, notch_at: 'lower_left' as const }
            : {}),
        },
      },
    }
  })

export interface RandomHouse {
  readonly parts: HouseParts
  readonly additions: readonly Addition[]
  readonly inSpace: boolean
}

const base = fc.record({
  latitude: fc.constantFrom(-35, -12, 20, 38, 52, 64),
  tilt: fc.oneof(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 61, max: 85 })),
  azimuth: fc.integer({ min: 0, max: 359 }),
  up: fc.constantFrom(undefined, 30),
  onRacks: fc.boolean(),
})

/** A plane of 30 by 18 ft in space or by itself, two modules in its middle, and one to four things that throw shade. */
export const randomHouse: fc.Arbitrary<RandomHouse> = fc.boolean().chain((inSpace) =>
  fc
    .record({
      base,
      additions: fc.array(inSpace ? fc.oneof(boxOnRoof, farTree, placed, otherPlane) : fc.oneof(boxOnRoof, farTree), {
        minLength: 1,
        maxLength: 4,
      }),
    })
    .map(({ base: { latitude, tilt, azimuth, up, onRacks }, additions }) => {
      const racks = onRacks && tilt < 20
      // The left end of the eave, so that the middle of the plane stands over (15, 8) of the plan.
      const turn = ((azimuth - (up ?? 0)) * Math.PI) / 180
      const run = DEPTH_FT * Math.cos((tilt * Math.PI) / 180)
      const eave_left = {
        x_ft: 15 + (WIDTH_FT / 2) * Math.cos(turn) + (run / 2) * Math.sin(turn),
        y_ft: 8 - (WIDTH_FT / 2) * Math.sin(turn) + (run / 2) * Math.cos(turn),
      }
      return {
        inSpace,
        additions,
        parts: {
          latitude,
          planes: {
            main: {
              tilt_deg: tilt,
              azimuth_deg: azimuth,
              outline: { shape: 'rectangle' as const, width_ft: WIDTH_FT, depth_ft: DEPTH_FT },
              ...(inSpace ? { eave_left, eave_height_ft: 10 } : {}),
            },
          },
          groups: {
            a: racks
              ? {
                  plane: 'main',
                  columns: 1,
                  rows: 2,
                  x: 11,
                  y: 5,
                  rowGapIn: 6,
                  moduleTilt: tilt + 10,
                  orientation: 'landscape' as const,
                }
              : { plane: 'main', columns: 2, rows: 1, x: 11, y: 6 },
          },
          ...(up === undefined ? {} : { sitePlan: { up_azimuth_deg: up } }),
        },
      }
    }),
)

/** The house with the first so many of its things. */
export function houseWith({ parts, additions }: RandomHouse, count = additions.length): HouseInput {
  const obstructions: Record<string, BoxInput> = {}
  const obstacles: Record<string, ObstacleInput> = {}
  const planes: Record<string, PlaneInput> = {}
  additions.slice(0, count).forEach((addition, at) => {
    if (addition.kind === 'box') obstructions[`t${at}`] = addition.box
    else if (addition.kind === 'obstacle') obstacles[`t${at}`] = addition.obstacle
    else planes[`t${at}`] = addition.plane
  })
  return inventedHouse({
    ...parts,
    planes: { main: { ...parts.planes['main']!, obstructions }, ...planes },
    site: { obstacles },
  })
}
