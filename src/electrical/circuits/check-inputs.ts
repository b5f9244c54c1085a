import { own, type Amperes } from '../../values/index.js'
import { isAcModule, unlikeStrings } from '../../project/facts.js'
import type { Inverter } from '../../project/index.js'
import { moduleById } from './build-strings.js'
import { type Circuit, inverterById, type Job, ratedIsc } from '../system/index.js'

/** A DC input with what its modules can give. */
interface DcInput {
  /** In words: `garage input 1`, `each inverter of array south`. */
  readonly name: string
  readonly where: string
  readonly inverterId: string
  readonly inverter: Inverter
  /** Undefined where a module behind a module-level inverter does not state it. */
  readonly iscA: Amperes | undefined
  readonly impA: Amperes | undefined
  readonly moduleId: string
  /** How less current comes to it. */
  readonly remedy: string
}

/**
 * Short-circuit and operating current of every inverter input, of strings and of module-level inverters, and whether the
 * strings on one input belong together.
 *
 * @source NEC 110.3(B)
 */
export function checkInputs(job: Job, circuits: readonly Circuit[]): void {
  const inputs = [...stringInputs(job, circuits), ...moduleInputs(job)]
  for (const input of inputs) checkInput(job, input)
  tellUnknown(job, inputs)
  for (const { severity, message, where, fix } of unlikeStrings(job.project))
    job.worksheet.find({
      severity,
      id: 'wire.unlike-strings',
      message,
      where,
      source: job.nec('listedEquipment'),
      fix,
    })
}

function stringInputs(job: Job, circuits: readonly Circuit[]): DcInput[] {
  const byName = new Map<string, Circuit[]>()
  for (const circuit of circuits) {
    if (circuit.string === undefined) continue
    const name = `${circuit.string.unit} input ${circuit.string.input}`
    byName.set(name, [...(byName.get(name) ?? []), circuit])
  }
  return [...byName].flatMap(([name, strings]): DcInput[] => {
    const facts = strings[0]?.string
    if (facts === undefined) return []
    const where = `inverter_units.${facts.unit}`
    const inverterId = own(job.project.inverter_units, facts.unit)?.inverter ?? ''
    const inverter = inverterById(job, inverterId, where)
    if (facts.input > (inverter.mppt_inputs ?? facts.input))
      job.worksheet.find({
        severity: 'error',
        id: 'wire.no-such-input',
        message: `${name} does not exist: the inverter has ${inverter.mppt_inputs} inputs`,
        where,
        fix: 'Use an input that the inverter has',
      })
    return [
      {
        name,
        where,
        inverterId,
        inverter,
        iscA: strings.reduce((sum, circuit) => sum + (circuit.string?.iscA ?? 0), 0),
        impA: strings.reduce((sum, circuit) => sum + circuit.operatingA, 0),
        moduleId: facts.moduleId,
        remedy: 'connect fewer strings to this input',
      },
    ]
  })
}

function moduleInputs(job: Job): DcInput[] {
  return Object.entries(job.project.arrays).flatMap(([arrayId, array]): DcInput[] => {
    if (array.inverter === undefined || isAcModule(array.inverter)) return []
    const where = `arrays.${arrayId}.inverter`
    const module = moduleById(job, array.module, arrayId)
    return [
      {
        name: `each inverter of array ${arrayId}`,
        where,
        inverterId: array.inverter,
        inverter: inverterById(job, array.inverter, where),
        iscA: ratedIsc(module, array)?.iscA,
        impA: module.imp_a,
        moduleId: array.module,
        remedy: 'use an inverter that takes this module, or another module',
      },
    ]
  })
}

function checkInput(job: Job, { name, where, inverter, iscA, impA, remedy }: DcInput): void {
  const source = job.nec('listedEquipment')
  const { max_input_isc_a: mostIscA, max_input_current_a: mostImpA } = inverter
  if (iscA !== undefined && mostIscA !== undefined && iscA > mostIscA)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.input-short-circuit',
      message: `${name} gets ${iscA.toFixed(1)} A short-circuit current, ${mostIscA} A is the limit`,
      where,
      source,
      fix: `${remedy[0]?.toUpperCase()}${remedy.slice(1)}`,
    })
  if (impA !== undefined && mostImpA !== undefined && impA > mostImpA)
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.input-current',
      message: `${name} gets ${impA.toFixed(1)} A at maximum power and uses only ${mostImpA} A`,
      where,
      source,
      fix: `Expect clipping, or ${remedy}`,
    })
}

/** Inputs whose short-circuit current could not be compared, once for each missing key. */
function tellUnknown(job: Job, inputs: readonly DcInput[]): void {
  const told = new Set<string>()
  const tell = (where: string, message: string, fix: string): void => {
    if (told.has(where)) return
    told.add(where)
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.input-limit-unknown',
      message,
      where,
      source: job.nec('listedEquipment'),
      fix,
    })
  }
  for (const { name, inverterId, inverter, iscA, moduleId } of inputs) {
    if (inverter.max_input_isc_a === undefined)
      tell(
        `equipment.inverters.${inverterId}.max_input_isc_a`,
        `the largest short-circuit current that inverter ${inverterId} takes is not stated, so ${iscA === undefined ? 'that' : `the ${iscA.toFixed(1)} A`} of ${name} was not checked`,
        "Take it from the inverter's data sheet",
      )
    if (iscA === undefined)
      tell(
        `equipment.modules.${moduleId}.isc_a`,
        `the short-circuit current of module ${moduleId} is not stated, so it was not compared with what ${name} takes`,
        "It stands on the module's data sheet as Isc",
      )
  }
}
