import type { StorageValues } from '../../electrical/index.js'
import type { Cell, Section } from '../../report/index.js'

const AT = {
  in_unit: 'in the unit',
  within_10_ft: 'beside the units',
  lockable_elsewhere: 'elsewhere, lockable',
} as const
const OUTSIDE = {
  none: 'nothing by this edition',
  disconnect: 'the disconnect or its remote control',
  shutdown_function: 'an emergency shutdown',
} as const
const VERDICTS = {
  pass: { value: 'passes', tone: 'good' },
  fail: { value: 'FAILS', tone: 'bad' },
  not_stated: { value: 'not checked', tone: 'warn' },
  not_ruled: { value: 'no rule', tone: 'dim' },
} as const

/** The storage: what it is, its disconnect and backup, its energy by place, and every check. */
export function storageWiringSections(storage: StorageValues): Section[] {
  return [facts(storage), ...(storage.energy.length === 0 ? [] : [energy(storage)]), checks(storage)]
}

function facts(storage: StorageValues): Section {
  const { disconnect, backup, power_control: control } = storage
  return {
    kind: 'facts',
    heading: 'Storage',
    facts: [
      { label: 'Units', value: `${storage.count} x ${storage.name}, ${storage.coupling.toUpperCase()}-coupled` },
      { label: 'Nameplate energy', value: storage.nameplate_kwh ?? 'not stated', unit: 'kWh', decimals: 1 },
      { label: 'Rated output', value: storage.rated_output_a ?? 'through the PV inverter', unit: 'A', decimals: 1 },
      { label: 'Lands on', value: storage.panel ?? 'the inverter of the modules' },
      {
        label: 'Disconnect',
        value: `${disconnect.at === null ? 'not stated where' : AT[disconnect.at]}${disconnect.rating_a === null ? '' : `, ${disconnect.rating_a} A`}${disconnect.required_a === null ? '' : `; ${Number(disconnect.required_a.toFixed(2))} A needed`} (${disconnect.section})`,
      },
      { label: 'Outside the house', value: OUTSIDE[disconnect.outside] },
      ...(backup === null
        ? [{ label: 'Backup', value: 'none' }]
        : [
            {
              label: 'Backup',
              value: `${backup.kind === 'whole_house' ? 'whole house' : 'critical loads'}: panel ${backup.panel}, bus ${backup.bus_a} A; without the grid ${backup.island_devices_a} A of source devices on it`,
            },
            {
              label: 'Isolating device',
              value: `${backup.isolating_device_a === null ? `rating not stated${backup.main_a === null ? '' : `, at least ${backup.main_a} A`}` : `${backup.isolating_device_a} A`}, ${backup.isolating_device_listed === null ? 'listing not stated' : backup.isolating_device_listed ? 'listed' : 'NOT listed'}`,
            },
          ]),
      ...(control === null
        ? []
        : [
            {
              label: 'Power control',
              value: `${control.setting_a} A on ${control.panels.join(', ') || 'no panel stated'}${control.counts ? '' : '; does not count, see the findings'}`,
            },
          ]),
    ],
  }
}

function energy({
  energy: groups,
  nameplate_kwh: total,
  total_limit_kwh: cap,
  each_place_limit_kwh: each,
}: StorageValues): Section {
  const row = (place: string, kwh: number | null, limit: number | null): Cell[] => [
    place,
    kwh,
    limit,
    limit === null || kwh === null ? { value: 'no rule', tone: 'dim' } : kwh <= limit ? VERDICTS.pass : VERDICTS.fail,
  ]
  return {
    kind: 'table',
    heading: 'Storage by place',
    columns: [
      { heading: 'Place' },
      { heading: 'Nameplate', unit: 'kWh', decimals: 1 },
      { heading: 'Limit', unit: 'kWh', decimals: 0 },
      { heading: 'Verdict' },
    ],
    rows: [
      ...groups.map((group) => row(group.group, group.nameplate_kwh, cap === null ? null : group.limit_kwh)),
      row('whole property, one cap (safe side)', total, cap),
      row('whole property, a limit for each kind of place', total, each),
    ],
  }
}

/** The rule with how far it was read, where it was not. */
const ruleWords = ({ section, standing }: StorageValues['checks'][number]): string =>
  standing === 'read' || standing === 'project file' ? section : `${section} (${standing})`

/** What fails or was not checked first. */
function checks({ checks: all }: StorageValues): Section {
  const order = ['fail', 'not_stated', 'not_ruled', 'pass'] as const
  return {
    kind: 'table',
    heading: 'Checks of the storage',
    columns: [{ heading: 'Verdict' }, { heading: 'Check' }, { heading: 'Rule' }],
    rows: order.flatMap((verdict) =>
      all
        .filter((check) => check.verdict === verdict)
        .map((check): Cell[] => [VERDICTS[verdict], check.says, ruleWords(check)]),
    ),
  }
}
