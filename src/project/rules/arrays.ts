import type { Project } from '../project-types.generated.js'
import { showValue } from '../words.js'
import { own } from '../../values/index.js'
import type { Report, Rule } from './rule.js'

/** An array has module-level inverters or strings, each of the right kind, and a mounting that can exist. */
export const checkArrays: Rule = (project, report) => {
  for (const [id, array] of Object.entries(project.arrays)) {
    const hasStrings = array.strings !== undefined
    if (array.inverter !== undefined && hasStrings) {
      const message = 'the modules hang on inverter and on strings; keep inverter (module-level) or strings'
      report(['arrays', id, 'strings'], message, 'key')
    } else if (array.inverter === undefined && !hasStrings && !isAcModuleArray(project, array.module)) {
      const message = 'missing; give inverter (module-level, behind every module) or strings on inverter_units'
      report(['arrays', id, 'inverter'], message, 'parent')
    }
    if (array.mounting === 'near_roof' && array.standoff_in === 0) {
      const message = '0 in leaves no air under near_roof; measure the standoff, or say mounting: laid_on_roof'
      report(['arrays', id, 'standoff_in'], message)
    }
  }
  checkKinds(project, report)
}

const isAcModuleArray = (project: Project, module: string): boolean =>
  own(project.equipment.modules, module)?.ac_module !== undefined

function checkKinds(project: Project, report: Report): void {
  const kindOf = (id: string | undefined) => own(project.equipment.inverters, id)?.kind
  for (const [id, { inverter }] of Object.entries(project.arrays)) {
    if (kindOf(inverter) !== 'string') continue
    const message = `${showValue(inverter)} is a string inverter; name it under inverter_units and give the array strings`
    report(['arrays', id, 'inverter'], message)
  }
  for (const [id, { inverter }] of Object.entries(project.inverter_units ?? {})) {
    if (kindOf(inverter) !== 'module_level') continue
    const message = `${showValue(inverter)} is a module-level inverter; name it as inverter of the array instead`
    report(['inverter_units', id, 'inverter'], message)
  }
}
