import type { ModuleFace } from '../../scene/index.js'

/** Sample points along a bypass section, and across it. */
const USUAL_POINTS = { along: 8, across: 2 } as const
/** Where sections lie along a rack, as the shadow of the row in front does: how deep it is counts, and shallow ones slip between points. */
const RACK_POINTS = { along: 4, across: 4 } as const
const POINTS_PER_SECTION = USUAL_POINTS.along * USUAL_POINTS.across

/** Points of a face. */
export interface FacePoints {
  /** East, north and up of each, section by section. */
  readonly points: Float64Array
  /**
   * The points again by their numbers, eight for one look at the sky, all looks together each of them once. Each look lies beside
   * its own mirror image from left to right, so that the first two have as many points on either side.
   */
  readonly looks: Int32Array
}

/**
 * Spreads points evenly over a face.
 *
 * @param sections Bypass sections.
 * @param alongX Whether they lie side by side along the lower edge (portrait), or up the face (landscape).
 */
export function facePoints(face: ModuleFace, sections: number, alongX: boolean): FacePoints {
  const { middle, axes, widthFt, heightFt } = face
  const { along: most, across: wide } = face.onRack && !alongX ? RACK_POINTS : USUAL_POINTS
  const columns = alongX ? sections * wide : most
  const points = new Float64Array(sections * POINTS_PER_SECTION * 3)
  const byPlace = new Int32Array(sections * POINTS_PER_SECTION)
  let number = 0
  for (let section = 0; section < sections; section += 1) {
    for (let along = 0; along < most; along += 1) {
      for (let across = 0; across < wide; across += 1) {
        const side = section * wide + across
        const [column, row] = alongX ? [side, along] : [along, side]
        const rows = alongX ? most : sections * wide
        // Twice the distance from the middle in whole numbers, so that left and right are equal to the last digit.
        const right = (widthFt * (2 * column + 1 - columns)) / (2 * columns)
        const up = (heightFt * (2 * row + 1 - rows)) / (2 * rows)
        points[3 * number] = middle.east + right * axes.x.east + up * axes.y.east
        points[3 * number + 1] = middle.north + right * axes.x.north + up * axes.y.north
        points[3 * number + 2] = middle.up + right * axes.x.up + up * axes.y.up
        byPlace[row * columns + column] = number
        number += 1
      }
    }
  }
  return { points, looks: looksOver(byPlace, columns, sections) }
}

/** A place by its row and by its column counted from the nearer side. */
interface HalfPlace {
  readonly row: number
  readonly column: number
}

/** Sides on which a look takes its eight places; its mirror image takes the others. */
const IS_RIGHT = [false, false, true, true, true, true, false, false] as const

/** @param byPlace Number of the point at each place, row by row. */
function looksOver(byPlace: Int32Array, columns: number, sections: number): Int32Array {
  const rows = byPlace.length / columns
  const pairs: HalfPlace[][] = Array.from({ length: sections }, () => [])
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns / 2; column += 1) pairs[(row + column) % sections]!.push({ row, column })
  const offMiddle = (places: readonly HalfPlace[]): number =>
    Math.abs(2 * places.reduce((sum, { row }) => sum + row, 0) - places.length * (rows - 1))
  return Int32Array.from(
    pairs
      .toSorted((a, b) => offMiddle(a) - offMiddle(b))
      .flatMap((places) =>
        [false, true].flatMap((isMirrored) =>
          places.map(
            ({ row, column }, at) =>
              byPlace[row * columns + (IS_RIGHT[at] === isMirrored ? column : columns - 1 - column)]!,
          ),
        ),
      ),
  )
}
