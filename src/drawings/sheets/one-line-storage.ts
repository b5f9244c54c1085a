import type { CircuitValues, StorageValues, WiringValues } from '../../electrical/index.js'
import {
  breakerSymbol,
  inverterSymbol,
  namedBox,
  switchSymbol,
  tagList,
  tagSymbol,
} from '../diagram/one-line-symbols.js'
import { wireTags } from '../diagram/wire-tags.js'
import type { LabelMarks } from '../labels/label-marks.js'
import { columns } from './columns.js'
import { label, line, plainNumber, TYPE_PT, type Block } from '../layout/index.js'
import { onLayer, type Primitive, inCapitals } from '../model/index.js'
import { batterySymbol } from '../tree/tree-symbols.js'

const SIZE = TYPE_PT.small
/** Height of the row of one circuit, points. */
const ROW_PT = 84
/** Places across, as shares of the width. */
const AT = { units: 0.02, disconnect: 0.34, breaker: 0.5, panel: 0.6, isolating: 0.82 } as const

/** The storage with its disconnect, breaker, panel and isolating device, a row for each of its circuits; nothing without storage. */
export function storageDiagram(wiring: WiringValues, labels: LabelMarks): Block[] {
  const { storage } = wiring
  if (storage === undefined) return []
  const rows = storage.circuits
  return [
    { kind: 'heading', text: 'Storage' },
    {
      kind: 'figure',
      heightPt: ROW_PT * rows.length + 6,
      draw: (x, y, width) =>
        onLayer(
          'oneLine',
          rows.flatMap((circuit, index) =>
            circuit.kind === 'dc_storage'
              ? dcRow(wiring, storage, circuit, { x, y: y + 30 + index * ROW_PT, width })
              : acRow(wiring, storage, circuit, { x, y: y + 30 + index * ROW_PT, width, first: index === 0 }),
          ),
        ),
    },
    { kind: 'list', items: [...notes(storage), ...labelNotes(labels)] },
    ...checked(storage),
  ]
}

interface Row {
  readonly x: number
  readonly y: number
  readonly width: number
}

function acRow(
  wiring: WiringValues,
  storage: StorageValues,
  circuit: CircuitValues,
  { x, y, width, first }: Row & { readonly first: boolean },
): Primitive[] {
  const at = (share: number): number => x + share * width
  const panel = wiring.distribution.find(({ id }) => id === storage.panel)
  const { disconnect, backup } = storage
  return [
    ...batterySymbol(at(AT.units), y),
    line(at(AT.units) + 26, y, at(AT.units) + 34, y, { pen: 'medium' }),
    ...inverterSymbol(at(AT.units) + 34, y),
    line(at(AT.units) + 54, y, at(AT.panel), y, { pen: 'medium' }),
    ...tagsOn(wiring, circuit.id, at(0.2), y),
    words(at(AT.units), y, width * 0.28, unitWords(storage, circuit)),
    ...(disconnect.at === 'in_unit' ? [] : switchSymbol(at(AT.disconnect), y, 'right')),
    words(at(AT.disconnect) - 20, y, width * 0.13, disconnectWords(storage)),
    ...breakerSymbol(at(AT.breaker), y),
    words(at(AT.breaker) - 12, y, width * 0.09, `${circuit.breaker_a ?? '?'} A BREAKER`),
    namedBox(at(AT.panel), y - 18, 46, 36),
    line(at(AT.panel), y, at(AT.panel) + 46, y, { pen: 'heavy' }),
    words(
      at(AT.panel),
      y + 10,
      width * 0.2,
      `${inCapitals(panel?.name ?? 'main panel')}${panel === undefined ? '' : `, ${panel.bus_a ?? '?'} A BUS`}`,
    ),
    ...(backup === null || !first ? [] : isolating(wiring, storage, { x, y, width })),
  ]
}

/** What cuts the house from the grid, between the backed-up panel and the utility. */
function isolating(
  wiring: WiringValues,
  { backup, power_control: control }: StorageValues,
  { x, y, width }: Row,
): Primitive[] {
  if (backup === null) return []
  const from = x + AT.panel * width + 46
  const middle = x + AT.isolating * width + 16
  const rating = backup.isolating_device_a === null ? 'RATING NOT STATED' : `${backup.isolating_device_a} A`
  const listed =
    backup.isolating_device_listed === null
      ? 'LISTING NOT STATED'
      : backup.isolating_device_listed
        ? 'LISTED'
        : 'NOT LISTED'
  const up = wiring.distribution.find(({ id }) => id === upstreamOf(wiring, backup.panel))
  return [
    line(from, y, x + width - 4, y, { pen: 'medium' }),
    { kind: 'rectangle', x: middle - 16, y: y - 12, width: 32, height: 22, pen: 'medium', fill: 'white' },
    line(middle - 16, y, middle + 16, y),
    ...switchSymbol(middle, y, 'right'),
    words(
      middle - 26,
      y + 2,
      width * 0.18,
      `ISOLATING DEVICE (MID), ${rating}, ${listed}; TO ${inCapitals(up?.name ?? 'utility')}`,
    ),
    ...(control === null
      ? []
      : [
          { kind: 'circle', center: { x: from + 12, y }, radiusPt: 5, pen: 'medium' } as const,
          label(from + 12, y - 8, 'CT', { sizePt: SIZE, face: 'bold', align: 'center', valign: 'bottom' }),
        ]),
  ]
}

/** Panel, or service, that feeds a panel. */
function upstreamOf({ distribution }: WiringValues, panelId: string): string | undefined {
  const parent = distribution.find(({ id }) => id === panelId)?.parent ?? undefined
  const node = distribution.find(({ id }) => id === parent)
  return node?.kind === 'feeder' ? (node.parent ?? undefined) : parent
}

function dcRow(
  wiring: WiringValues,
  storage: StorageValues,
  circuit: CircuitValues,
  { x, y, width }: Row,
): Primitive[] {
  const at = (share: number): number => x + share * width
  return [
    ...batterySymbol(at(AT.units), y),
    line(at(AT.units) + 26, y, at(AT.panel), y, { pen: 'medium' }),
    ...tagsOn(wiring, circuit.id, at(0.2), y),
    words(
      at(AT.units),
      y,
      width * 0.28,
      `BATTERY, ${plainNumber(circuit.voltage_v, 0)} V DC AT LEAST, ${plainNumber(circuit.continuous_a, 1)} A${storage.nameplate_kwh === null ? '' : `, ${plainNumber(storage.nameplate_kwh, 1)} kWh`}`,
    ),
    ...breakerSymbol(at(AT.breaker), y),
    words(at(AT.breaker) - 12, y, width * 0.09, `${circuit.breaker_a ?? '?'} A, DC`),
    ...inverterSymbol(at(AT.panel), y),
    words(
      at(AT.panel),
      y,
      width * 0.2,
      storage.coupling === 'dc' ? 'INVERTER OF THE MODULES, ONE SOURCE ON THE BUSBAR' : 'INVERTER OF THE STORAGE',
    ),
  ]
}

function tagsOn(wiring: WiringValues, circuit: string, x: number, y: number): Primitive[] {
  const own = wireTags(wiring).filter(({ circuits }) => circuits.includes(circuit))
  const [only, ...more] = own
  if (only === undefined) return []
  return more.length === 0
    ? tagSymbol(x, y, only.tag)
    : own.flatMap(({ tag }, index) => tagList(x + index * 22, y, tag))
}

const words = (x: number, y: number, maxWidthPt: number, text: string): Primitive =>
  label(x, y + 14, text, { sizePt: SIZE, valign: 'top', maxWidthPt })

function unitWords(storage: StorageValues, circuit: CircuitValues): string {
  const energy = storage.nameplate_kwh === null ? '' : `, ${plainNumber(storage.nameplate_kwh, 1)} kWh IN ALL`
  const places = [...new Set(storage.places.map(({ location }) => inCapitals(location)))].join(', ')
  return `${storage.count} x ${inCapitals(storage.name)}${energy}, ${plainNumber(circuit.continuous_a, 1)} A AT ${circuit.voltage_v} V${places === '' ? '' : `, ${places}`}`
}

function disconnectWords({ disconnect }: StorageValues): string {
  const rating = disconnect.rating_a === null ? '' : `, ${disconnect.rating_a} A`
  switch (disconnect.at) {
    case 'in_unit':
      return 'DISCONNECT IN THE UNIT'
    case 'within_10_ft':
      return `STORAGE DISCONNECT${rating}, BESIDE THE UNITS`
    case 'lockable_elsewhere':
      return `STORAGE DISCONNECT${rating}, LOCKABLE OPEN`
    case null:
      return `STORAGE DISCONNECT${rating}, PLACE NOT STATED`
  }
}

/** What was checked of unit, disconnect, places and backup, as the reviewer asks for it. */
function checked({ checks }: StorageValues): Block[] {
  const verdicts = { pass: 'met', fail: 'NOT MET', not_stated: 'NOT STATED', not_ruled: 'no rule' } as const
  return [
    { kind: 'heading', text: 'Storage: what was checked' },
    {
      kind: 'table',
      columns: columns(['What', 0.6], ['By', 0.28], ['Result', 0.12]),
      rows: checks.map(({ says, section, verdict }) => [says, section, verdicts[verdict]]),
    },
  ]
}

/** Labels of sheet E-604 at the storage. */
function labelNotes(labels: LabelMarks): string[] {
  const at = labels('storage_disconnect')
  const outside = labels('storage_shutdown')
  return [
    ...(at === '' ? [] : [`At the disconnect of the storage: ${at}.`]),
    ...(outside === '' ? [] : [`At the emergency shutdown outside: ${outside}.`]),
  ]
}

/** What stands outside, what the power control system is set to, how the storage runs without the grid. */
function notes({ disconnect, power_control: control, backup }: StorageValues): string[] {
  const outside = {
    none: [],
    disconnect: ['The disconnect of the storage, or its remote control, is at a readily accessible place outside.'],
    shutdown_function: ['An emergency shutdown of the storage is started at a readily accessible place outside.'],
  }[disconnect.outside]
  return [
    ...outside,
    ...(control === null
      ? []
      : [
          `Power control system set to ${control.setting_a} A; its sensors (CT) watch ${control.panels.join(', ') || 'no panel that is stated'}.`,
        ]),
    ...(backup === null
      ? ['The storage stops with the grid: no backup.']
      : [
          `Without the grid the storage carries ${backup.kind === 'whole_house' ? 'the whole house' : `panel ${backup.panel}`}; devices of all sources on its busbar: ${backup.island_devices_a} A of ${backup.bus_a} A.`,
        ]),
  ]
}
