import { REST_SHARE } from '../../tables/nec/index.js'
import { applianceLoads, sumVa, type ApplianceLoad } from './appliance-load.js'
import { generalLoadVa, recordSum } from './general-load.js'
import { recordLoad, tellMissing, type LoadJob } from './load-job.js'

/** Lighting, circuits and appliances of the optional methods. */
export interface LoadList {
  readonly va: number
  /** Without new loads, VA. */
  readonly oldVa: number
  /** Outlets for vehicles that stand in the list, VA. */
  readonly vehicleVa: number
  /** Outlets for vehicles that count whole beside it, VA. */
  readonly wholeVa: number
}

/** The list of which the optional methods count the first part whole and a share of the rest. */
export function loadList(load: LoadJob, suffix: string): LoadList {
  const general = generalLoadVa(load, generalSources(load, suffix))
  const all = applianceLoads(load)
  tellNoAppliances(load, suffix)
  const isWhole = ({ kind }: ApplianceLoad) => kind === 'ev_supply' && !load.factors.vehicleInList
  const listed = all.filter((one) => !isWhole(one))
  const whole = all.filter(isWhole)
  const appliances = recordSum(load, 'appliances', 'Appliances at their nameplates', listed, suffix)
  const va = recordLoad(load, {
    id: 'list',
    says: 'Lighting, circuits and appliances together',
    formula: 'G + P',
    inputs: [
      ['G', general, 'VA', 'wire.load.lighting and wire.load.circuits'],
      ['P', appliances, 'VA', listed.length === 0 ? 'no appliances' : 'wire.load.appliances'],
    ],
    symbol: 'T',
    va: general + appliances,
    source: load.section(suffix),
  })
  const old = (loads: readonly ApplianceLoad[]) => sumVa(loads.filter(({ isNew }) => !isNew))
  return {
    va,
    oldVa: general + old(listed),
    vehicleVa: sumVa(listed.filter(({ kind }) => kind === 'ev_supply')),
    wholeVa: recordSum(load, 'vehicles', 'Outlets for vehicles, counted whole', whole, '.82(D)'),
  }
}

/** 220.82(B) numbers its parts; 220.83 does so below its two cases alike. */
const generalSources = ({ section }: LoadJob, suffix: string) => ({
  lighting: section(`${suffix}(1)`),
  circuits: section(`${suffix}(2)`),
})

/** Says so where no appliances are stated. */
export function tellNoAppliances(load: LoadJob, suffix: string): void {
  if (load.stated.appliances !== undefined) return
  tellMissing(
    load,
    'appliances',
    'no appliances are stated, so the load holds 0 VA of what is in place',
    load.section(suffix),
  )
}

/** First part whole, of the rest a share, VA. */
export const demandVa = (listVa: number, firstVa: number, restShare: number = REST_SHARE): number =>
  Math.min(listVa, firstVa) + restShare * Math.max(0, listVa - firstVa)

/** The demand of a list as a step. */
export function recordDemand(load: LoadJob, listVa: number, firstVa: number, suffix: string): number {
  return recordLoad(load, {
    id: 'demand',
    says: 'First part of the list whole, a share of the rest',
    formula: 'min(T, F) + r * max(0, T - F)',
    inputs: [
      ['T', listVa, 'VA', 'wire.load.list'],
      ['F', firstVa, 'VA', 'load factors of the edition'],
      ['r', REST_SHARE, '', 'share of the rest'],
    ],
    symbol: 'D',
    va: demandVa(listVa, firstVa),
    source: load.section(suffix),
  })
}
