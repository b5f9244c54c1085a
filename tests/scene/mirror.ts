// Houses and skies in a mirror.
import type { ArrayInput, BlockInput, HouseInput, ObstacleInput, PlaneInput, PlanPoint } from './house-input.ts'
import type { Weather } from './compare-losses.ts'
import { cosDeg, sinDeg } from './vectors.ts'

interface Mirror {
  readonly bearing: (deg: number) => number
  readonly point: (point: PlanPoint) => PlanPoint
}

const whole = (deg: number): number => ((deg % 360) + 360) % 360
const EAST_WEST: Mirror = { bearing: (deg) => whole(-deg), point: ({ x_ft, y_ft }) => ({ x_ft: -x_ft, y_ft }) }
const NORTH_SOUTH: Mirror = { bearing: (deg) => whole(180 - deg), point: ({ x_ft, y_ft }) => ({ x_ft, y_ft: -y_ft }) }

/** Plane coordinates run the other way in a mirror: what lay at x lies at the width less x, and the eave begins at its other end. */
function mirroredPlane(plane: PlaneInput, mirror: Mirror): PlaneInput {
  const width = plane.outline?.width_ft ?? 0
  const { outline, obstructions, eave_left, ...rest } = plane
  // To the right along the eave of the plane as it was, in plan.
  const right = { x_ft: -cosDeg(plane.azimuth_deg), y_ft: sinDeg(plane.azimuth_deg) }
  const notches = {
    lower_left: 'lower_right',
    lower_right: 'lower_left',
    upper_left: 'upper_right',
    upper_right: 'upper_left',
  } as const
  return {
    ...rest,
    azimuth_deg: mirror.bearing(plane.azimuth_deg),
    ...(outline === undefined
      ? {}
      : {
          outline: {
            ...outline,
            ...(outline.notch_at === undefined ? {} : { notch_at: notches[outline.notch_at] }),
          },
        }),
    ...(eave_left === undefined
      ? {}
      : {
          eave_left: mirror.point({
            x_ft: eave_left.x_ft + width * right.x_ft,
            y_ft: eave_left.y_ft + width * right.y_ft,
          }),
        }),
    ...(obstructions === undefined
      ? {}
      : {
          obstructions: Object.fromEntries(
            Object.entries(obstructions).map(([id, box]) => [id, { ...box, x_ft: width - box.x_ft - box.width_ft }]),
          ),
        }),
  }
}

function mirroredObstacle(obstacle: ObstacleInput, mirror: Mirror): ObstacleInput {
  const { bearing_deg, at, corners, faces_deg } = obstacle
  return {
    ...obstacle,
    ...(bearing_deg === undefined ? {} : { bearing_deg: mirror.bearing(bearing_deg) }),
    ...(faces_deg === undefined ? {} : { faces_deg: mirror.bearing(faces_deg) }),
    ...(at === undefined ? {} : { at: mirror.point(at) }),
    ...(corners === undefined ? {} : { corners: corners.map(mirror.point) }),
  }
}

/** North up on the plan; outlines alike from left and right but for notches; arrays of whole blocks. */
function mirroredHouse(house: HouseInput, mirror: Mirror): HouseInput {
  const { site_plan: _, ...rest } = house
  const planes = Object.fromEntries(
    Object.entries(house.roof_planes).map(([id, plane]) => [id, mirroredPlane(plane, mirror)]),
  )
  const arrays = Object.fromEntries(
    Object.entries(house.arrays).map(([id, array]) => [id, mirroredArray(house, array, mirror)]),
  )
  const obstacles = Object.fromEntries(
    Object.entries(house.site.obstacles ?? {}).map(([id, obstacle]) => [id, mirroredObstacle(obstacle, mirror)]),
  )
  const { horizon } = house.site
  const seen = horizon?.map(({ azimuth_deg, elevation_deg }) => ({
    azimuth_deg: mirror.bearing(azimuth_deg),
    elevation_deg,
  }))
  const site = { ...house.site, obstacles, ...(seen === undefined ? {} : { horizon: seen }) }
  return { ...rest, roof_planes: planes, arrays, site }
}

function mirroredArray(house: HouseInput, array: ArrayInput, mirror: Mirror): ArrayInput {
  const width = house.roof_planes[array.roof_plane]!.outline?.width_ft ?? 0
  const blocks = Object.entries(array.arrangement?.blocks ?? {}).map(([id, block]): [string, BlockInput] => [
    id,
    { ...block, x_ft: width - block.x_ft - blockWidthFt(house, block) },
  ])
  const { module_azimuth_deg: turned } = array
  return {
    ...array,
    ...(turned === undefined ? {} : { module_azimuth_deg: mirror.bearing(turned) }),
    arrangement: { blocks: Object.fromEntries(blocks) },
  }
}

function blockWidthFt({ equipment }: HouseInput, block: BlockInput): number {
  const { length_in, width_in } = equipment!.modules['m']!
  const one = (block.orientation === 'portrait' ? width_in : length_in) / 12
  return block.columns * one + ((block.columns - 1) * block.gap_in) / 12
}

/** Id of a module of one or two columns in the mirror: the other column; rows stay. */
export const mirroredId = (house: HouseInput, id: string): string =>
  Object.values(house.arrays).some(({ arrangement }) => arrangement?.blocks['b']?.columns === 2)
    ? id.replace(/c(\d)$/u, (_, column: string) => `c${3 - Number(column)}`)
    : id

export const mirroredEastWest = (house: HouseInput): HouseInput => mirroredHouse(house, EAST_WEST)

/** The same house on the other hemisphere. */
export function mirroredNorthSouth(house: HouseInput): HouseInput {
  const mirrored = mirroredHouse(house, NORTH_SOUTH)
  return { ...mirrored, site: { ...mirrored.site, latitude_deg: -house.site.latitude_deg } }
}

/**
 * The weather of a place as hours of a file, and the same hours on the other hemisphere: the sun stands in the north as high
 * as it stood in the south, with the same light.
 */
export function skiesOfBothSides({ climate, steps }: Weather): [Weather, Weather] {
  const fileRow = Uint32Array.from({ length: steps.length }, (_, row) => row)
  return [
    { climate, steps: { ...steps, fileRow } },
    {
      climate: { ...climate, latitudeDeg: -climate.latitudeDeg },
      steps: { ...steps, fileRow, latitudeDeg: -steps.latitudeDeg, sunNorth: steps.sunNorth.map((north) => -north) },
    },
  ]
}
