import { feetOf, at, poundFeetOf, radiansOf, type Feet, type Pounds } from '../../values/index.js'
import type { RafterInput } from './rafter-input.js'
import type { RafterSpans } from './rafter-spans.js'
import type { CombinationLine } from './worst-checks.js'
import { columnStability } from './stability.js'
import type { WoodStrength } from './wood-strength.js'

/** What rafters that lean on each other push and carry along their length. */
export interface RafterThrust {
  /** Outward push at the plate, lb. */
  readonly thrustLb: Pounds
  /** Force along the rafter at its heel and at the ridge, lb. */
  readonly heelLb: Pounds
  readonly ridgeLb: Pounds
  /** Of axial force (mean) and bending together. */
  readonly interaction: number
  readonly spanFt: Feet
}

/**
 * Heel thrust and axial force of a rafter pair without a ridge beam, under the even load that bends it as much.
 *
 * @param line A combination that presses down.
 * @source statics of a three-hinged pair, H = w L / (2 tan); interaction NDS 2018 3.9.2 (secondary)
 */
export function rafterThrust(
  input: Pick<RafterInput, 'plane'>,
  wood: WoodStrength,
  spans: RafterSpans,
  line: CombinationLine,
): RafterThrust {
  const angle = radiansOf(input.plane.tiltDeg)
  const spanIn = at(spans.supportsIn, spans.supportsIn.length - 1) - at(spans.supportsIn, 0)
  const spanFt = feetOf(spanIn)
  const momentLbFt = Math.abs(poundFeetOf(line.momentLbIn))
  const perFt = (8 * momentLbFt) / spanFt ** 2
  const thrustLb = (perFt * spanFt) / (2 * Math.tan(angle))
  const ridgeLb = thrustLb * Math.cos(angle)
  const heelLb = ridgeLb + perFt * spanFt * Math.sin(angle)
  const compressionPsi = wood.compressionPsi * line.loadDuration
  const column = columnStability(wood, spanIn / Math.cos(angle), compressionPsi)
  const axialPsi = (heelLb + ridgeLb) / 2 / wood.areaIn2
  const grown = 1 - axialPsi / column.eulerPsi
  const bent = line.stressPsi / line.allowablePsi
  const interaction = grown > 0 ? (axialPsi / (compressionPsi * column.factor)) ** 2 + bent / grown : Number.MAX_VALUE
  return { thrustLb, heelLb, ridgeLb, interaction, spanFt }
}
