import { isAcModule, statedModuleCount } from '../../project/facts.js'
import { own } from '../../values/index.js'
import type { Need } from './need.js'
import { practiceValue } from './practice.js'
import type { TakeOffJob } from './take-off-job.js'

/** Number of modules of every array: as they lie on the roof, otherwise as the project states. */
export function moduleCounts(job: TakeOffJob): Map<string, { readonly count: number; readonly from: string }> {
  return new Map(
    Object.entries(job.project.arrays).map(([id, array]) => {
      const placed = job.arrangement.modules.filter((module) => module.array === id).length
      return [
        id,
        placed > 0
          ? { count: placed, from: 'roof: values.modules' }
          : { count: statedModuleCount(array) ?? 0, from: `arrays.${id}.modules` },
      ]
    }),
  )
}

/** Modules, the inverters behind them, string inverters, and the clips of the leads. */
export function takeEquipment(job: TakeOffJob): Need[] {
  const { arrays, equipment, inverter_units: units } = job.project
  const needs: Need[] = []
  for (const [arrayId, { count, from }] of moduleCounts(job)) {
    const array = own(arrays, arrayId)
    if (array === undefined) continue
    const module = own(equipment.modules, array.module)
    needs.push({
      item: `module.${array.module}`,
      name: module?.name ?? `Module ${array.module}`,
      group: 'modules',
      unit: 'each',
      quantity: count,
      why: `${count} modules of array ${arrayId} (${from})`,
    })
    if (array.inverter !== undefined && !isAcModule(array.inverter)) {
      needs.push(
        {
          item: `inverter.${array.inverter}`,
          name: own(equipment.inverters, array.inverter)?.name ?? `Inverter ${array.inverter}`,
          group: 'inverters',
          unit: 'each',
          quantity: count,
          why: `one behind each of ${count} modules of array ${arrayId} (${from})`,
        },
        {
          item: 'inverter-fastener',
          name: 'Rail fastener for a module-level inverter, listed for bonding',
          group: 'racking',
          unit: 'each',
          quantity: count,
          why: `one for each of ${count} inverters of array ${arrayId} (${from})`,
        },
      )
    }
    const clips = practiceValue(job, 'cable_clips_per_module')
    needs.push({
      item: 'cable-clip',
      name: 'Clip for leads at frame or rail, sunlight resistant',
      group: 'wire',
      unit: 'each',
      quantity: clips * count,
      why: `${clips} for each of ${count} modules of array ${arrayId} (${from})`,
    })
  }
  for (const [unitId, { inverter }] of Object.entries(units ?? {})) {
    needs.push({
      item: `inverter.${inverter}`,
      name: own(equipment.inverters, inverter)?.name ?? `Inverter ${inverter}`,
      group: 'inverters',
      unit: 'each',
      quantity: 1,
      why: `string inverter ${unitId} (inverter_units.${unitId})`,
    })
  }
  return needs
}
