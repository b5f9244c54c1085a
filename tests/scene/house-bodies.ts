// The bodies of a house: walls, boxes on roofs, trees and buildings, each from its keys.
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
import type { BoxInput, HouseInput, ObstacleInput, PlaneInput } from './house-input.ts'
import { cornersOf } from './outline-corners.ts'
import { add, frameAt, onFrame, times, towards, UP, type Frame, type Vec } from './vectors.ts'

/** Plan coordinates to east and north. */
export function planToEarth(house: HouseInput): (point: { x_ft: number; y_ft: number }) => Corner {
  const right = towards((house.site_plan?.up_azimuth_deg ?? 0) + 90)
  const up = towards(house.site_plan?.up_azimuth_deg ?? 0)
  return ({ x_ft, y_ft }) => [right[0] * x_ft + up[0] * y_ft, right[1] * x_ft + up[1] * y_ft]
}

const level = (point: Vec): Corner => [point[0], point[1]]
export const below = (height: number) => behind(UP, [0, 0, height])
export const above = (height: number) => behind([0, 0, -1], [0, 0, height])

/** All between the outline of a plane and the level ground. */
export function wallsUnder(plane: PlaneInput, frame: Frame): Body[] {
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
export function boxOn(plane: PlaneInput, frame: Frame, box: BoxInput): Body[] {
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
export function farBody(from: Vec, obstacle: ObstacleInput): Body {
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
export function placedBodies(obstacle: ObstacleInput, toEarth: ReturnType<typeof planToEarth>): Body[] {
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
