import type { WiringValues } from '../../electrical/index.js'
import {
  isAcModule,
  listModuleGroups,
  type Inverter,
  type Mount,
  type Optimiser,
  type PvModule,
} from '../../project/index.js'
import { countFitted } from '../../roof/index.js'
import type { PacketInput } from '../inputs.js'
import { inches, plainNumber } from '../layout/index.js'
import { own } from '../../values/index.js'

/** Item, number, name, ratings, listing of what is installed. */
export function equipmentRows(input: PacketInput): string[][] {
  const { project } = input
  const modules = new Map<string, number>()
  const inverters = new Map<string, number>()
  const add = (map: Map<string, number>, id: string, count: number): void =>
    void map.set(id, (map.get(id) ?? 0) + count)
  for (const group of listModuleGroups(countFitted(project))) {
    const placed = input.arrangement.values.modules.filter((module) => module.array === group.id).length
    const count = placed === 0 ? group.modules : placed
    add(modules, group.array.module, count)
    if (group.conversion.kind === 'module_level' && !isAcModule(group.conversion.inverterId))
      add(inverters, group.conversion.inverterId, count)
  }
  for (const unit of Object.values(project.inverter_units ?? {})) add(inverters, unit.inverter, 1)
  const { equipment, structure } = project
  const devices = input.wire?.values.strings ?? []
  const rows = [
    ...[...modules].flatMap(([id, count]) => {
      const module = own(equipment.modules, id)
      return module === undefined
        ? []
        : [['Module', String(count), module.name ?? id, moduleRatings(module), sheetText(module)]]
    }),
    ...[...inverters].flatMap(([id, count]) => {
      const inverter = own(equipment.inverters, id)
      return inverter === undefined
        ? []
        : [['Inverter', String(count), inverter.name ?? id, inverterRatings(inverter), sheetText(inverter)]]
    }),
    ...converterRows(equipment.optimisers ?? {}, devices),
    ...storageRows(input),
  ]
  const rail = own(equipment.rails, structure?.rail)
  const mount = own(equipment.mounts, structure?.mount)
  const counts = input.mounts?.values.counts
  if (rail !== undefined)
    rows.push([
      'Rail',
      counts === undefined ? '' : `${counts.rail_pieces} pieces`,
      rail.name ?? structure?.rail ?? '',
      rail.alloy ?? '',
      sheetText(rail),
    ])
  if (mount !== undefined) {
    rows.push([
      'Mount',
      counts === undefined ? '' : String(counts.mounts),
      mount.name ?? structure?.mount ?? '',
      mountFastener(mount),
      sheetText(mount),
    ])
  }
  return rows
}

/** The storage units with what their data sheet says. */
function storageRows({ project, wire }: PacketInput): string[][] {
  const storage = wire?.values.storage
  const unit = own(project.equipment.storage_units, storage?.unit)
  if (storage === undefined || unit === undefined) return []
  const ratings = listed([
    [`${plainNumber(unit.nameplate_kwh ?? 0)} kWh nameplate`, unit.nameplate_kwh !== undefined],
    [`${plainNumber(unit.discharge_kw)} kW`, true],
    [`${plainNumber(unit.rated_output_a ?? 0)} A`, unit.rated_output_a !== undefined],
    [`${unit.ac_voltage_v} V AC`, unit.ac_voltage_v !== undefined],
    [`device at most ${unit.max_ocpd_a} A`, unit.max_ocpd_a !== undefined],
    [`${unit.weight_lb} lb`, unit.weight_lb !== undefined],
  ])
  const listing = [unit.listed?.ul_9540 === true ? 'UL 9540' : '', unit.listed?.ul_1741 === true ? 'UL 1741' : '']
  return [['Storage', String(storage.count), storage.name, ratings, listing.filter((each) => each !== '').join(', ')]]
}

/** Converters behind the modules of strings, with how many there are. */
function converterRows(optimisers: Readonly<Record<string, Optimiser>>, strings: WiringValues['strings']): string[][] {
  return Object.entries(optimisers).flatMap(([id, sheet]) => {
    const count = strings.reduce((sum, { optimiser }) => sum + (optimiser?.id === id ? optimiser.units : 0), 0)
    const ratings = `input at most ${sheet.input_max_v} V and ${sheet.max_isc_a} A, output ${sheet.output_max_a} A`
    return count === 0 ? [] : [['DC converter', String(count), sheet.name ?? id, ratings, sheetText(sheet)]]
  })
}

/** What fixes one mount to the roof, by its kind. */
function mountFastener({ kind, lag, structural_screw: screw, seam_clamp: clamp, deck }: Mount): string {
  if (kind === 'standing_seam_clamp') return `seam clamp, ${clamp?.setscrews ?? 1} setscrews`
  if (kind === 'deck') return deck?.screws === undefined ? '' : `${deck.screws} wood screws ${deck.screw_size ?? ''}`
  if (screw !== undefined) return `${screw.count ?? 1} ${screw.name ?? 'structural screw'}`
  return lag === undefined ? '' : `${lag.count} lag screw ${lag.size} x ${inches(lag.length_in)}`
}

export function moduleRatings(module: PvModule): string {
  return listed([
    [`${module.pmax_w} W`, true],
    [`Voc ${module.voc_v} V`, module.voc_v !== undefined],
    [`Isc ${module.isc_a} A`, module.isc_a !== undefined],
    [`Vmp ${module.vmp_v} V`, module.vmp_v !== undefined],
    [`Imp ${module.imp_a} A`, module.imp_a !== undefined],
    [
      `AC module, ${module.ac_module?.ac_power_w} W, ${module.ac_module?.ac_current_a} A, ${module.ac_module?.ac_voltage_v} V, ${module.ac_module?.frequency_hz} Hz`,
      module.ac_module !== undefined,
    ],
    [`fuse at most ${module.max_series_fuse_a} A`, module.max_series_fuse_a !== undefined],
    [`system at most ${module.max_system_voltage_v} V`, module.max_system_voltage_v !== undefined],
  ])
}

export function inverterRatings(inverter: Inverter): string {
  return listed([
    [`${inverter.ac_power_w} W AC`, true],
    [`${plainNumber(inverter.ac_current_a ?? 0)} A`, inverter.ac_current_a !== undefined],
    [`${inverter.ac_voltage_v} V AC`, inverter.ac_voltage_v !== undefined],
    [`DC at most ${inverter.max_dc_voltage_v} V`, inverter.max_dc_voltage_v !== undefined],
    [
      `tracks ${inverter.mppt_min_v} to ${inverter.mppt_max_v} V`,
      inverter.mppt_min_v !== undefined && inverter.mppt_max_v !== undefined,
    ],
    [`branch device at most ${inverter.max_branch_ocpd_a} A`, inverter.max_branch_ocpd_a !== undefined],
    [`AC terminals ${inverter.terminal_torque_lb_in} lb-in`, inverter.terminal_torque_lb_in !== undefined],
    ['rapid shutdown', inverter.rapid_shutdown === true],
    ['arc-fault protection', inverter.dc_afci === true],
  ])
}

function listed(parts: readonly (readonly [string, boolean])[]): string {
  return parts.flatMap(([text, known]) => (known ? [text] : [])).join(', ')
}

function sheetText(item: { listing?: string; sheet?: string }): string {
  return [item.listing, item.sheet].filter((each) => each !== undefined).join('; ')
}
