import type { Project, PvModule } from '../project-types.generated.js'
import { own } from '../../values/index.js'
import type { Report, Rule } from './rule.js'

/** What is stated of converters, AC modules, light on the rear, DC combiners and three-phase inverters fits together. */
export const checkDcDevices: Rule = (project, report) => {
  for (const [id, array] of Object.entries(project.arrays)) {
    if (array.optimiser !== undefined && array.strings === undefined)
      report(
        ['arrays', id, 'optimiser'],
        'a converter belongs to the modules of strings; give the array strings',
        'key',
      )
    const other = array.inverter === undefined ? 'strings' : 'inverter'
    if (own(project.equipment.modules, array.module)?.ac_module !== undefined && array[other] !== undefined)
      report(['arrays', id, other], 'the module is an AC module, which has its own inverter; take this out', 'key')
  }
  for (const [id, module] of Object.entries(project.equipment.modules ?? {})) {
    checkRear(id, module, report)
    checkAcModule(id, module, report)
  }
  checkUnits(project, report)
  for (const [id, box] of Object.entries(project.electrical?.dc_combiners ?? {})) {
    const path = ['electrical', 'dc_combiners', id]
    if (box.poles_fused !== 'one' && box.fused_pole !== undefined)
      report([...path, 'fused_pole'], `poles_fused is ${box.poles_fused}, so no pole stands out; take it out`, 'key')
    if (box.poles_fused === 'none' && box.fuse_a !== undefined)
      report([...path, 'fuse_a'], 'poles_fused is none; state one or both, or take the fuses out', 'key')
  }
}

/** More light on the rear gives more current. */
function checkRear(id: string, module: PvModule, report: Report): void {
  const steps = [
    ['isc_a', module.isc_a],
    ['isc_bnpi_a', module.isc_bnpi_a],
    ['isc_bsi_a', module.isc_bsi_a],
  ] as const
  const known = steps.flatMap(([key, value]) => (value === undefined ? [] : [{ key, value }]))
  known.forEach(({ key, value }, i) => {
    const before = known[i - 1]
    if (before === undefined || before.value <= value) return
    const message = `${value} A is below ${before.key} ${before.value} A, which has less light on the rear; are the two swapped?`
    report(['equipment', 'modules', id, key], message)
  })
}

function checkAcModule(id: string, { ac_module: side }: PvModule, report: Report): void {
  if (side === undefined) return
  const path = ['equipment', 'modules', id, 'ac_module']
  if (side.frequency_hz !== 60)
    report([...path, 'frequency_hz'], `${side.frequency_hz} Hz is not the frequency of the grid, 60 Hz`)
  const { weighted_efficiency_pct: weighted, efficiency_curve: curve } = side
  if (weighted === undefined && curve === undefined)
    report([...path, 'weighted_efficiency_pct'], 'missing; give the efficiency, or efficiency_curve', 'parent')
  if (weighted !== undefined && curve !== undefined)
    report([...path, 'efficiency_curve'], 'weighted_efficiency_pct stands beside it; keep one of them', 'key')
}

/** Keys that say something of several modules on one converter, or of three phases, stand only there. */
function checkUnits({ equipment }: Project, report: Report): void {
  for (const [id, optimiser] of Object.entries(equipment.optimisers ?? {})) {
    const path = ['equipment', 'optimisers', id]
    if (optimiser.modules_wired !== undefined && (optimiser.modules_per_unit ?? 1) === 1)
      report([...path, 'modules_wired'], 'one module on a unit is not wired to another; take it out', 'key')
    const { min_per_string: least, max_per_string: most, input_min_v: low, input_max_v: high } = optimiser
    if (least !== undefined && most !== undefined && least > most)
      report([...path, 'min_per_string'], `${least} is more than max_per_string ${most}; are the two swapped?`)
    if (low !== undefined && low >= high)
      report([...path, 'input_min_v'], `${low} V is not below input_max_v ${high} V; are the two swapped?`)
  }
  for (const [id, inverter] of Object.entries(equipment.inverters ?? {}))
    if (inverter.stops_on_lost_phase !== undefined && inverter.phases !== 3)
      report(
        ['equipment', 'inverters', id, 'stops_on_lost_phase'],
        'only a three-phase inverter loses one phase of several; state phases: 3, or take it out',
        'key',
      )
}
