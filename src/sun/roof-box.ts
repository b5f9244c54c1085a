/** A box that stands on the roof plane, ft in plane coordinates. */
export interface RoofBox {
  readonly xFt: number
  readonly yFt: number
  readonly widthFt: number
  readonly lengthFt: number
  readonly heightFt: number
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
