import { xy, type XY } from '../model/index.js'

/** Places beside its own for a text inside a figure. */
export const NEAR: readonly XY[] = [0, -9, 9, -18, 18, -27, 27].flatMap((dy) => [0, -14, 14].map((dx) => xy(dx, dy)))
