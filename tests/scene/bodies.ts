// Bodies that rays meet: convex pieces as half-spaces, upright cylinders, flat rectangles.
import { inner, less, type Frame, type Vec } from './vectors.ts'

/** Distance along a ray at which it enters a body, ft; Infinity where it does not meet it. */
export type Body = (from: Vec, along: Vec) => number

/** Shorter cuts than this are touches, ft. */
const TOUCH_FT = 1e-7

/** Everything on the inner side of a plane: inner(out, point) <= limit. */
export interface HalfSpace {
  readonly out: Vec
  readonly limit: number
}

/** Half-space behind a plane through a point. */
export const behind = (out: Vec, through: Vec): HalfSpace => ({ out, limit: inner(out, through) })

/** What all half-spaces have in common: a convex piece, which may be unbounded. */
export function convex(sides: readonly HalfSpace[]): Body {
  // Flat numbers, as this is asked millions of times.
  const flat = Float64Array.from(sides.flatMap(({ out, limit }) => [...out, limit]))
  return (from, along) => {
    let enter = 0
    let leave = Infinity
    for (let at = 0; at < flat.length; at += 4) {
      const [east, north, up] = [flat[at]!, flat[at + 1]!, flat[at + 2]!]
      const room = flat[at + 3]! - (east * from[0] + north * from[1] + up * from[2])
      const speed = east * along[0] + north * along[1] + up * along[2]
      if (speed > 1e-12) {
        const cut = room / speed
        if (cut < leave) leave = cut
      } else if (speed < -1e-12) {
        const cut = room / speed
        if (cut > enter) enter = cut
      } else if (room < 0) return Infinity
      if (enter > leave - TOUCH_FT) return Infinity
    }
    return enter
  }
}

/** Upright cylinder. */
export function cylinder(centre: Vec, radius: number, bottom: number, top: number): Body {
  return (from, along) => {
    const [x, y] = [from[0] - centre[0], from[1] - centre[1]]
    const a = along[0] ** 2 + along[1] ** 2
    const b = x * along[0] + y * along[1]
    const c = x * x + y * y - radius * radius
    let [enter, leave] = [0, Infinity]
    if (a < 1e-18) {
      if (c > 0) return Infinity
    } else {
      const root = b * b - a * c
      if (root <= 0) return Infinity
      enter = Math.max(0, (-b - Math.sqrt(root)) / a)
      leave = (-b + Math.sqrt(root)) / a
    }
    if (Math.abs(along[2]) < 1e-12) {
      if (from[2] < bottom || from[2] > top) return Infinity
    } else {
      const [one, other] = [(bottom - from[2]) / along[2], (top - from[2]) / along[2]]
      enter = Math.max(enter, Math.min(one, other))
      leave = Math.min(leave, Math.max(one, other))
    }
    return enter > leave - TOUCH_FT ? Infinity : enter
  }
}

/** Rectangle of no thickness: from the origin of a frame by width to the right and by height up the slope. */
export function rectangle(frame: Frame, width: number, height: number): Body {
  return (from, along) => {
    const speed = inner(frame.away, along)
    if (Math.abs(speed) < 1e-12) return Infinity
    const reach = inner(frame.away, less(frame.origin, from)) / speed
    if (reach < TOUCH_FT) return Infinity
    const at: Vec = [from[0] + along[0] * reach, from[1] + along[1] * reach, from[2] + along[2] * reach]
    const x = inner(frame.right, less(at, frame.origin))
    const y = inner(frame.upSlope, less(at, frame.origin))
    return x > 0 && x < width && y > 0 && y < height ? reach : Infinity
  }
}

export type Corner = readonly [x: number, y: number]

const turn = (a: Corner, b: Corner, c: Corner): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

/** Cuts a simple polygon into triangles by clipping its ears, each counter-clockwise. */
export function triangles(corners: readonly Corner[]): [Corner, Corner, Corner][] {
  const area = corners.reduce((sum, [x, y], at) => {
    const [nextX, nextY] = corners[(at + 1) % corners.length]!
    return sum + x * nextY - y * nextX
  }, 0)
  const left = area < 0 ? [...corners].reverse() : [...corners]
  const cut: [Corner, Corner, Corner][] = []
  while (left.length > 2) {
    const ear = left.findIndex((corner, at) => {
      const before = left[(at + left.length - 1) % left.length]!
      const after = left[(at + 1) % left.length]!
      if (turn(before, corner, after) <= 0) return false
      return !left.some(
        (other) =>
          other !== before &&
          other !== corner &&
          other !== after &&
          turn(before, corner, other) >= 0 &&
          turn(corner, after, other) >= 0 &&
          turn(after, before, other) >= 0,
      )
    })
    if (ear < 0) {
      // Only corners in line are left, or corners that touch: those in line hold nothing.
      const flat = left.findIndex(
        (corner, at) => turn(left[(at + left.length - 1) % left.length]!, corner, left[(at + 1) % left.length]!) === 0,
      )
      if (flat < 0) throw new Error('not a simple polygon')
      left.splice(flat, 1)
      continue
    }
    cut.push([left[(ear + left.length - 1) % left.length]!, left[ear]!, left[(ear + 1) % left.length]!])
    left.splice(ear, 1)
  }
  return cut
}

/** Upright sides of a convex polygon in plan (east, north), counter-clockwise. */
export function uprightSides(corners: readonly Corner[]): HalfSpace[] {
  return corners.map(([x, y], at) => {
    const [nextX, nextY] = corners[(at + 1) % corners.length]!
    return behind([nextY - y, x - nextX, 0], [x, y, 0])
  })
}

/** Upright prism over any simple polygon in plan, cut off by the half-spaces that are given. */
export function prism(corners: readonly Corner[], cuts: readonly HalfSpace[]): Body[] {
  return triangles(corners).map((three) => convex([...uprightSides(three), ...cuts]))
}
