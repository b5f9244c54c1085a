import { didYouMean } from '../project/index.js'
import { columnKey, tableInCurrency, type Cell, type Column, type TableData } from '../report/index.js'
import { own } from '../values/index.js'
import type { FleetRow } from './collect.js'
import { FleetError } from './fleet-error.js'
import { FLEET_STAGES } from './stages.js'
import type { Figure, FleetStatus } from './types.js'

/** A column of the table of the fleet. */
export interface FleetColumn {
  readonly column: Column
  readonly cell: (row: FleetRow) => Cell
  /** `yield.annual.ac_kwh`: the figure that it shows. */
  readonly figure?: string
}

const PROJECT: FleetColumn = { column: { heading: 'Project' }, cell: ({ name }) => name }
const TITLE: FleetColumn = { column: { heading: 'Title' }, cell: ({ title }) => title }
const FROM: FleetColumn = { column: { heading: 'From' }, cell: ({ from }) => from }
const CURRENCY: FleetColumn = { column: { heading: 'Currency' }, cell: ({ currency }) => currency ?? 'USD' }
const STATUS: FleetColumn = { column: { heading: 'Status' }, cell: ({ status }) => statusCell(status) }
const COUNTS: readonly FleetColumn[] = [
  {
    column: { heading: 'Errors' },
    cell: ({ errors }) => (errors === 0 ? 0 : { value: errors, tone: 'bad' }),
  },
  { column: { heading: 'Warnings' }, cell: ({ warnings }) => warnings },
]

function statusCell(status: FleetStatus): Cell {
  return { value: status, tone: status === 'ok' ? 'good' : 'bad' }
}

function headlines(forMachines: boolean): FleetColumn[] {
  return FLEET_STAGES.flatMap((stage) =>
    stage.headlines
      .filter((headline) => forMachines || headline.forMachines !== true)
      .map(({ key, heading, unit, decimals }) => {
        const shown = {
          heading,
          ...(unit === undefined ? {} : { unit }),
          ...(decimals === undefined ? {} : { decimals }),
        }
        return figureColumn(`${stage.name}.${key}`, shown)
      }),
  )
}

function figureColumn(figure: string, column: Column): FleetColumn {
  return {
    column,
    figure,
    cell: ({ figures }) => {
      const value: Figure = own(figures, figure) ?? null
      return typeof value === 'boolean' ? (value ? 'yes' : 'no') : value
    },
  }
}

function extraColumn(name: string): FleetColumn {
  return { column: { heading: name, key: name }, cell: ({ extra }) => own(extra, name) ?? null }
}

/** The columns that are shown when nobody chooses; a headline that no house has is left out. */
export function usualColumns(rows: readonly FleetRow[], extra: readonly string[], forMachines: boolean): FleetColumn[] {
  const used = headlines(forMachines).filter(({ figure = '' }) =>
    rows.some(({ figures }) => (own(figures, figure) ?? null) !== null),
  )
  const mine = forMachines ? [TITLE, ...extra.map(extraColumn)] : []
  const money = rows.some(({ currency }) => currency !== undefined) ? [CURRENCY] : []
  return [PROJECT, ...mine, STATUS, ...money, ...used, ...COUNTS]
}

/**
 * The columns that a person chose.
 *
 * @param names Headings of the usual table, headings of the person's own, and figures by stage and dotted name.
 * @param extra Headings of the person's own columns.
 * @param stages Names of the stages that run; all of them when undefined.
 * @throws FleetError with all names that mean nothing.
 */
export function chosenColumns(
  names: readonly string[],
  extra: readonly string[],
  stages: readonly string[] | undefined,
): FleetColumn[] {
  const usual = [PROJECT, TITLE, FROM, STATUS, CURRENCY, ...headlines(true), ...COUNTS]
  const known = new Map(usual.map((one) => [columnKey(one.column), one]))
  for (const name of extra) known.set(name, extraColumn(name))
  const troubles: string[] = []
  const columns = names.flatMap((name): FleetColumn[] => {
    const found = known.get(name) ?? (FIGURE.test(name) ? figureColumn(name, { heading: name, key: name }) : undefined)
    const stage = found?.figure?.split('.')[0]
    if (found !== undefined && (stage === undefined || (stages ?? ALL).includes(stage))) return [found]
    troubles.push(
      found === undefined
        ? `--columns: there is no '${name}'${didYouMean(name, [...known.keys()])}; there are ${[...known.keys()].join(', ')}, and figures such as yield.annual.ac_kwh, which --jsonl names`
        : `--columns: '${name}' is of the stage '${stage ?? ''}', which --stages leaves out`,
    )
    return []
  })
  const [first, ...more] = troubles
  if (first !== undefined) throw new FleetError(first, 2, undefined, more)
  const twice = names.find((name, i) => names.indexOf(name) < i)
  if (twice !== undefined) throw new FleetError(`--columns: '${twice}' stands twice`, 2)
  return columns
}

const ALL = FLEET_STAGES.map(({ name }) => name)
const FIGURE = new RegExp(String.raw`^(?:${ALL.join('|')})\.\S+$`, 'u')

/** The label of all money of a fleet; of several, a word that is true of each, which stands beside the column of labels. */
function moneyOf(rows: readonly FleetRow[]): string | undefined {
  const labels = new Set(
    rows.filter(({ figures }) => Object.keys(figures).length > 0).map(({ currency }) => currency ?? 'USD'),
  )
  const [only] = labels
  return labels.size > 1 ? 'money' : only
}

/** Rows under columns, as a report holds them. */
export function fleetTable(rows: readonly FleetRow[], columns: readonly FleetColumn[]): TableData {
  const table = plainTable(rows, columns)
  const label = moneyOf(rows)
  if (label === undefined || label === 'USD') return table
  // A column that a person named keeps its name, and cells are theirs.
  const labelled = table.columns.map((column) =>
    column.key === undefined ? (tableInCurrency({ columns: [column], rows: [] }, label).columns[0] ?? column) : column,
  )
  return { ...table, columns: labelled }
}

function plainTable(rows: readonly FleetRow[], columns: readonly FleetColumn[]): TableData {
  return {
    columns: columns.map(({ column }) => column),
    rows: rows.map((row) => columns.map(({ cell }) => cell(row))),
  }
}

/** What is to be said of chosen figures that no house has: what they are of may be named otherwise. */
export function missingFigures(
  columns: readonly FleetColumn[],
  rows: readonly FleetRow[],
  seen: ReadonlySet<string>,
): string[] {
  return columns.flatMap(({ figure }) => {
    if (figure === undefined || seen.has(figure) || rows.length === 0) return []
    return [`--columns: no house has a figure '${figure}'${didYouMean(figure, [...seen])}; its column is empty`]
  })
}
