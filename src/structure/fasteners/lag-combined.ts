import { radiansOf, type Degrees, type Pounds } from '../../values/index.js'

/**
 * Allowable resultant of a lag screw under withdrawal and lateral load together, lb.
 *
 * @param withdrawalLb Adjusted withdrawal capacity W'p, lb, over 0.
 * @param lateralLb Adjusted lateral capacity Z', lb, over 0.
 * @param angleDeg Angle of the resultant to the wood surface: 90 is straight out.
 * @source NDS 2018 eq. 12.4-1 (11.4-1 in NDS 2012)
 * @example combinedCapacityLb(1000, 300, 90) is 1000
 */
export function combinedCapacityLb(withdrawalLb: Pounds, lateralLb: Pounds, angleDeg: Degrees): Pounds {
  const a = radiansOf(angleDeg)
  return (withdrawalLb * lateralLb) / (withdrawalLb * Math.cos(a) ** 2 + lateralLb * Math.sin(a) ** 2)
}
