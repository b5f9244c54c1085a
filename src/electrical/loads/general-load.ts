import { CIRCUIT_VA } from '../../tables/nec/index.js'
import { StageError, type Source } from '../../worksheet/index.js'
import { recordLoad, tellMissing, WHERE, type LoadJob } from './load-job.js'
import { sumVa } from './appliance-load.js'
import type { Rating } from './nameplate.js'

/** Least number of laundry circuits of a dwelling. */
const LEAST_LAUNDRY = 1

/** Where the method counts lighting and circuits. */
export interface GeneralSources {
  readonly lighting: Source
  readonly circuits: Source
}

/**
 * General lighting by floor area, and small-appliance and laundry circuits.
 *
 * @throws StageError when floor area or number of small-appliance circuits is not stated.
 */
export function generalLoadVa(load: LoadJob, sources: GeneralSources): number {
  const { stated, factors } = load
  const area = needed(
    stated.floor_area_ft2,
    'floor_area_ft2',
    'the floor area',
    'Measure it from outside, floor by floor',
  )
  const kitchen = needed(
    stated.small_appliance_circuits,
    'small_appliance_circuits',
    'the number of small-appliance circuits',
    'Count the 20 A circuits of kitchen and dining; at least 2 are counted',
  )
  if (stated.laundry_circuits === undefined)
    tellMissing(
      load,
      'laundry_circuits',
      `the number of laundry circuits is not stated; ${LEAST_LAUNDRY} of ${CIRCUIT_VA} VA is counted`,
      sources.circuits,
    )
  const laundry = stated.laundry_circuits ?? LEAST_LAUNDRY
  const lighting = recordLoad(load, {
    id: 'lighting',
    says: 'General lighting and receptacles by floor area',
    formula: 'u * F',
    inputs: [
      ['u', factors.lightingVaPerFt2, 'VA/ft2', 'load factors of the edition'],
      ['F', area, 'ft2', `${WHERE}.floor_area_ft2`],
    ],
    symbol: 'L',
    va: factors.lightingVaPerFt2 * area,
    source: sources.lighting,
  })
  const circuits = recordLoad(load, {
    id: 'circuits',
    says: 'Small-appliance and laundry circuits',
    formula: 'c * (k + l)',
    inputs: [
      ['c', CIRCUIT_VA, 'VA', 'load of one circuit'],
      ['k', kitchen, '', `${WHERE}.small_appliance_circuits`],
      ['l', laundry, '', stated.laundry_circuits === undefined ? 'least number' : `${WHERE}.laundry_circuits`],
    ],
    symbol: 'C',
    va: CIRCUIT_VA * (kitchen + laundry),
    source: sources.circuits,
  })
  return lighting + circuits
}

/** Sum of loads as a step; without a step when there are none. */
export function recordSum(load: LoadJob, id: string, says: string, loads: readonly Rating[], suffix: string): number {
  if (loads.length === 0) return 0
  const symbols = loads.map((_, i) => `P${i + 1}`)
  return recordLoad(load, {
    id,
    says,
    formula: symbols.join(' + '),
    inputs: loads.map(({ va, from }, i) => [symbols[i] ?? '', va, 'VA', from]),
    symbol: 'P',
    va: sumVa(loads),
    source: load.section(suffix),
  })
}

function needed(value: number | undefined, key: string, what: string, fix: string): number {
  if (value !== undefined && Number.isFinite(value) && value > 0) return value
  throw new StageError(`${WHERE}.${key}`, `${what} is not stated, so the load cannot be calculated`, fix)
}
