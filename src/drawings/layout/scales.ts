import type { Box, XY } from '../model/index.js'
import type { Feet } from '../../values/index.js'

/** A scale that a scale rule has. */
export interface Scale {
  readonly note: string
  readonly ptPerFt: number
}

/** Architects' scales, largest first: so many inches of paper for a foot. */
export const ARCHITECT_SCALES: readonly Scale[] = [
  { note: '3/4" = 1\'-0"', ptPerFt: 54 },
  { note: '1/2" = 1\'-0"', ptPerFt: 36 },
  { note: '3/8" = 1\'-0"', ptPerFt: 27 },
  { note: '1/4" = 1\'-0"', ptPerFt: 18 },
  { note: '3/16" = 1\'-0"', ptPerFt: 13.5 },
  { note: '1/8" = 1\'-0"', ptPerFt: 9 },
  { note: '3/32" = 1\'-0"', ptPerFt: 6.75 },
  { note: '1/16" = 1\'-0"', ptPerFt: 4.5 },
]

/** Scales of site plans: the smaller ones of architects, and an inch of paper for so many feet. */
export const SITE_SCALES: readonly Scale[] = [
  ...ARCHITECT_SCALES.filter((scale) => scale.ptPerFt <= 9),
  ...[5, 10, 20, 30, 40, 50, 60, 80, 100, 150, 200, 300, 400, 500].map((feet) => ({
    note: `1" = ${feet}'-0"`,
    ptPerFt: 72 / feet,
  })),
].toSorted((a, b) => b.ptPerFt - a.ptPerFt)

/** Scales of sketches of a neighbourhood: an inch of paper for so many feet. */
export const VICINITY_SCALES: readonly Scale[] = [
  100, 200, 300, 400, 500, 600, 800, 1000, 1500, 2000, 3000, 4000, 5000, 10_000, 20_000, 50_000, 100_000,
].map((feet) => ({ note: `1" = ${feet}'-0"`, ptPerFt: 72 / feet }))

/** Scales of details, as shares of full size. */
export const DETAIL_SCALES: readonly Scale[] = [
  { note: '6" = 1\'-0" (half size)', ptPerFt: 432 },
  { note: '4" = 1\'-0" (third size)', ptPerFt: 288 },
  { note: '3" = 1\'-0" (quarter size)', ptPerFt: 216 },
  { note: '2" = 1\'-0" (sixth size)', ptPerFt: 144 },
  { note: '1 1/2" = 1\'-0" (eighth size)', ptPerFt: 108 },
  { note: '1" = 1\'-0" (twelfth size)', ptPerFt: 72 },
]

/**
 * The largest scale at which a thing of a size (ft) fits a part of the paper, or the smallest there is.
 *
 * @param room In units of the layout.
 * @param unitPt Points of paper for a unit of the layout.
 * @returns the scale in units of the layout per foot, its name as it is on paper.
 */
export function largestScale(
  scales: readonly Scale[],
  widthFt: Feet,
  heightFt: Feet,
  room: { readonly width: number; readonly height: number },
  unitPt = 1,
): Scale {
  const laidOut = scales.map((scale) => ({ ...scale, ptPerFt: scale.ptPerFt / unitPt }))
  const found =
    laidOut.find((scale) => widthFt * scale.ptPerFt <= room.width && heightFt * scale.ptPerFt <= room.height) ??
    laidOut.at(-1)
  if (found === undefined) throw new Error('no scales to choose from')
  return found
}

/** Where the origin lies on paper when the middle of a thing lies in the middle of a box. */
export function centredOrigin(low: XY, high: XY, scale: Scale, box: Box): XY {
  return {
    x: box.x + box.width / 2 - ((low.x + high.x) / 2) * scale.ptPerFt,
    y: box.y + box.height / 2 + ((low.y + high.y) / 2) * scale.ptPerFt,
  }
}
