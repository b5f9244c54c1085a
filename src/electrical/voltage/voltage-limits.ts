import {
  conductorSizes,
  type ConductorMaterial,
  type ConductorSize,
  type WiringMethod,
} from '../../tables/nec/index.js'
import {
  baseAmpacityA,
  type Conductor,
  dcResistanceOhmPerKft,
  effectiveImpedanceOhmPerKft,
  type RacewayMetal,
} from '../conductors/index.js'
import {
  inTurn,
  isAc,
  isShared,
  onwardOf,
  type Circuit,
  practice,
  type Job,
  twoWireEquivalentA,
} from '../system/index.js'
import { isMetal, type RacewaySegment } from '../raceways/index.js'
import { invertersOnLongerHalf, trunkRiseV } from './voltage-rise.js'
import type { Amperes, Feet, Percent } from '../../values/index.js'

/** Rise along the trunk of a branch, V; 0 without a trunk. */
export function trunkRiseOf(circuit: Circuit): number {
  const { trunk } = circuit
  if (trunk === undefined) return 0
  const onHalf = invertersOnLongerHalf(trunk.inverters, trunk.feed)
  return trunkRiseV(onHalf, trunk.lengthFt / onHalf, trunkEachA(circuit, onHalf), trunkOhmPerKft(trunk.cable))
}

/**
 * Current of one inverter as the rise along a trunk counts it, A. Where they take three pairs of lines in turn, the mean
 * over the pieces of what a two-wire trunk with the same rise would carry for each inverter beyond.
 */
export function trunkEachA(
  { lines, operatingA, inverters, inverter, pairCurrentsA }: Circuit,
  onHalf: number,
): Amperes {
  if (lines !== 'ABC' || inverter?.phases === 3 || pairCurrentsA === undefined) return operatingA / inverters
  const eachA = (pairCurrentsA.ab + pairCurrentsA.bc + pairCurrentsA.ca) / inverters
  const pieces = Array.from({ length: onHalf }, (_, i) => twoWireEquivalentA(inTurn(i + 1, eachA)))
  return (2 * pieces.reduce((sum, piece) => sum + piece, 0)) / (onHalf * (onHalf + 1))
}

/** Resistance of a trunk conductor, ohm per 1000 ft: the maker's, or that of Table 8 for copper. */
export function trunkOhmPerKft(cable: NonNullable<Circuit['trunk']>['cable']): number {
  return cable.resistance_ohm_per_kft ?? dcResistanceOhmPerKft({ size: cable.size_awg, material: 'copper' })
}

/** Whether a raceway counts as steel for its reactance. */
export const racewayMetal = (raceway: WiringMethod): RacewayMetal => (isMetal(raceway) ? 'steel' : 'pvc')

/** Power factor of the inverters. */
export function powerFactorOf(job: Job): number {
  return (
    job.electrical.power_factor ??
    job.worksheet.assume({
      path: 'electrical.power_factor',
      value: 1,
      unit: '',
      why: 'Inverters run at unity unless the utility asks for another power factor',
      source: practice(''),
    })
  )
}

/**
 * Largest voltage rise or drop of a circuit up to the point of connection.
 *
 * @returns percent: the lower of the project's and the maker's limit, or a default.
 */
export function voltageLimitPct(job: Job, circuit: Circuit): Percent {
  if (!isAc(circuit))
    return (
      job.electrical.dc_voltage_drop_limit_pct ??
      job.worksheet.assume({
        path: 'electrical.dc_voltage_drop_limit_pct',
        value: 3,
        unit: '%',
        why: 'The code recommends no more than 3 % on a branch; it does not require it',
        source: job.nec('voltageDrop'),
      })
    )
  const stated = Math.min(job.electrical.voltage_rise_limit_pct ?? Infinity, circuit.makerRisePct ?? Infinity)
  if (stated < Infinity) return stated
  const moduleLevel = circuit.kind === 'ac_branch' || circuit.inverters > 1
  return job.worksheet.assume({
    path: 'electrical.voltage_rise_limit_pct',
    value: moduleLevel ? 2 : 3,
    unit: '%',
    why: moduleLevel
      ? 'Makers of module-level inverters ask for no more than 2 % from the point of connection to the last inverter'
      : 'The code recommends no more than 3 % on a branch; it does not require it',
    source: moduleLevel
      ? {
          document: 'technical brief of a maker of module-level inverters, circuit calculations',
          edition: '2015',
          standing: 'secondary',
        }
      : job.nec('voltageDrop'),
  })
}

/**
 * Share of its limit for which the runs of a circuit are enlarged at the most. Where the trunk leaves less, copper in the
 * runs hardly helps: the trunk has to become better.
 */
export const LEAST_RUN_SHARE = 0.1

/**
 * Largest impedance per conductor that keeps each circuit within its limit, ohm per 1000 ft, by circuit id; where its
 * trunk leaves too little, that with which the runs take `LEAST_RUN_SHARE` of the limit.
 */
export function impedanceLimits(
  job: Job,
  circuits: readonly Circuit[],
  segments: readonly RacewaySegment[],
): Map<string, number> {
  const lengthFt = (circuit: Circuit): Feet =>
    segments
      .filter((segment) => segment.circuits.includes(circuit))
      .reduce((sum, segment) => sum + segment.stated.length_ft, 0)
  const limits = new Map<string, number>()
  for (const circuit of circuits) {
    if (isShared(circuit) || circuit.kind === 'dc_output') continue
    const shared = onwardOf(circuit, circuits)
    const limitV = (voltageLimitPct(job, circuit) / 100) * circuit.voltageV
    const leftV = Math.max(limitV - trunkRiseOf(circuit), LEAST_RUN_SHARE * limitV)
    // What the trunk leaves is shared by length: equal volts per foot in the branch and in what all branches share.
    const voltsPerFt = leftV / [circuit, ...shared].reduce((sum, each) => sum + lengthFt(each), 0)
    limits.set(circuit.id, (voltsPerFt * 1000) / (2 * circuit.operatingA))
    for (const { id, operatingA } of shared)
      limits.set(id, Math.min((voltsPerFt * 1000) / (2 * operatingA), limits.get(id) ?? Infinity))
  }
  return limits
}

/**
 * Smallest size whose impedance is within a limit, or the largest of the tables when none is.
 *
 * It does not depend on ampacity, so that a hotter segment never makes another one smaller.
 *
 * @param limitOhmPerKft ohm per 1000 ft, above zero.
 */
export function voltageFloor(
  limitOhmPerKft: number,
  material: ConductorMaterial,
  raceway: WiringMethod,
  ac: boolean,
  powerFactor: number,
): ConductorSize | undefined {
  const made = conductorSizes.filter((size) => isMade({ size, material }))
  return (
    made.find((size) => impedanceOhmPerKft({ size, material }, raceway, ac, powerFactor) <= limitOhmPerKft) ??
    made.at(-1)
  )
}

/** Whether a metal is made in a size. */
export const isMade = (conductor: Conductor): boolean => baseAmpacityA(conductor, 90, false) !== undefined

/** Impedance of one conductor as the circuit sees it, ohm per 1000 ft at 75 deg C. */
export function impedanceOhmPerKft(
  conductor: Conductor,
  raceway: WiringMethod,
  ac: boolean,
  powerFactor: number,
): number {
  return ac
    ? effectiveImpedanceOhmPerKft(conductor, racewayMetal(raceway), powerFactor)
    : dcResistanceOhmPerKft(conductor)
}
