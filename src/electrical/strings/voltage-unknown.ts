import type { Inverter } from '../../project/index.js'
import type { Job } from '../system/index.js'

/** Says that strings could not be held against the largest DC voltage of an inverter that states none. */
export function tellVoltageUnknown(job: Job, inverterId: string, inverter: Inverter): void {
  if (inverter.max_dc_voltage_v !== undefined) return
  job.worksheet.find({
    severity: 'warning',
    id: 'wire.inverter-voltage-unknown',
    message: `the largest DC voltage of inverter ${inverterId} is not stated, so it was not checked`,
    where: `equipment.inverters.${inverterId}.max_dc_voltage_v`,
    source: job.nec('listedEquipment'),
    fix: "Take it from the inverter's data sheet",
  })
}
