import type { CircuitValues, WiringValues } from '../../electrical/index.js'
import { counted, plainNumber } from '../layout/index.js'
import type { Inverter } from '../../project/index.js'
import type { PacketInput } from '../inputs.js'
import { own } from '../../values/index.js'

/** A row of the diagram: what feeds one wire, and what is written beside it. */
export interface OneLineSource {
  readonly circuit: CircuitValues
  readonly title: string
  readonly lines: readonly string[]
  /** Key under inverter_units of the string inverter that it leads to; undefined behind module-level inverters. */
  readonly unit: string | undefined
  /** What stands behind its modules. */
  readonly device?: 'converter' | 'shutdown unit' | undefined
  /** What the rapid shutdown acts on; undefined where the project names no equipment that is shut down. */
  readonly shutdown: 'modules' | 'inverter' | undefined
}

/** Strings first by inverter, then branches. */
export function oneLineSources(input: PacketInput, wiring: WiringValues): OneLineSource[] {
  const strings = wiring.circuits
    .filter((circuit) => circuit.kind === 'dc_string')
    .map((circuit) => stringSource(input, wiring, circuit))
  const branches = wiring.circuits
    .filter((circuit) => circuit.kind === 'ac_branch')
    .map((circuit) => branchSource(input, circuit))
  return [...strings.toSorted((a, b) => (a.unit ?? '').localeCompare(b.unit ?? '', 'en')), ...branches]
}

function branchSource(input: PacketInput, circuit: CircuitValues): OneLineSource {
  const lines = Object.entries(circuit.modules).map(([arrayId, count]) => {
    const array = own(input.project.arrays, arrayId)
    const module = own(input.project.equipment.modules, array?.module)
    return `${counted(count, 'module')} ${module?.name ?? array?.module ?? ''}, ${module?.pmax_w ?? '?'} W (array ${arrayId})`
  })
  const first = Object.keys(circuit.modules)[0] ?? ''
  const inverterId = own(input.project.arrays, first)?.inverter ?? ''
  const inverter = own(input.project.equipment.inverters, inverterId)
  const each = currentOfEach(circuit, inverter)
  return {
    circuit,
    unit: undefined,
    shutdown: inverter?.rapid_shutdown === true ? 'modules' : undefined,
    title: `BRANCH ${circuit.id}`,
    lines: [
      ...lines,
      `${counted(circuit.inverters, 'inverter')} ${inverter?.name ?? inverterId}, ${inverter?.ac_power_w ?? '?'} W, ${plainNumber(each)} A each`,
      `${plainNumber(circuit.continuous_a)} A at ${plainNumber(circuit.voltage_v, 0)} V${circuit.lines === undefined ? '' : `, lines ${circuit.lines}`}`,
    ],
  }
}

/** Rated current of one inverter of a branch, A; on three lines that of the branch does not tell it. */
function currentOfEach(circuit: CircuitValues, inverter: Inverter | undefined): number {
  if (circuit.lines === 'ABC') return inverter?.ac_current_a ?? (inverter?.ac_power_w ?? 0) / circuit.voltage_v
  return circuit.inverters === 0 ? 0 : circuit.continuous_a / circuit.inverters
}

function stringSource(input: PacketInput, wiring: WiringValues, circuit: CircuitValues): OneLineSource {
  const [arrayId = '', count = 0] = Object.entries(circuit.modules)[0] ?? []
  const array = own(input.project.arrays, arrayId)
  const module = own(input.project.equipment.modules, array?.module)
  const index = Number(/_s(\d+)$/.exec(circuit.id)?.[1] ?? '1') - 1
  const stated = array?.strings?.[index]
  const voltage = input.wire?.values.strings.find((each) => each.id === circuit.id)
  const converter = own(input.project.equipment.optimisers, voltage?.optimiser?.id)
  const units = converter === undefined ? input.project.electrical?.rapid_shutdown?.equipment : undefined
  const device = converter === undefined ? (units === undefined ? undefined : 'shutdown unit') : 'converter'
  const inverter = own(
    input.project.equipment.inverters,
    own(input.project.inverter_units, stated?.inverter_unit)?.inverter,
  )
  const atModules = units !== undefined || converter?.rapid_shutdown === true
  return {
    circuit,
    unit: stated?.inverter_unit,
    device,
    shutdown: atModules ? 'modules' : inverter?.rapid_shutdown === true ? 'inverter' : undefined,
    title: `STRING ${circuit.id}`,
    lines: [
      `${counted(count, 'module')} in series, ${module?.name ?? array?.module ?? ''}, ${module?.pmax_w ?? '?'} W`,
      voltage?.optimiser === undefined
        ? `Isc ${module?.isc_a ?? '?'} A; ${plainNumber(circuit.continuous_a)} A highest current`
        : `${counted(voltage.optimiser.units, 'converter')} ${own(input.project.equipment.optimisers, voltage.optimiser.id)?.name ?? voltage.optimiser.id}; ${plainNumber(circuit.continuous_a)} A highest current`,
      ...(units === undefined
        ? []
        : [`${counted(Math.ceil(count / units.modules_per_unit), 'shutdown unit')} ${units.name ?? ''}`.trim()]),
      ...(voltage === undefined
        ? []
        : [`${plainNumber(voltage.voc_cold_v, 0)} V highest, of ${plainNumber(voltage.limit_v, 0)} V`]),
      ...(wiring.dc_combiners ?? [])
        .filter(({ strings }) => strings.includes(circuit.id))
        .map(({ id, fuse_a: fuseA }) => `through DC combiner ${id}${fuseA === null ? '' : `, fused ${fuseA} A`}`),
    ],
  }
}
