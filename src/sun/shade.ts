/**
 * What stands between the sun and a module. Coordinates are local, ft: east, north, up, with the origin at the middle of
 * the array for far things, and roof-plane coordinates (x, y, height at right angles) for boxes on the roof.
 */

const RADIANS = Math.PI / 180

/** A point of the far horizon. */
export interface HorizonPoint {
  readonly azimuthDeg: number
  readonly elevationDeg: number
}

/** An upright rectangle that faces the array, such as a tree or a house. */
export interface FarObstacle {
  /** Direction from the array to its middle, degrees clockwise from true north. */
  readonly bearingDeg: number
  readonly distanceFt: number
  readonly widthFt: number
  /** Heights of its top and of its lower edge above the array, ft. */
  readonly topFt: number
  readonly baseFt: number
  /** Share of light that passes, twelve months. */
  readonly transmittance: readonly number[]
}

/** A box that stands on the roof plane, ft in plane coordinates. */
export interface RoofBox {
  readonly xFt: number
  readonly yFt: number
  readonly widthFt: number
  readonly lengthFt: number
  readonly heightFt: number
}

/** Direction to a light source: unit vector. */
export interface Direction {
  readonly east: number
  readonly north: number
  readonly up: number
}

export interface Point {
  readonly east: number
  readonly north: number
  readonly up: number
}

/**
 * Height of the horizon in a direction: straight lines between the points, round the compass.
 *
 * @param points In rising order of azimuth, at least two.
 * @param azimuthDeg Degrees clockwise from true north.
 * @returns Degrees above level.
 */
export function horizonElevationDeg(points: readonly HorizonPoint[], azimuthDeg: number): number {
  const azimuth = ((azimuthDeg % 360) + 360) % 360
  const last = points.length - 1
  for (let index = 0; index <= last; index += 1) {
    const from = points[index] as HorizonPoint
    const to = points[index === last ? 0 : index + 1] as HorizonPoint
    const end = index === last ? to.azimuthDeg + 360 : to.azimuthDeg
    const at = azimuth < from.azimuthDeg ? azimuth + 360 : azimuth
    if (at >= from.azimuthDeg && at <= end && end > from.azimuthDeg) {
      const share = (at - from.azimuthDeg) / (end - from.azimuthDeg)
      return from.elevationDeg * (1 - share) + to.elevationDeg * share
    }
  }
  return (points[0] as HorizonPoint).elevationDeg
}

/** Whether a far obstacle stands in the line from a point towards a light source. */
export function isBehindObstacle(obstacle: FarObstacle, from: Point, towards: Direction): boolean {
  const forwardEast = Math.sin(obstacle.bearingDeg * RADIANS)
  const forwardNorth = Math.cos(obstacle.bearingDeg * RADIANS)
  const approach = towards.east * forwardEast + towards.north * forwardNorth
  const gap = obstacle.distanceFt - (from.east * forwardEast + from.north * forwardNorth)
  if (approach <= 1e-9 || gap <= 0) return false
  const reach = gap / approach
  const across =
    from.east * forwardNorth - from.north * forwardEast + reach * (towards.east * forwardNorth - towards.north * forwardEast)
  if (Math.abs(across) > obstacle.widthFt / 2) return false
  const height = from.up + reach * towards.up
  return height >= obstacle.baseFt && height <= obstacle.topFt
}

/**
 * Whether a box on the roof stands in the line from a point of the same plane towards a light source.
 *
 * @param box In plane coordinates, ft.
 * @param x Point along the eave, ft.
 * @param y Point up the slope, ft.
 * @param height Height of the point above the surface, ft.
 * @param alongX Direction in plane coordinates: along the eave, up the slope, away from the surface.
 */
export function isBehindBox(
  box: RoofBox,
  x: number,
  y: number,
  height: number,
  alongX: number,
  alongY: number,
  away: number,
): boolean {
  if (height >= box.heightFt || away <= 0) return false
  let near = 0
  let far = (box.heightFt - height) / away
  const slabs: readonly (readonly [number, number, number, number])[] = [
    [x, alongX, box.xFt, box.xFt + box.widthFt],
    [y, alongY, box.yFt, box.yFt + box.lengthFt],
  ]
  for (const [start, speed, low, high] of slabs) {
    if (Math.abs(speed) < 1e-12) {
      if (start < low || start > high) return false
      continue
    }
    const a = (low - start) / speed
    const b = (high - start) / speed
    near = Math.max(near, Math.min(a, b))
    far = Math.min(far, Math.max(a, b))
    if (near > far) return false
  }
  return true
}

/** The three axes of a roof plane in local east, north, up: along the eave, up the slope, away from the surface. */
export interface PlaneAxes {
  readonly x: Direction
  readonly y: Direction
  readonly normal: Direction
}

/**
 * Axes of a plane.
 *
 * @param tiltDeg From level, degrees.
 * @param azimuthDeg Direction that the plane faces, degrees clockwise from true north.
 */
export function planeAxes(tiltDeg: number, azimuthDeg: number): PlaneAxes {
  const sinTilt = Math.sin(tiltDeg * RADIANS)
  const cosTilt = Math.cos(tiltDeg * RADIANS)
  const sinAzimuth = Math.sin(azimuthDeg * RADIANS)
  const cosAzimuth = Math.cos(azimuthDeg * RADIANS)
  return {
    // Facing the slope from outside, right is 90 degrees anticlockwise from the direction that the plane faces.
    x: { east: -cosAzimuth, north: sinAzimuth, up: 0 },
    y: { east: -sinAzimuth * cosTilt, north: -cosAzimuth * cosTilt, up: sinTilt },
    normal: { east: sinAzimuth * sinTilt, north: cosAzimuth * sinTilt, up: cosTilt },
  }
}

/** Inner product of two directions. */
export function dot(a: Direction, b: Direction): number {
  return a.east * b.east + a.north * b.north + a.up * b.up
}
