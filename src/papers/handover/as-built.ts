import { listModuleGroups } from '../../project/index.js'
import { own } from '../../values/index.js'
import { counted, invertersOf, TOTALS } from '../totals.js'
import type { HandoverInput } from './handover-input.js'
import type { HandoverValues } from './handover-values.js'

/** What was built: equipment, strings or branches, conductors. */
export function asBuilt(input: HandoverInput): HandoverValues['as_built'] {
  return { equipment: equipment(input), strings: strings(input), conductors: conductors(input) }
}

function equipment({ project }: HandoverInput): HandoverValues['as_built']['equipment'] {
  const { equipment: all, structure, electrical } = project
  const rail = structure?.rail === undefined ? undefined : own(all.rails, structure.rail)
  const mount = structure?.mount === undefined ? undefined : own(all.mounts, structure.mount)
  const modules = new Map(listModuleGroups(project).map(({ array, module }) => [array.module, module]))
  const inverters = new Map(invertersOf(project).map(({ id, inverter }) => [id, inverter]))
  const countOf = (kinds: readonly { readonly id: string; readonly count: number }[], id: string): string =>
    String(kinds.filter((each) => each.id === id).reduce((sum, { count }) => sum + count, 0))
  const groups = listModuleGroups(project).map(({ array, modules: count }) => ({ id: array.module, count }))
  return {
    columns: ['What', 'Name', 'Number', 'Ratings', 'Listing', 'Sheet'],
    rows: [
      ...[...modules].map(([id, { name, pmax_w: watts, listing, sheet }]) => [
        'Module',
        name ?? id,
        countOf(groups, id),
        `${watts} W dc`,
        listing ?? '-',
        sheet ?? '-',
      ]),
      ...[...inverters].map(([id, { name, ac_power_w: watts, ac_current_a: amps, listing, sheet }]) => [
        'Inverter',
        name ?? id,
        countOf(invertersOf(project), id),
        `${watts} W ac${amps === undefined ? '' : `, ${amps} A`}`,
        listing ?? '-',
        sheet ?? '-',
      ]),
      ...(rail === undefined ? [] : [['Rail', rail.name ?? structure?.rail ?? '', '-', '-', '-', rail.sheet ?? '-']]),
      ...(mount === undefined
        ? []
        : [['Mount', mount.name ?? structure?.mount ?? '', '-', '-', '-', mount.sheet ?? '-']]),
      ...Object.entries(electrical?.disconnects ?? {}).map(([id, each]) => [
        `Disconnect (${each.kind.replaceAll('_', ' ')})`,
        id,
        '1',
        each.rating_a === undefined ? '-' : `${each.rating_a} A${each.fused === true ? ', fused' : ''}`,
        '-',
        each.location ?? '-',
      ]),
    ],
  }
}

function strings({ project, wire }: HandoverInput): HandoverValues['as_built']['strings'] {
  const groups = listModuleGroups(project)
  const byString = groups.flatMap(({ id, module, array, conversion }) =>
    conversion.kind === 'string'
      ? conversion.strings.map(({ modules, unitId, input: inputNumber }, index) => [
          `string ${id}_s${index + 1}`,
          `${modules} x ${module.name ?? array.module}`,
          `${unitId}${inputNumber === undefined ? '' : `, input ${inputNumber}`}`,
          '-',
        ])
      : [],
  )
  const branches = (wire?.circuits ?? [])
    .filter(({ kind }) => kind === 'ac_branch')
    .map(({ id, modules, breaker_a: breakerA }) => [
      `branch ${id}`,
      counted(Object.entries(modules).map(([array, count]) => [`modules of ${array}`, count])) ?? '-',
      'AC branch',
      breakerA === null ? '-' : `${breakerA} A`,
    ])
  return { columns: ['Circuit', 'Modules', 'Goes to', 'Breaker'], rows: [...byString, ...branches] }
}

function conductors({ wire }: HandoverInput): HandoverValues['as_built']['conductors'] {
  return {
    columns: ['Tag', 'From', 'To', 'Conductors', 'In', 'Ground', 'Device'],
    rows: (wire?.conductors ?? []).map((each) => {
      const { lines, neutral, ground } = each.count
      const count = lines + neutral
      const size = each.size_awg.includes('kcmil') ? each.size_awg : `${each.size_awg} AWG`
      return [
        each.tag,
        each.from,
        each.to,
        `${count === 0 ? '' : `${count} x `}${size} ${each.material}${each.insulation === null ? '' : ` ${each.insulation}`}`,
        each.method,
        ground === 0 || each.grounding_awg === null ? '-' : `${each.grounding_awg} AWG`,
        each.ocpd_a === null ? '-' : `${each.ocpd_a} A`,
      ]
    }),
  }
}

/** System data at the head of the file. */
export function systemFacts({ project, wire }: HandoverInput): HandoverValues['facts'] {
  const acKw = TOTALS.total_ac_kw.of(project)
  const connection = project.electrical?.connection?.kind.replaceAll('_', ' ')
  return [
    ['Address', project.site.address ?? 'not stated (site.address)'],
    ['Rated DC power', `${TOTALS.total_dc_kw.of(project).toFixed(2)} kW (standard test conditions)`],
    ['Rated AC power', `${acKw.toFixed(2)} kW`],
    ['Modules', TOTALS.module_list.of(project) ?? String(TOTALS.module_count.of(project))],
    ['Inverters', TOTALS.inverter_list.of(project) ?? `${TOTALS.inverter_count.of(project)} in the modules`],
    ['Connection', connection ?? 'not stated (electrical.connection)'],
    ['Electrical code', wire?.edition ?? project.codes?.electrical ?? 'not stated (codes.electrical)'],
  ]
}
