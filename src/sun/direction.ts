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

/** Inner product of two directions. */
export function dot(a: Direction, b: Direction): number {
  return a.east * b.east + a.north * b.north + a.up * b.up
}
