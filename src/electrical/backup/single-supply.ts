import { storageSection } from '../../tables/nec/index.js'
import { answerStated, type StorageCheck, type StorageSystem } from '../storage/index.js'
import type { Job } from '../system/index.js'

export const SINGLE_SUPPLY_V = 120

/** Whether the house lives on one line of 120 V when the grid is away. */
export const isSingleSupply = ({ unit }: StorageSystem): boolean => unit.ac_voltage_v === SINGLE_SUPPLY_V

/**
 * One supply of 120 V on a panel for 120/240 V: nothing of 240 V, no circuits that share a neutral, and less output than the
 * neutral bus takes, as no current of another line takes any of it away.
 */
export function singleSupplyRules(job: Job, system: StorageSystem): StorageCheck[] {
  if (!isSingleSupply(system)) return []
  const { backup } = system.stated
  const source = storageSection(job.edition, 'singleSupply')
  return [
    answerStated({
      id: 'single-supply-240',
      where: 'storage.backup.outlets_240_v',
      answer: backup?.outlets_240_v === undefined ? undefined : !backup.outlets_240_v,
      yes: 'nothing of 240 V hangs on the backed-up panel, which the storage supplies with 120 V',
      no: 'something of 240 V hangs on the backed-up panel, and the storage supplies it with 120 V alone',
      missing:
        'whether anything of 240 V hangs on the backed-up panel is not stated, and the storage supplies 120 V alone',
      source,
      fix: 'Move what works on 240 V to another panel, or use a unit of 120/240 V',
    }),
    answerStated({
      id: 'single-supply-multiwire',
      where: 'storage.backup.multiwire_circuits',
      answer: backup?.multiwire_circuits === undefined ? undefined : !backup.multiwire_circuits,
      yes: 'no circuits of the backed-up panel share a neutral',
      no: 'circuits of the backed-up panel share a neutral, which carries the sum of both where the storage supplies 120 V alone',
      missing:
        'whether circuits of the backed-up panel share a neutral is not stated; with one supply of 120 V it would carry the sum of both',
      source,
      fix: 'Give each circuit a neutral of its own, or move them to another panel; the label of the panel warns of it',
    }),
    neutralBus(system, source),
  ]
}

function neutralBus(system: StorageSystem, source: StorageCheck['source']): StorageCheck {
  const { unit, count, stated } = system
  const busA = stated.backup?.neutral_bus_a
  // The nameplate counts; the power of the sheet stands in where it states no current.
  const outputA = count * (unit.rated_output_a ?? (1000 * unit.discharge_kw) / SINGLE_SUPPLY_V)
  const parts = {
    id: 'single-supply-neutral',
    where: 'storage.backup.neutral_bus_a',
    source,
    fix: 'Use a panel with a larger neutral bus, or fewer units',
  } as const
  const output = `${Number(outputA.toFixed(1))} A of the storage at 120 V`
  if (busA === undefined)
    return {
      ...parts,
      verdict: 'not_stated',
      says: `the rating of the neutral bus of the backed-up panel is not stated, so the ${output} were not held against it`,
    }
  const holds = outputA < busA
  return {
    ...parts,
    verdict: holds ? 'pass' : 'fail',
    says: `the ${output} are ${holds ? 'below' : 'not below'} the ${busA} A of the neutral bus of the backed-up panel`,
    value: outputA,
    limit: busA,
    unit: 'A',
    relation: '<=',
  }
}
