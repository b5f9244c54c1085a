import { conductorSizes, smallConductors, type ConductorMaterial, type ConductorSize } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import { adjustmentFactor, ambientFactor, baseAmpacityA } from '../conductors/index.js'
import { outdoorDesignC, practice, type Job } from '../system/index.js'
import type { Amperes, Celsius } from '../../values/index.js'
import type { NodeConductor } from './tree.js'

/** Conductors as a person states them for service, feeder or tap. */
export interface StatedConductor {
  readonly where: string
  readonly material: ConductorMaterial
  readonly size: ConductorSize | undefined
  readonly insulation: string | undefined
  readonly sets: number
  readonly ambientC: Celsius | undefined
  readonly currentCarrying: number
  readonly method: string | undefined
  /** Lowest marking of the terminals at its ends, deg C. */
  readonly terminalC: 60 | 75
  /** Current that a size is chosen for where none is stated, A. */
  readonly neededA: Amperes
  /** Device that it has to be protected by when a size is chosen, A. */
  readonly deviceA: Amperes
}

/** Temperature ratings of insulations; THHN counts as in a place that may get wet. @source NEC 310.4 */
const INSULATION_C: Readonly<Record<string, 60 | 75 | 90>> = {
  'THWN-2': 90,
  'XHHW-2': 90,
  'USE-2': 90,
  THHN: 75,
  THWN: 75,
  TW: 60,
}

/** Cables whose result never goes above the 60 deg C column. @source NEC 334.80, 340.80 */
const CABLES_60 = new Set(['NM', 'UF'])

/** Smallest size that may lie in parallel sets. @source NEC 310.10(G) (2020 and later), 310.10(H): from memory */
const LEAST_PARALLEL: ConductorSize = '1/0'

/**
 * The conductors of a service, feeder or tap with their ampacity; the smallest size that carries the need where none is
 * stated.
 *
 * @throws StageError for a metal that is not made so small, parallel sets of a small size, or a need above 500 kcmil.
 * @source NEC 310.16 (310.15(B)(16)), 310.15(B), (C), 110.14(C)
 */
export function nodeConductor(job: Job, stated: StatedConductor): NodeConductor {
  const { where, size, sets } = stated
  const factors = factorsOf(job, stated)
  if (size !== undefined && sets > 1 && conductorSizes.indexOf(size) < conductorSizes.indexOf(LEAST_PARALLEL))
    throw new StageError(
      `${where}.conductor_sets`,
      `parallel sets of ${size} AWG are not allowed; ${LEAST_PARALLEL} is the smallest`,
      'Read the size and the number of conductors again',
    )
  if (size !== undefined) {
    const ampacityA = ampacityOf(size, stated, factors)
    if (ampacityA === undefined)
      throw new StageError(`${where}.size_awg`, `${size} AWG is not made in ${stated.material}`, 'Read the size again')
    return conductor(stated, factors, size, ampacityA, true)
  }
  for (const candidate of conductorSizes) {
    if (sets > 1 && conductorSizes.indexOf(candidate) < conductorSizes.indexOf(LEAST_PARALLEL)) continue
    const ampacityA = ampacityOf(candidate, stated, factors)
    const small = smallConductors.find((row) => row.size === candidate && row.material === stated.material)
    if (ampacityA === undefined || (small !== undefined && stated.deviceA > small.maxDeviceA)) continue
    if (ampacityA >= stated.neededA * (1 - 1e-12)) return conductor(stated, factors, candidate, ampacityA, false)
  }
  throw new StageError(
    `${where}.size_awg`,
    `no ${stated.material} conductor up to 500 kcmil carries ${stated.neededA.toFixed(1)} A here`,
    'State conductor_sets for parallel conductors, or ask an electrical engineer',
  )
}

interface Factors {
  readonly columnC: 60 | 75 | 90
  readonly ambientC: Celsius
  readonly correction: number
  readonly adjustment: number
}

function factorsOf(job: Job, stated: StatedConductor): Factors {
  const columnC = INSULATION_C[insulationOf(job, stated)] ?? 60
  const ambientC = stated.ambientC ?? outdoorDesignC(job)
  const correction = ambientFactor(ambientC, columnC)
  if (correction === undefined)
    throw new StageError(
      `${stated.where}.ambient_c`,
      `${ambientC} deg C is too hot for ${columnC} deg C insulation`,
      'Read the insulation on the conductors, or state the temperature where they lie',
    )
  return { columnC, ambientC, correction, adjustment: adjustmentFactor(stated.currentCarrying, false) }
}

function insulationOf(job: Job, { insulation, where }: StatedConductor): string {
  return (
    insulation ??
    job.worksheet.assume({
      path: `${where}.insulation`,
      value: 'TW',
      unit: '',
      why: 'Insulation that is not stated counts as 60 deg C',
      source: practice(''),
    })
  )
}

function ampacityOf(size: ConductorSize, stated: StatedConductor, factors: Factors): Amperes | undefined {
  const of = (column: 60 | 75 | 90) => baseAmpacityA({ size, material: stated.material }, column, false)
  const base = of(factors.columnC)
  const terminal = of(stated.terminalC)
  const cable = CABLES_60.has(stated.method ?? '') ? of(60) : Infinity
  if (base === undefined || terminal === undefined || cable === undefined) return undefined
  return stated.sets * Math.min(base * factors.correction * factors.adjustment, terminal, cable)
}

function conductor(
  stated: StatedConductor,
  { columnC, ambientC, correction, adjustment }: Factors,
  size: ConductorSize,
  ampacityA: Amperes,
  named: boolean,
): NodeConductor {
  return {
    size,
    material: stated.material,
    sets: stated.sets,
    insulation: stated.insulation ?? 'not stated, 60 deg C',
    ampacityA,
    how: `${columnC} deg C column x ${correction} (${ambientC} deg C) x ${adjustment}, at most the ${stated.terminalC} deg C column of the terminals${stated.sets > 1 ? `; ${stated.sets} sets` : ''}`,
    named,
  }
}
