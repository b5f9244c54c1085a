import { HEAT_SHARES, OPTIONAL_LEAST_SERVICE_A } from '../../tables/nec/index.js'
import { climateLoad, type ClimateLoad } from './climate-load.js'
import { loadList, recordDemand } from './list-demand.js'
import { recordLoad, refuse, WHERE, type LoadJob } from './load-job.js'
import type { MethodLoad } from './method-load.js'
import { tellVehicles } from './tell-vehicles.js'

/**
 * Optional method of a whole dwelling: part of the list, and the largest of what cools and heats.
 *
 * @returns undefined where the service is smaller than the method allows.
 * @source NEC 220.82 (120.82 of 2026)
 */
export function optionalNew(load: LoadJob): MethodLoad | undefined {
  const ratingA = load.job.electrical.service?.rating_a
  if (ratingA !== undefined && ratingA < OPTIONAL_LEAST_SERVICE_A)
    return refuse(load, {
      severity: 'error',
      id: 'wire.load-method',
      where: `${WHERE}.method`,
      message: `the optional method of a whole dwelling is for services of ${OPTIONAL_LEAST_SERVICE_A} A and more; this one is rated ${ratingA} A`,
      fix: 'Use the standard method, or the one of an existing dwelling where that is what it is',
      source: load.section('.82(A)'),
    })
  const list = loadList(load, '.82(B)')
  const demand = recordDemand(load, list.va, load.factors.newFirstVa, '.82(B)')
  const climateVa = largestClimate(load, climateLoad(load, '.82(C)'))
  const va = recordLoad(load, {
    id: 'total',
    says: 'Load of the dwelling',
    formula: 'D + K + E',
    inputs: [
      ['D', demand, 'VA', 'wire.load.demand'],
      ['K', climateVa, 'VA', 'wire.load.climate'],
      ['E', list.wholeVa, 'VA', 'outlets for vehicles beside the list'],
    ],
    symbol: 'S',
    va: demand + climateVa + list.wholeVa,
    source: load.section('.82'),
  })
  tellVehicles(load, list, load.factors.newFirstVa, va)
  return { va, source: load.section('.82') }
}

/**
 * The largest row. Resistance heat beside heat pumps counts as their supplement, which is more than the largest row alone.
 *
 * @source NEC 220.82(C)
 */
function largestClimate(load: LoadJob, climate: ClimateLoad): number {
  const { coolingVa, heatPumpVa, supplementVa, resistanceVa, storageVa, units } = climate
  const isMany = heatPumpVa === 0 && units >= HEAT_SHARES.manyFrom
  const share = isMany ? HEAT_SHARES.manyUnits : heatPumpVa > 0 ? HEAT_SHARES.supplement : HEAT_SHARES.fewUnits
  const heat = heatPumpVa + HEAT_SHARES.supplement * supplementVa + share * resistanceVa
  const va = recordLoad(load, {
    id: 'climate',
    says: `The largest of cooling, of heat (${isMany ? `${units} separately controlled units` : 'heat pumps whole, electric heat in part'}) and of thermal storage`,
    formula: 'max(A, H + s * U + h * R, B)',
    inputs: [
      ['A', coolingVa, 'VA', 'air conditioning'],
      ['H', heatPumpVa, 'VA', 'heat pumps'],
      ['s', HEAT_SHARES.supplement, '', 'share of a supplement'],
      ['U', supplementVa, 'VA', 'supplement of the heat pumps'],
      ['h', share, '', 'share of resistance heat'],
      ['R', resistanceVa, 'VA', 'resistance heat'],
      ['B', storageVa, 'VA', 'thermal storage'],
    ],
    symbol: 'K',
    va: Math.max(coolingVa, heat, storageVa),
    source: load.section('.82(C)'),
  })
  if (storageVa > 0 && heat > 0)
    load.job.worksheet.find({
      severity: 'warning',
      id: 'wire.load-heat-beside',
      message: `thermal storage of ${storageVa} VA and other electric heat that counts ${heat.toFixed(0)} VA are stated; the method counts the larger only`,
      where: `${WHERE}.heating`,
      source: load.section('.82(C)'),
      fix: 'Look whether they run together; then choose a main with that to spare',
    })
  return va
}
