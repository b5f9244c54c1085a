import type { ConductorMaterial, ConductorSize } from '../../tables/nec/index.js'
import type { Amperes, Feet, Volts } from '../../values/index.js'
import { USUAL_SERVICE_V } from '../system/index.js'
import { conductorConstant } from './conductor-constant.js'
import type { FaultPair } from './fault-pair.js'

/** Voltage from a line to the neutral of the service, V. */
export const NEUTRAL_VOLTAGE_V = USUAL_SERVICE_V / 2

/** A piece of the way of the fault current. */
export interface FaultRun {
  readonly size: ConductorSize
  readonly material: ConductorMaterial
  /** Sets in parallel. */
  readonly sets: number
  /** One way, ft. */
  readonly lengthFt: Feet
}

/**
 * Fault current at the end of a run, both ways; the neutral counts as large as a line.
 *
 * @param at Fault current at its start.
 */
export function faultDown(at: FaultPair, run: FaultRun): FaultPair {
  const constant = run.sets * conductorConstant(run)
  return {
    lineToLineA: pointToPointA(at.lineToLineA, run.lengthFt, constant, USUAL_SERVICE_V),
    lineToNeutralA: pointToPointA(at.lineToNeutralA, run.lengthFt, constant, NEUTRAL_VOLTAGE_V),
  }
}

/**
 * Point-to-point method: f = 2 L I / (C V), and I / (1 + f) at the end.
 *
 * @param constant Constant C of all sets together, ft per ohm.
 */
export function pointToPointA(startA: Amperes, lengthFt: Feet, constant: number, voltageV: Volts): Amperes {
  return startA / (1 + (2 * lengthFt * startA) / (constant * voltageV))
}
