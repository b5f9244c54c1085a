import type { EquipmentFit } from '../../house/index.js'
import type { EquipmentKind } from '../../project/index.js'
import type { Cell, Column, Section, TableData } from '../../report/index.js'

/** A piece of equipment with the file that holds it, and whether a project could have it. */
export interface ListedEquipment {
  readonly kind: EquipmentKind
  readonly id: string
  readonly values: Readonly<Record<string, unknown>>
  readonly file: string
  /** Modules and inverters that were tried in a project. */
  readonly fit?: EquipmentFit | undefined
}

/** Reasons that are printed; JSON has all. */
const MOST_REASONS = 3

interface Shown {
  readonly heading: string
  /** Columns of the main values: key, heading, unit, decimals. */
  readonly keys: readonly (readonly [key: string, heading: string, unit?: string, decimals?: number])[]
}

const SHOWN: Readonly<Record<EquipmentKind, Shown>> = {
  module: {
    heading: 'Modules',
    keys: [
      ['pmax_w', 'Power', 'W'],
      ['length_in', 'Length', 'in', 1],
      ['width_in', 'Width', 'in', 1],
      ['voc_v', 'Voc', 'V', 1],
      ['isc_a', 'Isc', 'A', 2],
    ],
  },
  inverter: {
    heading: 'Inverters',
    keys: [
      ['kind', 'Kind'],
      ['ac_power_w', 'AC', 'W'],
      ['ac_current_a', 'AC', 'A', 2],
      ['max_dc_voltage_v', 'DC up to', 'V'],
    ],
  },
  optimiser: {
    heading: 'DC-to-DC converters',
    keys: [
      ['max_input_power_w', 'Power', 'W'],
      ['input_max_v', 'Input up to', 'V'],
      ['output_max_a', 'Output', 'A', 1],
    ],
  },
  'trunk-cable': {
    heading: 'Trunk cables',
    keys: [
      ['size_awg', 'Size'],
      ['ampacity_a', 'Ampacity', 'A', 1],
      ['max_inverters', 'Inverters'],
    ],
  },
  rail: {
    heading: 'Rails',
    keys: [
      ['max_span_in', 'Span up to', 'in', 1],
      ['max_cantilever_in', 'Free end up to', 'in', 1],
    ],
  },
  mount: {
    heading: 'Mounts',
    keys: [
      ['capacity_uplift_lb', 'Uplift', 'lb'],
      ['capacity_down_lb', 'Down', 'lb'],
      ['capacity_lateral_lb', 'Along', 'lb'],
    ],
  },
  'storage-unit': {
    heading: 'Storage units',
    keys: [
      ['coupling', 'Coupling'],
      ['usable_kwh', 'Usable', 'kWh', 1],
      ['charge_kw', 'Charge', 'kW', 1],
      ['discharge_kw', 'Discharge', 'kW', 1],
    ],
  },
}

/** A table for each kind, and the reasons of what does not fit. */
export function sectionsOf(listed: readonly ListedEquipment[]): Section[] {
  const kinds = (Object.keys(SHOWN) as EquipmentKind[]).filter((kind) => listed.some((one) => one.kind === kind))
  const files = [...new Set(listed.map(({ file }) => file))]
  const tables = kinds.flatMap((kind) =>
    files.flatMap((file): Section[] => {
      const some = listed.filter((one) => one.kind === kind && one.file === file)
      const heading = files.length > 1 ? `${SHOWN[kind].heading} in ${file}` : SHOWN[kind].heading
      return some.length === 0 ? [] : [{ kind: 'table', heading, ...tableOf(kind, some) }]
    }),
  )
  const misfits = listed.filter(({ fit }) => fit?.fits === false)
  if (misfits.length === 0) return tables
  const items = misfits.map(({ id, fit }) => `${id}: ${firstReasons(fit)}`)
  return [...tables, { kind: 'list', heading: 'Why not', items }]
}

function firstReasons(fit: EquipmentFit | undefined): string {
  const { reasons = [] } = fit ?? {}
  const rest = reasons.length - MOST_REASONS
  return [...reasons.slice(0, MOST_REASONS), ...(rest > 0 ? [`and ${rest} more`] : [])].join('; ')
}

function tableOf(kind: EquipmentKind, listed: readonly ListedEquipment[]): TableData {
  const isTried = listed.some(({ fit }) => fit !== undefined)
  // Beside the columns of the trial a narrow terminal has room for two.
  const keys = isTried ? SHOWN[kind].keys.slice(0, 2) : SHOWN[kind].keys
  const columns: Column[] = [
    { heading: 'Id' },
    { heading: 'Name' },
    ...keys.map(([key, heading, unit, decimals = 0]) => ({
      heading,
      key,
      decimals,
      ...(unit === undefined ? {} : { unit }),
    })),
    ...(isTried ? [{ heading: 'Fits' }, { heading: 'Modules' }, { heading: 'Array', unit: 'kW', decimals: 2 }] : []),
  ]
  const rows = listed.map((one): Cell[] => [
    one.id,
    nameOf(one),
    ...keys.map(([key]) => cellOf(one.values[key])),
    ...(isTried ? fitCells(one.fit) : []),
  ])
  return { columns, rows }
}

function fitCells(fit: EquipmentFit | undefined): Cell[] {
  if (fit === undefined) return [null, null, null]
  const { fits, modules = null, powerW } = fit
  const word: Cell = fits ? { value: 'yes', tone: 'good' } : { value: 'no', tone: 'bad' }
  return [word, modules, powerW === undefined ? null : powerW / 1000]
}

function nameOf({ values }: ListedEquipment): string {
  return typeof values['name'] === 'string' ? values['name'] : ''
}

function cellOf(value: unknown): Cell {
  if (typeof value === 'number') return value
  return typeof value === 'string' ? value.replace('_', '-') : null
}

/** One table of all kinds. */
export function csvOf(listed: readonly ListedEquipment[]): TableData {
  const columns: Column[] = [
    { heading: 'Kind' },
    { heading: 'Id' },
    { heading: 'Name' },
    { heading: 'File' },
    { heading: 'Power', unit: 'W', key: 'power_w' },
    { heading: 'Fits' },
    { heading: 'Modules' },
    { heading: 'Array power', unit: 'W', key: 'array_power_w' },
    { heading: 'Reasons' },
  ]
  const rows = listed.map((one): Cell[] => {
    const { kind, id, file, fit } = one
    const fits = fit === undefined ? null : fit.fits ? 'yes' : 'no'
    return [
      kind,
      id,
      nameOf(one),
      file,
      powerOf(one),
      fits,
      fit?.modules ?? null,
      fit?.powerW ?? null,
      fit === undefined ? null : fit.reasons.join('; '),
    ]
  })
  return { columns, rows }
}

function powerOf({ values }: ListedEquipment): number | null {
  const power = values['pmax_w'] ?? values['ac_power_w'] ?? values['max_input_power_w']
  return typeof power === 'number' ? power : null
}

/** The values of JSON: each piece as its file states it. */
export function valuesOf(listed: readonly ListedEquipment[], project: string | undefined): Record<string, unknown> {
  return {
    project: project ?? null,
    equipment: listed.map(({ kind, id, file, values, fit }) => ({
      kind,
      id,
      file,
      stated: values,
      fit:
        fit === undefined
          ? null
          : {
              fits: fit.fits,
              reasons: fit.reasons,
              modules: fit.modules ?? null,
              array_power_w: fit.powerW ?? null,
            },
    })),
  }
}
