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
  const reach = (box.heightFt - height) / away
  // Where the line leaves the box's height it has run alongX * reach: the shadow is short or it misses.
  const endX = x + alongX * reach
  const endY = y + alongY * reach
  const right = box.xFt + box.widthFt
  const top = box.yFt + box.lengthFt
  if ((x < box.xFt && endX < box.xFt) || (x > right && endX > right)) return false
  if ((y < box.yFt && endY < box.yFt) || (y > top && endY > top)) return false
  let near = 0
  let far = reach
  if (Math.abs(alongX) > 1e-12) {
    const a = (box.xFt - x) / alongX
    const b = (right - x) / alongX
    near = Math.max(near, Math.min(a, b))
    far = Math.min(far, Math.max(a, b))
  }
  if (Math.abs(alongY) > 1e-12) {
    const a = (box.yFt - y) / alongY
    const b = (top - y) / alongY
    near = Math.max(near, Math.min(a, b))
    far = Math.min(far, Math.max(a, b))
  }
  return near <= far
}
