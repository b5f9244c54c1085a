import { isAcModule } from '../../project/facts.js'
import { own } from '../../values/index.js'
import type { Job } from '../system/index.js'

/**
 * AC modules with their nameplates: what lies between cells and AC output is part of the listing, so that no rule for DC
 * circuits is tried on it.
 *
 * @source NEC 690.6
 */
export function recordAcModules(job: Job): void {
  for (const [arrayId, { module: id, inverter }] of Object.entries(job.project.arrays)) {
    const side = own(job.project.equipment.modules, id)?.ac_module
    if (side === undefined || inverter === undefined || !isAcModule(inverter)) continue
    const from = `equipment.modules.${id}.ac_module`
    job.worksheet.note({
      id: `wire.ac-module.${arrayId}`,
      says: `Array ${arrayId} has AC modules, listed as one with their inverters: no rule for DC circuits applies to what is inside, and their output is an inverter output`,
      formula: 'nameplate',
      inputs: [
        { symbol: 'V', value: side.ac_voltage_v, unit: 'V', from },
        { symbol: 'f', value: side.frequency_hz, unit: 'Hz', from },
        { symbol: 'P', value: side.ac_power_w, unit: 'W', from },
        { symbol: 'largest device', value: side.max_branch_ocpd_a, unit: 'A', from },
      ],
      result: { symbol: 'I', value: side.ac_current_a, unit: 'A' },
      source: job.nec('acModules'),
    })
  }
}
