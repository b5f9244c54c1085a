import { FEET_PER_MILE, type Feet } from '../values/index.js'
import type { VicinityPoint } from './project-types.generated.js'

/** A place of the vicinity sketch, ft to the east and to the north. */
export function vicinityFeet(point: VicinityPoint): { readonly x: Feet; readonly y: Feet } {
  return 'x_ft' in point
    ? { x: point.x_ft, y: point.y_ft }
    : { x: point.x_mi * FEET_PER_MILE, y: point.y_mi * FEET_PER_MILE }
}
