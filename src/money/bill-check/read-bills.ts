import { MOST_BILLS } from '../../project/facts.js'
import { ProjectError, type Problem } from '../../project/index.js'
import { decimal } from '../../values/decimal/index.js'
import { isDay, MOST_HEAD_LINES, readTable, type TableCell, type TableRow } from '../../values/index.js'
import type { StatedKwh } from '../bill/index.js'
import { STATED_LINES, type PaidBill, type StatedLine } from './paid-bill.js'

/** Ids that columns may name after a point: `kwh.on_peak`, `demand_kw.peak`. */
export interface BillIds {
  readonly periods: readonly string[]
  readonly demand: readonly string[]
}

const PLAIN = ['from', 'to', 'kwh', 'export_kwh', 'generation_kwh', 'demand_kw', 'amount']

/** Columns that a table of bills may have. */
export function billColumns({ periods, demand }: BillIds): string[] {
  const several = periods.length > 1 ? periods : []
  return [
    ...PLAIN,
    ...several.flatMap((id) => [`kwh.${id}`, `export_kwh.${id}`]),
    ...demand.map((id) => `demand_kw.${id}`),
    ...STATED_LINES,
  ]
}

/**
 * Reads a table of printed bills.
 *
 * @param file Name for messages.
 * @throws ProjectError with every problem at its line and column.
 */
export function readBills(file: string, text: string, ids: BillIds): PaidBill[] {
  const problems: Problem[] = []
  const tell = (at: { line: number; column: number }, path: string, message: string): void => {
    problems.push({ file, line: at.line, column: at.column, path, message })
  }
  const give = (): ProjectError => new ProjectError(problems, 2, new Map([[file, text]]))
  const table = readTable(text, MOST_BILLS)
  if (table === undefined) {
    tell(
      { line: 1, column: 1 },
      '',
      `no line of the first ${MOST_HEAD_LINES} has column names; a table of bills has ${PLAIN.slice(0, 3).join(', ')}, amount`,
    )
    throw give()
  }
  for (const problem of table.problems) tell(problem, '', problem.message)
  const known = billColumns(ids)
  const columns = new Map<string, number>()
  for (const [i, cell] of table.header.entries()) {
    const name = columnName(cell)
    if (!known.includes(name)) tell(cell, cell.text, `no such column; known are ${known.join(', ')}`)
    else if (columns.has(name)) tell(cell, cell.text, 'this column stands twice; keep one of them')
    columns.set(name, i)
  }
  const first = table.header[0] ?? { line: 1, column: 1 }
  for (const name of ['from', 'to', 'amount'])
    if (!columns.has(name)) tell(first, '', `there is no column ${name}; known are ${known.join(', ')}`)
  if (!columns.has('kwh') && ![...columns.keys()].some((name) => name.startsWith('kwh.')))
    tell(first, '', 'there is no column kwh')
  if (table.rows.length === 0 && problems.length === 0) tell(first, '', 'there is no bill below the column names')
  if (problems.length > 0) throw give()
  const bills = table.rows.map((row) => readRow({ row, columns, ids, tell, file }))
  tellOrder(bills, table.rows, tell)
  if (problems.length > 0) throw give()
  return bills
}

function columnName({ text }: TableCell): string {
  const name = text.trim().toLowerCase().replaceAll(/\s+/gu, '_')
  const plain = name.replace(/_usd$/u, '').replace(/^import_kwh/u, 'kwh')
  return name === 'amount_usd' || (STATED_LINES as readonly string[]).includes(plain)
    ? plain
    : name.replace(/^import_kwh/u, 'kwh')
}

interface RowReading {
  readonly row: TableRow
  readonly columns: ReadonlyMap<string, number>
  readonly ids: BillIds
  readonly file: string
  readonly tell: (at: { line: number; column: number }, path: string, message: string) => void
}

function readRow({ row, columns, ids, tell, file }: RowReading): PaidBill {
  const cellOf = (name: string): TableCell | undefined => {
    const column = columns.get(name)
    return column === undefined ? undefined : row.cell(column)
  }
  const number = (name: string, isEnergy: boolean): number | undefined => {
    const cell = cellOf(name)
    if (cell === undefined || cell.text === '') return undefined
    const plain = cell.text.replace(/^(-?)\$\s*/u, '$1')
    const text = /^-?\d{1,3}(,\d{3})+(\.\d+)?$/u.test(plain) ? plain.replaceAll(',', '') : plain
    if (!/^[+-]?(\d+\.?\d*|\.\d+)$/u.test(text)) tell(cell, name, `'${cell.text}' is not a number; write it as 1234.56`)
    else if (isEnergy && Number(text) < 0)
      tell(cell, name, `${cell.text} is below zero; exports stand in a column of their own, export_kwh`)
    else if (Math.abs(Number(text)) > 1e7) tell(cell, name, `${cell.text} is too large for a bill of a house`)
    else return Number(text)
    return undefined
  }
  const needed = (name: string, isEnergy: boolean): number => {
    const cell = cellOf(name)
    if (cell !== undefined && cell.text === '') tell(cell, name, 'the cell is empty')
    return number(name, isEnergy) ?? 0
  }
  const day = (name: string): string => {
    const cell = cellOf(name) ?? { text: '', line: row.line, column: 1 }
    if (!isDay(cell.text)) tell(cell, name, `'${cell.text}' is no day; write year-month-day, such as 2026-01-31`)
    return cell.text
  }
  const byId = (name: string, known: readonly string[]): StatedKwh | undefined => {
    const own = known.filter((id) => columns.has(`${name}.${id}`))
    if (own.length === 0) return number(name, true)
    const parts = Object.fromEntries(own.map((id) => [id, needed(`${name}.${id}`, true)]))
    const sum = Object.values(parts).reduce((a, b) => a + b, 0)
    const whole = name === 'demand_kw' ? undefined : number(name, true)
    const cell = cellOf(name)
    if (whole !== undefined && cell !== undefined && Math.abs(whole - sum) > 1)
      tell(cell, name, `${whole} is not the sum of its periods, ${Number(sum.toFixed(3))}`)
    return parts
  }
  const cents = (name: string): ReturnType<typeof decimal> | undefined => {
    const usd = number(name, false)
    const cell = cellOf(name)
    if (usd !== undefined && cell !== undefined && !decimal(usd).roundedTo(2).eq(decimal(usd)))
      tell(cell, name, `${cell.text} USD has parts of a cent; a bill is paid in cents`)
    return usd === undefined ? undefined : decimal(usd)
  }
  const [from, to] = [day('from'), day('to')]
  const importKwh = byId('kwh', ids.periods)
  if (importKwh === undefined) needed('kwh', true)
  const amount = cellOf('amount')
  if (amount?.text === '') tell(amount, 'amount', 'the cell is empty')
  return {
    place: `${file}:${row.line}`,
    from,
    to,
    importKwh: importKwh ?? 0,
    exportKwh: byId('export_kwh', ids.periods),
    generationKwh: number('generation_kwh', true),
    demandKw: byId('demand_kw', ids.demand),
    amountUsd: cents('amount') ?? decimal(0),
    lines: new Map(
      STATED_LINES.flatMap((line): [StatedLine, ReturnType<typeof decimal>][] => {
        const usd = cents(line)
        return usd === undefined ? [] : [[line, usd]]
      }),
    ),
  }
}

/** Bills follow each other in time, and no day is billed twice. */
function tellOrder(bills: readonly PaidBill[], rows: readonly TableRow[], tell: RowReading['tell']): void {
  for (const [i, bill] of bills.entries()) {
    const at = rows[i]?.cell(0) ?? { line: 1, column: 1 }
    if (!isDay(bill.from) || !isDay(bill.to)) continue
    if (bill.to <= bill.from) tell(at, 'to', `the bill ends on ${bill.to}, not after ${bill.from}`)
    const before = bills[i - 1]
    if (before !== undefined && isDay(before.to) && bill.from < before.to)
      tell(
        at,
        'from',
        `the bill begins on ${bill.from}, before the one above ends (${before.to}); sort the bills by day`,
      )
  }
}
