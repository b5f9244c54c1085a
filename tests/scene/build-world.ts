// From the keys of a project to bodies and module surfaces in space, with nothing of the program's own geometry.
import {
  behind,
  convex,
  cylinder,
  prism,
  rectangle,
  triangles,
  uprightSides,
  type Body,
  type Corner,
} from './bodies.ts'
import type { BoxInput, HouseInput, ObstacleInput, OutlineInput, PlacedModule, PlaneInput } from './house-input.ts'
import { add, frameAt, inner, onFrame, times, towards, UP, type Frame, type Vec } from './vectors.ts'

/** A thing that throws shade. */
export interface Thing {
  readonly name: string
  /** It hides what any of its pieces hides. */
  readonly pieces: readonly Body[]
  /** Share of light that passes, by month. */
  readonly passes: readonly number[]
  /** Arrays that it shades; all when undefined. */
  readonly arrays: readonly string[] | undefined
  /** The plane whose modules see its roof surface as bright as the ground. */
  readonly roofOf: string | undefined
  /** Module that it is. */
  readonly module: string | undefined
}

/** The glass of a module: a rectangle from the origin of its frame. */
export interface Glass {
  readonly id: string
  readonly array: string
  readonly plane: string
  readonly frame: Frame
  readonly width: number
  readonly height: number
  readonly things: readonly Thing[]
}

const solid = Array.from({ length: 12 }, () => 0)
const thing = (name: string, pieces: readonly Body[], rest: Partial<Thing> = {}): Thing => ({
  name,
  pieces,
  passes: solid,
  arrays: undefined,
  roofOf: undefined,
  module: undefined,
  ...rest,
})

/** Corners of an outline in coordinates of the plane, counter-clockwise. */
export function cornersOf(outline: OutlineInput): Corner[] {
  const [w, d] = [outline.width_ft ?? 0, outline.depth_ft ?? 0]
  switch (outline.shape) {
    case 'rectangle':
      return [
        [0, 0],
        [w, 0],
        [w, d],
        [0, d],
      ]
    case 'hip': {
      const ridge = outline.ridge_ft ?? 0
      const from = outline.ridge_offset_ft ?? (w - ridge) / 2
      return [
        [0, 0],
        [w, 0],
        [from + ridge, d],
        [from, d],
      ]
    }
    case 'triangle':
      return [
        [0, 0],
        [w, 0],
        [outline.ridge_offset_ft ?? w / 2, d],
      ]
    case 'l_shape': {
      const [nw, nd] = [outline.notch_width_ft ?? 0, outline.notch_depth_ft ?? 0]
      switch (outline.notch_at ?? 'upper_right') {
        case 'lower_left':
          return [
            [nw, 0],
            [w, 0],
            [w, d],
            [0, d],
            [0, nd],
            [nw, nd],
          ]
        case 'lower_right':
          return [
            [0, 0],
            [w - nw, 0],
            [w - nw, nd],
            [w, nd],
            [w, d],
            [0, d],
          ]
        case 'upper_left':
          return [
            [0, 0],
            [w, 0],
            [w, d],
            [nw, d],
            [nw, d - nd],
            [0, d - nd],
          ]
        case 'upper_right':
          return [
            [0, 0],
            [w, 0],
            [w, d - nd],
            [w - nw, d - nd],
            [w - nw, d],
            [0, d],
          ]
      }
    }
    case 'polygon':
      return (outline.corners ?? []).map(({ x_ft, y_ft }) => [x_ft, y_ft])
  }
}

/** Plan coordinates to east and north. */
function planToEarth(house: HouseInput): (point: { x_ft: number; y_ft: number }) => Corner {
  const right = towards((house.site_plan?.up_azimuth_deg ?? 0) + 90)
  const up = towards(house.site_plan?.up_azimuth_deg ?? 0)
  return ({ x_ft, y_ft }) => [right[0] * x_ft + up[0] * y_ft, right[1] * x_ft + up[1] * y_ft]
}

const level = (point: Vec): Corner => [point[0], point[1]]
const below = (height: number) => behind(UP, [0, 0, height])
const above = (height: number) => behind([0, 0, -1], [0, 0, height])

/** All between the outline of a plane and the level ground. */
function wallsUnder(plane: PlaneInput, frame: Frame): Body[] {
  if (plane.outline === undefined) return []
  if (plane.tilt_deg > 89.999) return screen(cornersOf(plane.outline), frame)
  const corners = cornersOf(plane.outline).map(([x, y]) => level(onFrame(frame, x, y)))
  return prism(corners, [behind(frame.away, frame.origin), above(0)])
}

/** An upright plane is a thin wall, from its upper edges down to the ground. */
function screen(outline: readonly Corner[], frame: Frame): Body[] {
  const back = times(frame.away, -1)
  return triangles(outline).map((three) => {
    const xs = three.map(([x]) => x)
    const upper = three.flatMap(([x, y], at) => {
      const [nextX, nextY] = three[(at + 1) % 3]!
      const out = add(times(frame.right, nextY - y), times(frame.upSlope, x - nextX))
      return x - nextX > 1e-9 ? [behind(out, onFrame(frame, x, y))] : []
    })
    return convex([
      behind(frame.away, frame.origin),
      behind(back, onFrame(frame, 0, 0, -0.001)),
      behind(frame.right, onFrame(frame, Math.max(...xs), 0)),
      behind(times(frame.right, -1), onFrame(frame, Math.min(...xs), 0)),
      ...upper,
      above(0),
    ])
  })
}

/** A box on a plane: plumb sides, a level top or one that runs with the roof; square to the plane when that is steep. */
function boxOn(plane: PlaneInput, frame: Frame, box: BoxInput): Body[] {
  const [x, y, right, upper] = [box.x_ft, box.y_ft, box.x_ft + box.width_ft, box.y_ft + box.length_ft]
  const roof = behind(times(frame.away, -1), frame.origin)
  if (plane.tilt_deg > 60) {
    return [
      convex([
        roof,
        behind(frame.away, onFrame(frame, 0, 0, box.height_ft)),
        behind(frame.right, onFrame(frame, right, y)),
        behind(times(frame.right, -1), onFrame(frame, x, y)),
        behind(frame.upSlope, onFrame(frame, x, upper)),
        behind(times(frame.upSlope, -1), onFrame(frame, x, y)),
      ]),
    ]
  }
  const foot = (
    [
      [x, y],
      [right, y],
      [right, upper],
      [x, upper],
    ] as const
  ).map(([atX, atY]) => level(onFrame(frame, atX, atY)))
  const topOfUpperEdge = add(onFrame(frame, x, upper), times(UP, box.height_ft))
  const runsWithRoof = box.kind === 'skylight' || box.kind === 'dormer'
  return [convex([...uprightSides(foot), roof, behind(runsWithRoof ? frame.away : UP, topOfUpperEdge)])]
}

/** An upright rectangle that faces a point, at a bearing and distance from it. */
function farBody(from: Vec, obstacle: ObstacleInput): Body {
  const bearing = obstacle.bearing_deg ?? 0
  const middle = add(from, times(towards(bearing), obstacle.distance_ft ?? 0))
  const width = obstacle.width_ft ?? 0
  const bottom = obstacle.base_height_ft ?? -1000
  // Stands upright and looks back along the line of sight; its right hand is the left of one who looks at it.
  const frame = frameAt([middle[0], middle[1], from[2] + bottom], 90, bearing + 180)
  const corner = add(frame.origin, times(frame.right, -width / 2))
  return rectangle({ ...frame, origin: corner }, width, obstacle.height_ft - bottom)
}

/** A tree, pole, box or building at a place of the plan. */
function placedBodies(obstacle: ObstacleInput, toEarth: ReturnType<typeof planToEarth>): Body[] {
  const ground = obstacle.ground_ft ?? 0
  const [bottom, top] = [ground + (obstacle.base_height_ft ?? 0), ground + obstacle.height_ft]
  if (obstacle.corners !== undefined) return prism(obstacle.corners.map(toEarth), [below(top), above(bottom)])
  const [x, y] = toEarth(obstacle.at ?? { x_ft: 0, y_ft: 0 })
  const width = obstacle.width_ft ?? 0
  if (obstacle.length_ft === undefined) return [cylinder([x, y, 0], width / 2, bottom, top)]
  const ahead = times(towards(obstacle.faces_deg ?? 0), obstacle.length_ft / 2)
  const across = times(towards((obstacle.faces_deg ?? 0) + 90), width / 2)
  const corner = (a: number, b: number): Corner => level(add([x, y, 0], add(times(across, a), times(ahead, b))))
  return prism([corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)], [below(top), above(bottom)])
}

const twelve = (value: number | readonly number[] | undefined): readonly number[] =>
  typeof value === 'object' ? value : Array.from({ length: 12 }, () => value ?? 0)

const mean = (points: readonly Vec[]): Vec =>
  times(
    points.reduce((sum, point) => add(sum, point), [0, 0, 0] as Vec),
    1 / points.length,
  )

/** Frame of a plane in space, or undefined for one that is a world of its own. */
function frameInSpace(house: HouseInput, id: string): Frame | undefined {
  const plane = house.roof_planes[id]!
  const corner = plane.eave_left ?? house.site_plan?.roof_planes?.[id]?.eave_left
  if (corner === undefined || plane.eave_height_ft === undefined) return undefined
  const [east, north] = planToEarth(house)(corner)
  return frameAt([east, north, plane.eave_height_ft], plane.tilt_deg, plane.azimuth_deg)
}

/** Frame of the glass of a module, its origin in the lower left corner. */
function glassFrame(house: HouseInput, module: PlacedModule, roof: Frame, thicknessFt: number): Frame {
  const array = house.arrays[module.array]!
  const plane = house.roof_planes[array.roof_plane]!
  const tilt = array.module_tilt_deg ?? plane.tilt_deg
  const azimuth = array.module_azimuth_deg ?? plane.azimuth_deg
  // The lowest corner of a turned module keeps the clear height, so its middle stands higher by how far that corner hangs.
  const about = frameAt([0, 0, 0], tilt, azimuth)
  const hangs = Math.min(
    ...[-0.5, 0.5].flatMap((u) =>
      [-0.5, 0.5].map((v) => inner(roof.away, onFrame(about, u * module.widthFt, v * module.heightFt))),
    ),
  )
  const lift = array.standoff_in / 12 + thicknessFt - hangs
  const middle = onFrame(roof, module.xFt + module.widthFt / 2, module.yFt + module.heightFt / 2, lift)
  const turned = frameAt(middle, tilt, azimuth)
  return { ...turned, origin: onFrame(turned, -module.widthFt / 2, -module.heightFt / 2) }
}

/**
 * Every module with all that may shade it.
 *
 * @param house The project, as written.
 * @param modules Where its modules lie on their planes.
 * @param thicknessIn Thickness of a module, in.
 */
export function buildWorld(house: HouseInput, modules: readonly PlacedModule[], thicknessIn: number): Glass[] {
  const toEarth = planToEarth(house)
  const frames = new Map(Object.keys(house.roof_planes).map((id) => [id, frameInSpace(house, id)]))
  const placed = modules.map((module) => {
    const plane = house.arrays[module.array]!.roof_plane
    const roof =
      frames.get(plane) ?? frameAt([0, 0, 0], house.roof_planes[plane]!.tilt_deg, house.roof_planes[plane]!.azimuth_deg)
    const frame = glassFrame(house, module, roof, thicknessIn / 12)
    const plate = thing(module.id, [rectangle(frame, module.widthFt, module.heightFt)], { module: module.id })
    return { module, plane, roof, frame, plate, inSpace: frames.get(plane) !== undefined }
  })
  const middleOf = (chosen: typeof placed): Vec =>
    mean(chosen.map(({ frame, module }) => onFrame(frame, module.widthFt / 2, module.heightFt / 2)))
  const obstacles = Object.entries(house.site.obstacles ?? {})
  const meant = (obstacle: ObstacleInput, array: string): boolean => obstacle.arrays?.includes(array) ?? true
  const asThing = (name: string, obstacle: ObstacleInput, pieces: readonly Body[]): Thing =>
    thing(name, pieces, { passes: twelve(obstacle.transmittance), arrays: obstacle.arrays })

  const space: Thing[] = []
  for (const [id, plane] of Object.entries(house.roof_planes)) {
    const frame = frames.get(id)
    if (frame === undefined) continue
    space.push(thing(id, wallsUnder(plane, frame), { roofOf: id }))
    for (const [name, box] of Object.entries(plane.obstructions ?? {}))
      space.push(thing(`${id}.${name}`, boxOn(plane, frame, box)))
  }
  for (const [name, building] of Object.entries(house.site_plan?.buildings ?? {}))
    if (building.height_ft !== undefined)
      space.push(thing(name, prism(building.corners.map(toEarth), [below(building.height_ft), above(0)])))
  for (const [name, obstacle] of obstacles) {
    if (obstacle.bearing_deg === undefined) space.push(asThing(name, obstacle, placedBodies(obstacle, toEarth)))
    else {
      const seen = placed.filter(({ inSpace, module }) => inSpace && meant(obstacle, module.array))
      if (seen.length > 0) space.push(asThing(name, obstacle, [farBody(middleOf(seen), obstacle)]))
    }
  }
  for (const { inSpace, plate } of placed) if (inSpace) space.push(plate)

  return placed.map(({ module, plane, roof, frame, inSpace }) => {
    const glass = { id: module.id, array: module.array, plane, frame, width: module.widthFt, height: module.heightFt }
    if (inSpace) return { ...glass, things: space }
    const shape = house.roof_planes[plane]!
    const own: Thing[] = [thing(plane, [convex([behind(roof.away, roof.origin)])], { roofOf: plane })]
    for (const [name, box] of Object.entries(shape.obstructions ?? {})) own.push(thing(name, boxOn(shape, roof, box)))
    const beside = placed.filter((other) => !other.inSpace && other.plane === plane)
    for (const [name, obstacle] of obstacles) {
      const seen = beside.filter((other) => meant(obstacle, other.module.array))
      if (obstacle.bearing_deg !== undefined && seen.length > 0)
        own.push(asThing(name, obstacle, [farBody(middleOf(seen), obstacle)]))
    }
    for (const other of beside) own.push(other.plate)
    return { ...glass, things: own }
  })
}
