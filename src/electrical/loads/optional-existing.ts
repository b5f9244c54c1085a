import { StageError } from '../../worksheet/index.js'
import { climateLoad, heatingVa } from './climate-load.js'
import { demandVa, loadList, recordDemand } from './list-demand.js'
import { recordLoad, refuse, WHERE, type LoadJob } from './load-job.js'
import type { MethodLoad } from './method-load.js'
import { tellVehicles } from './tell-vehicles.js'

/**
 * Optional method of a dwelling that gets more load. The larger of cooling and heating counts whole, whether it is new or in place;
 * for what is in place the code can be read so that a part would do.
 *
 * @returns undefined where the numbers of the edition are not known.
 * @throws StageError when it is not stated whether cooling or heating is added.
 * @source NEC 220.83(A), (B)
 */
export function optionalExisting(load: LoadJob): MethodLoad | undefined {
  const { stated, factors, section } = load
  const firstVa = factors.existingFirstVa
  if (firstVa === undefined)
    return refuse(load, {
      severity: 'error',
      id: 'wire.load-method',
      where: `${WHERE}.method`,
      message: `the numbers of ${factors.article}.83 in ${factors.edition} are not known, so the method of an existing dwelling gives no load`,
      fix: 'Use optional_new or measured; ask the authority in writing before you work by 220.83 of NEC 2023',
      source: section('.83'),
    })
  const suffix = added(load) ? '.83(B)' : '.83(A)'
  const list = loadList(load, suffix)
  const demand = recordDemand(load, list.va, firstVa, suffix)
  const climate = climateLoad(load, suffix)
  const climateVa = Math.max(climate.coolingVa, heatingVa(climate))
  if (stated.existing_ac_or_heat_added === true && climateVa === 0)
    throw new StageError(
      `${WHERE}.existing_ac_or_heat_added`,
      'air conditioning or heating is added, but neither cooling nor heating is stated',
      'State it under cooling or heating',
    )
  const va = recordLoad(load, {
    id: 'total',
    says: 'Load of the dwelling: part of the list, and the larger of cooling and heating whole',
    formula: 'D + max(A, H)',
    inputs: [
      ['D', demand, 'VA', 'wire.load.demand'],
      ['A', climate.coolingVa, 'VA', 'air conditioning'],
      ['H', heatingVa(climate), 'VA', 'heat pumps, their supplement, resistance heat and storage'],
    ],
    symbol: 'S',
    va: demand + climateVa,
    source: section(suffix),
    limits: 'Cooling and heating in place count whole, which is on the safe side where none is added',
  })
  tellVehicles(load, list, firstVa, va)
  const source = section(suffix)
  // Which cooling or heating was there before is not told.
  if (stated.existing_ac_or_heat_added === true) return { va, source }
  return { va, beforeVa: demandVa(list.oldVa, firstVa) + climateVa, source }
}

function added({ stated }: LoadJob): boolean {
  if (stated.existing_ac_or_heat_added !== undefined) return stated.existing_ac_or_heat_added
  throw new StageError(
    `${WHERE}.existing_ac_or_heat_added`,
    'whether air conditioning or electric space heating is added is not stated',
    'State true or false; it decides between 220.83(A) and (B)',
  )
}
