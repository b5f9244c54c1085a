import type { LoadAppliance } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import { WHERE, type LoadJob } from './load-job.js'
import { nameplateVa, type Rating } from './nameplate.js'

/** One appliance of the list. */
export interface ApplianceLoad extends Rating {
  readonly id: string
  readonly kind: LoadAppliance['kind']
  readonly isNew: boolean
}

/** Appliances in place and new ones, with what the edition counts of an outlet for vehicles. */
export function applianceLoads(load: LoadJob): ApplianceLoad[] {
  const group = (key: 'appliances' | 'new_loads') =>
    Object.entries(load.stated[key] ?? {}).map(([id, appliance]): ApplianceLoad => {
      const where = `${WHERE}.${key}.${id}`
      return { id, kind: appliance.kind, isNew: key === 'new_loads', ...ratingOf(load, appliance, where) }
    })
  return [...group('appliances'), ...group('new_loads')]
}

function ratingOf(load: LoadJob, appliance: LoadAppliance, where: string): Rating {
  if (appliance.kind !== 'ev_supply') return nameplateVa(appliance, where, appliance.kind !== 'motor')
  const { vehicleLeastVa, vehicleUnknownVa } = load.factors
  if (isBlank(appliance)) {
    if (vehicleUnknownVa !== undefined) return { va: vehicleUnknownVa, from: `${where}: nameplate not known` }
    throw new StageError(where, 'the rating of the outlet for vehicles is not stated', 'Read it on its nameplate')
  }
  const plate = nameplateVa(appliance, where, true)
  if (vehicleLeastVa === undefined || plate.va >= vehicleLeastVa) return plate
  return { va: vehicleLeastVa, from: `${plate.from}, not less than ${vehicleLeastVa} VA` }
}

const isBlank = ({ rating_va: va, rating_w: w, current_a: a, voltage_v: v }: LoadAppliance): boolean =>
  [va, w, a, v].every((value) => value === undefined)

export const sumVa = (loads: readonly Rating[]): number => loads.reduce((sum, { va }) => sum + va, 0)
