import { wiringOf } from '../../electrical/index.js'
import type { Inverter, Project } from '../../project/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import { own } from '../../values/index.js'

/** What a number of modules on each array means for the AC side. */
export interface AcDemand {
  /** Sum of rated currents of the module-level inverters, A. */
  readonly inverterA: number
  /** Fewest branch circuits of module-level inverters; undefined where the largest branch is not stated. */
  readonly branches: number | undefined
  /** Largest share of its allowed DC power that a string inverter gets, with its id under inverter_units. */
  readonly dcLoad: { readonly share: number; readonly unit: string } | undefined
}

/** Works out the AC side of a choice of modules. @param modules By array of the person. */
export function acDemand(project: Project, modules: ReadonlyMap<string, number>): AcDemand {
  let inverterA = 0
  let branches: number | undefined = 0
  const dcW = new Map<string, number>()
  for (const [arrayId, count] of modules) {
    const array = own(project.arrays, arrayId)
    if (array === undefined || count === 0) continue
    const inverter = own(project.equipment.inverters, array.inverter)
    if (array.inverter !== undefined && inverter !== undefined) {
      const perBranch = mostPerBranch(inverter)
      inverterA += count * ratedA(inverter)
      branches = branches === undefined || perBranch === undefined ? undefined : branches + Math.ceil(count / perBranch)
    }
    const pmaxW = own(project.equipment.modules, array.module)?.pmax_w ?? 0
    const strings = array.strings ?? []
    for (const { inverter_unit: unit } of strings) {
      dcW.set(unit, (dcW.get(unit) ?? 0) + (count * pmaxW) / strings.length)
    }
  }
  return { inverterA, branches, dcLoad: largestLoad(project, dcW) }
}

function ratedA(inverter: Inverter): number {
  return inverter.ac_current_a ?? inverter.ac_power_w / (inverter.ac_voltage_v ?? 240)
}

/** By the maker, and by a continuous load of no more than 80 % of the largest device. @source NEC 690.9(B), 705.28 */
function mostPerBranch(inverter: Inverter): number | undefined {
  const byDevice =
    inverter.max_branch_ocpd_a === undefined
      ? Infinity
      : Math.floor(inverter.max_branch_ocpd_a / (1.25 * ratedA(inverter)) + 1e-9)
  const most = Math.min(inverter.max_per_branch ?? Infinity, byDevice)
  return Number.isFinite(most) && most >= 1 ? most : undefined
}

function largestLoad(project: Project, dcW: ReadonlyMap<string, number>): AcDemand['dcLoad'] {
  let worst: AcDemand['dcLoad']
  for (const [unit, watts] of dcW) {
    const limitW = own(project.equipment.inverters, own(project.inverter_units, unit)?.inverter)?.max_dc_power_w
    const share = limitW === undefined ? 0 : watts / limitW
    if (limitW !== undefined && share > (worst?.share ?? 0)) worst = { share, unit }
  }
  return worst
}

/** The largest sum of inverter currents that the panel takes, and the rule that says so. */
export interface PanelLimit {
  readonly maxInverterA: number
  readonly section: string
}

/** The limit of the panel from the wiring stage; undefined, with a finding, when that stage cannot run. */
export function panelLimit(project: Project, worksheet: Worksheet): PanelLimit | undefined {
  try {
    const { values } = wiringOf(project)
    const { max_inverter_a: maxInverterA, section } = values.panel
    worksheet.step({
      id: 'size.panel',
      says: 'Largest sum of inverter currents that the connection to the panel takes',
      formula: 'I_max by the connection rule that takes most',
      inputs: [
        { symbol: 'I', value: values.panel.inverter_a, unit: 'A', from: 'inverters of the project as it stands' },
      ],
      result: { symbol: 'I_max', value: maxInverterA, unit: 'A' },
      source: { document: values.edition, place: section, standing: 'secondary' },
    })
    return { maxInverterA, section }
  } catch (error) {
    if (!(error instanceof StageError)) throw error
    worksheet.find({
      severity: 'warning',
      id: 'size.panel-not-checked',
      message: `whether the panel takes the larger sizes is not checked: ${error.message}`,
      where: error.where,
      fix: error.fix,
    })
    return undefined
  }
}
