import type { Production } from '../../project/index.js'
import type { TableCell } from '../../values/index.js'

export type EnergyUnit = 'kwh' | 'wh' | 'kw' | 'w'

/** What single columns beside that of the system stand for. */
export type PartKind = 'modules' | 'meters'

/** Which columns hold what, by index. */
export interface ProductionColumns {
  readonly time: readonly number[]
  /** Undefined when only module columns are there; their sum is the system. */
  readonly value: number | undefined
  readonly modules: readonly { readonly id: string; readonly column: number }[]
  /** Whether the columns of parts are those of meters and not of modules. */
  readonly partsAre: PartKind
  /** As declared, or as the column name says. */
  readonly unit: EnergyUnit | undefined
  /** Whether the column name says that the meter only rises. */
  readonly namedCumulative: boolean
}

/** What stands in the way, at a cell of the header. */
export interface ColumnTrouble {
  readonly cell: TableCell | undefined
  readonly message: string
}

/** Column that stands for the system in messages. */
export function mainColumn({ value, modules }: ProductionColumns): number {
  return value ?? modules[0]?.column ?? 0
}

const STAMP_NAMES = /^(?:time|date|datetime|date time|timestamp|time stamp|stamp|day|month|period|interval|hour)\b/u
const CLOCK_NAMES = /^(?:time|hour|start|start time|interval start|end time)\b/u
const VALUE_NAMES = /\b(?:production|produced|energy|generation|generated|yield|output|solar|pv|ac|power|kwh|wh)\b/u
const CUMULATIVE_NAMES = /\b(?:cumulative|lifetime|meter reading|register|counter|total to date)\b/u
const UNITS: readonly EnergyUnit[] = ['kwh', 'wh', 'kw', 'w']

/**
 * Finds the columns: as declared, otherwise by their names.
 *
 * @param moduleIds Ids of the project's modules; a column named so holds that module.
 */
export function findColumns(
  header: readonly TableCell[],
  mapping: Production,
  moduleIds: readonly string[],
): ProductionColumns | ColumnTrouble[] {
  const troubles: ColumnTrouble[] = []
  const names = header.map((cell) => plainName(cell.text))
  const named = (text: string, key: string): number | undefined => {
    const at = names.indexOf(plainName(text))
    if (at >= 0) return at
    troubles.push({ cell: header[0], message: `no column '${text}' (${key}); the columns are ${listOf(header)}` })
    return undefined
  }
  const meters = mapping.meter_columns
  if (meters !== undefined && mapping.module_columns !== undefined)
    troubles.push({
      cell: header[0],
      message: 'meter_columns and module_columns cannot stand together: declare the meters, or the modules',
    })
  const modules =
    meters === undefined ? moduleColumns(header, mapping, moduleIds, named, troubles) : meterColumns(meters, named)
  const taken = new Set(modules.map((each) => each.column))
  const time = mapping.time_columns?.flatMap((text) => named(text, 'time_columns') ?? []) ?? timeColumns(names)
  if (time.length === 0 && mapping.time_columns === undefined) {
    troubles.push({
      cell: header[0],
      message: `no column is named as a time stamp (time, date, timestamp, month ...); declare time_columns among ${listOf(header)}`,
    })
  }
  for (const at of time) taken.add(at)
  const value =
    mapping.value_column === undefined
      ? valueColumn(header, names, { taken, hasModules: modules.length > 0 }, troubles)
      : named(mapping.value_column, 'value_column')
  if (mapping.unit === undefined)
    troubles.push(
      ...mixedUnits(header, names, [
        ...(value === undefined ? [] : [value]),
        ...modules.map((module) => module.column),
      ]),
    )
  if (troubles.length > 0) return troubles
  const unitColumn = value ?? modules[0]?.column
  const unitName = unitColumn === undefined ? '' : (names[unitColumn] ?? '')
  return {
    time,
    value,
    modules,
    partsAre: meters === undefined ? 'modules' : 'meters',
    unit: mapping.unit ?? unitOf(unitName),
    namedCumulative: CUMULATIVE_NAMES.test(unitName),
  }
}

/** The column that is named as production, the one in kWh or Wh when there are several; modules may stand in for it. */
function valueColumn(
  header: readonly TableCell[],
  names: readonly string[],
  { taken, hasModules }: { readonly taken: ReadonlySet<number>; readonly hasModules: boolean },
  troubles: ColumnTrouble[],
): number | undefined {
  const free = names.flatMap((_, at) => (taken.has(at) ? [] : [at]))
  const fitting = free.filter((at) => VALUE_NAMES.test(names[at] ?? '') || unitOf(names[at] ?? '') !== undefined)
  const energies = fitting.filter((at) => ['kwh', 'wh'].includes(unitOf(names[at] ?? '') ?? ''))
  const choice = fitting.length > 1 && energies.length === 1 ? energies : fitting
  if (choice.length === 1) return choice[0]
  if (choice.length > 1) {
    troubles.push({
      cell: header[choice[1] ?? 0],
      message: `several columns may hold the production (${choice.map((at) => `'${header[at]?.text ?? ''}'`).join(', ')}); declare value_column`,
    })
  } else if (!hasModules) {
    troubles.push({
      cell: header.at(-1),
      message: `no column is named as production (kWh, energy, production ...); declare value_column among ${listOf(header)}`,
    })
  }
  return undefined
}

function meterColumns(
  meters: Readonly<Record<string, string>>,
  named: (text: string, key: string) => number | undefined,
): { id: string; column: number }[] {
  return Object.entries(meters).flatMap(([name, id]) => {
    const column = named(name, 'meter_columns')
    return column === undefined ? [] : [{ id, column }]
  })
}

function moduleColumns(
  header: readonly TableCell[],
  mapping: Production,
  moduleIds: readonly string[],
  named: (text: string, key: string) => number | undefined,
  troubles: ColumnTrouble[],
): { id: string; column: number }[] {
  const declared = Object.entries(mapping.module_columns ?? {}).flatMap(([name, id]) => {
    if (!moduleIds.includes(id)) {
      troubles.push({
        cell: header[0],
        message: `module_columns names module '${id}', which the project does not have; its modules are ${moduleIds.slice(0, 6).join(', ')}${moduleIds.length > 6 ? ' ...' : ''}`,
      })
      return []
    }
    const column = named(name, 'module_columns')
    return column === undefined ? [] : [{ id, column }]
  })
  if (mapping.module_columns !== undefined) return declared
  return header.flatMap((cell, column) => {
    const bare = cell.text.replace(/\s*[([]?\b(?:kWh|Wh|kW|W)\b[)\]]?\s*$/u, '').trim()
    return moduleIds.includes(bare) ? [{ id: bare, column }] : []
  })
}

/** One unit holds for all columns of a table. */
function mixedUnits(
  header: readonly TableCell[],
  names: readonly string[],
  columns: readonly number[],
): ColumnTrouble[] {
  const named = columns.flatMap((column) => {
    const unit = unitOf(names[column] ?? '')
    return unit === undefined ? [] : [{ column, unit }]
  })
  const [first] = named
  const other = named.find(({ unit }) => unit !== first?.unit)
  if (first === undefined || other === undefined) return []
  return [
    {
      cell: header[other.column],
      message: `'${header[other.column]?.text ?? ''}' is in ${other.unit}, '${header[first.column]?.text ?? ''}' in ${first.unit}; bring them to one unit, or declare unit`,
    },
  ]
}

function timeColumns(names: readonly string[]): number[] {
  const date = names.findIndex((name) => STAMP_NAMES.test(name))
  if (date < 0) return []
  const clock = names.findIndex((name, at) => at !== date && CLOCK_NAMES.test(name))
  return clock >= 0 && /^(?:date|day)$/u.test(names[date] ?? '') ? [date, clock] : [date]
}

/** `Energy_(kWh)` becomes `energy kwh`. */
function plainName(text: string): string {
  return text
    .toLowerCase()
    .replaceAll(/[^a-z0-9.+-]+/gu, ' ')
    .trim()
}

/** The unit that stands as a word of its own, the last one when there are several. */
function unitOf(name: string): EnergyUnit | undefined {
  const words = name.split(' ')
  return UNITS.find((unit) => unit === words.findLast((word) => (UNITS as readonly string[]).includes(word)))
}

function listOf(header: readonly TableCell[]): string {
  return header.map((cell) => `'${cell.text}'`).join(', ')
}
