import type { Project } from '../project-types.generated.js'
import { showNumber } from '../words.js'
import { own } from '../../values/index.js'
import type { Report, Rule } from './rule.js'

/** No inverter takes more inputs or more module power than its maker allows. */
export const checkInverterLoad: Rule = (project, report) => {
  for (const [id, array] of Object.entries(project.arrays)) {
    const inverter = own(project.equipment.inverters, array.inverter)
    const most = inverter?.kind === 'module_level' ? inverter.max_dc_power_w : undefined
    const power = own(project.equipment.modules, array.module)?.pmax_w
    if (most === undefined || power === undefined || power <= most) continue
    const message = `a module of ${power} W is more than the ${most} W (max_dc_power_w) that the inverter may take`
    report(['arrays', id, 'inverter'], message)
  }
  for (const unit of Object.keys(project.inverter_units ?? {})) checkUnit(project, unit, report)
}

function checkUnit(project: Project, unitId: string, report: Report): void {
  const inverter = own(project.equipment.inverters, own(project.inverter_units, unitId)?.inverter)
  if (inverter?.kind !== 'string') return
  let powerW = 0
  for (const [id, array] of Object.entries(project.arrays)) {
    array.strings?.forEach((string, i) => {
      if (string.inverter_unit !== unitId) return
      powerW += string.modules * (own(project.equipment.modules, array.module)?.pmax_w ?? 0)
      const { mppt_inputs: inputs } = inverter
      if (inputs === undefined || string.input === undefined || string.input <= inputs) return
      const message = `there is no input ${string.input}; the inverter has inputs 1 to ${inputs} (mppt_inputs)`
      report(['arrays', id, 'strings', i, 'input'], message)
    })
  }
  const { max_dc_power_w: most } = inverter
  if (most === undefined || powerW <= most) return
  const message = `modules of ${showNumber(powerW)} W are more than the ${most} W (max_dc_power_w) that the inverter may take`
  report(['inverter_units', unitId, 'inverter'], message)
}
