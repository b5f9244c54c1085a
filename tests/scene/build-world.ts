// From the keys of a project to bodies and module surfaces in space, with nothing of the program's own geometry.
import { behind, convex, prism, rectangle, type Body } from './bodies.ts'
import { above, below, boxOn, farBody, placedBodies, planToEarth, wallsUnder } from './house-bodies.ts'
import type { HouseInput, ObstacleInput, PlacedModule } from './house-input.ts'
import { add, frameAt, inner, onFrame, times, type Frame, type Vec } from './vectors.ts'

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
