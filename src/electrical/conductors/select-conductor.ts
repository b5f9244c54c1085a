import { conductorSizes, smallConductors, type ConductorMaterial, type ConductorSize } from '../../tables/nec/index.js'
import { baseAmpacityA, type Conductor } from './base-ampacity.js'
import { type ServiceFloor, deviceProtects } from '../system/index.js'
import type { Amperes } from '../../values/index.js'

/** Column that no ampacity of a wiring method may exceed. */
export interface AmpacityLimit {
  readonly columnC: 60
  /** Last size that it holds for; undefined for all. */
  readonly toSize: ConductorSize | undefined
}

/** What a conductor has to satisfy in one segment. */
export interface ConductorDemand {
  /** Maximum circuit current, A. */
  readonly continuousA: Amperes
  /** 125 percent of it, A. */
  readonly requiredA: Amperes
  /** Overcurrent device that protects it, A; null when none is needed. */
  readonly deviceA: Amperes | null
  readonly material: ConductorMaterial
  readonly terminalC: 60 | 75
  readonly freeAir: boolean
  /** Column that correction and adjustment start from, deg C; 90 when missing. */
  readonly factorC?: 60 | 75 | 90 | undefined
  /** Column that the wiring method holds the ampacity to. */
  readonly limit?: AmpacityLimit | undefined
  readonly correction: number
  readonly adjustment: number
  /** Smallest size that keeps the voltage rise within its limit; undefined when it does not matter. */
  readonly voltageFloor: ConductorSize | undefined
  /** Of conductors ahead of a service disconnect; undefined behind one. */
  readonly service?: ServiceFloor | undefined
}

/** The tests in the order in which an inspector makes them; the last two are choices, not ampacities. */
export const conductorTests = [
  'terminal',
  'conditions_of_use',
  'overcurrent_device',
  'small_conductor',
  'end_device',
  'least_service',
  'least_size',
  'voltage_rise',
] as const
export type ConductorTest = (typeof conductorTests)[number]

/** A size with its ampacities and the tests that it fails. */
export interface ConductorVerdict {
  readonly conductor: Conductor
  /** Table ampacity of the insulation, A. */
  readonly baseA: Amperes
  /** After correction and adjustment, and not above what the wiring method leaves, A. */
  readonly correctedA: Amperes
  /** Table ampacity of the terminals' column, or of that of the wiring method where it is lower, A. */
  readonly terminalA: Amperes
  /** Largest device that small conductors may have, A; undefined for larger ones. */
  readonly smallDeviceA: Amperes | undefined
  readonly fails: readonly ConductorTest[]
}

/**
 * Puts one size through every test.
 *
 * @returns undefined when the metal is not made in that size.
 * Ahead of a service disconnect the next standard size above the ampacity is not used, which is on the safe side.
 *
 * @source NEC 110.14(C), 230.42, 230.79(D), 230.90, 240.4, 240.4(D), 690.8(B), 705.28(B)
 */
export function judgeConductor(size: ConductorSize, demand: ConductorDemand): ConductorVerdict | undefined {
  const conductor: Conductor = { size, material: demand.material }
  const baseA = baseAmpacityA(conductor, demand.factorC ?? 90, demand.freeAir)
  // Terminals are rated with the raceway table even where the wire hangs in free air.
  const columnA = baseAmpacityA(conductor, demand.terminalC, false)
  if (baseA === undefined || columnA === undefined) return undefined
  const limitA = methodLimitA(conductor, demand.limit)
  const terminalA = Math.min(columnA, limitA)
  const correctedA = Math.min(baseA * demand.correction * demand.adjustment, limitA)
  const smallDeviceA = smallConductors.find((row) => row.size === size && row.material === demand.material)?.maxDeviceA
  const ampacityA = Math.min(correctedA, terminalA)
  const atLeast = (least: ConductorSize | undefined): boolean =>
    least === undefined || conductorSizes.indexOf(size) >= conductorSizes.indexOf(least)
  const passes: Record<ConductorTest, boolean> = {
    terminal: terminalA >= demand.requiredA,
    conditions_of_use: correctedA >= demand.continuousA,
    overcurrent_device: demand.deviceA === null || deviceProtects(demand.deviceA, ampacityA),
    small_conductor: demand.deviceA === null || smallDeviceA === undefined || demand.deviceA <= smallDeviceA,
    end_device: ampacityA >= (demand.service?.endDeviceA ?? 0),
    least_service: ampacityA >= (demand.service?.leastA ?? 0),
    least_size: atLeast(demand.service?.leastSize),
    voltage_rise: atLeast(demand.voltageFloor),
  }
  const fails = conductorTests.filter((test) => !passes[test])
  return { conductor, baseA, correctedA, terminalA, smallDeviceA, fails }
}

/** Largest ampacity that the wiring method leaves a conductor, A. */
function methodLimitA(conductor: Conductor, limit: AmpacityLimit | undefined): Amperes {
  if (limit === undefined) return Infinity
  const beyond =
    limit.toSize !== undefined && conductorSizes.indexOf(conductor.size) > conductorSizes.indexOf(limit.toSize)
  return beyond ? Infinity : (baseAmpacityA(conductor, limit.columnC, false) ?? Infinity)
}

/** The smallest size that passes, and the test that made it so large. */
export interface ConductorChoice {
  readonly verdict: ConductorVerdict
  readonly governs: ConductorTest
  /** The smallest size that passes every test but the voltage rise. */
  readonly smallestByAmpacity: ConductorSize
}

/**
 * Chooses the smallest conductor that passes every test.
 *
 * @returns undefined when no size of the tables passes.
 */
export function selectConductor(demand: ConductorDemand): ConductorChoice | undefined {
  const verdicts = conductorSizes.flatMap((size) => judgeConductor(size, demand) ?? [])
  const at = verdicts.findIndex((verdict) => verdict.fails.length === 0)
  const verdict = verdicts[at]
  const byAmpacity = verdicts.find((candidate) => candidate.fails.every((test) => test === 'voltage_rise'))
  if (verdict === undefined || byAmpacity === undefined) return undefined
  const smaller = verdicts[at - 1]
  return {
    verdict,
    governs: governingTest(smaller, verdict, demand),
    smallestByAmpacity: byAmpacity.conductor.size,
  }
}

/** What the next smaller size fails; with nothing smaller, the test with the least to spare. */
function governingTest(
  smaller: ConductorVerdict | undefined,
  chosen: ConductorVerdict,
  demand: ConductorDemand,
): ConductorTest {
  const failed = smaller?.fails[0]
  if (failed !== undefined) return failed
  return chosen.terminalA / demand.requiredA <= chosen.correctedA / demand.continuousA
    ? 'terminal'
    : 'conditions_of_use'
}
