import { MOST_LIST_ROWS } from '../../project/facts.js'
import { ProjectError, type Complaint, type Problem } from '../../project/index.js'
import { own, readTable, type TableCell, type TableRow } from '../../values/index.js'
import { checkPrices } from './check-prices.js'
import type { PriceItem, PriceList, PricePack } from './price-list-types.generated.js'
import { validate } from './price-list-validator.generated.js'

/** Columns of a price list as a table; `unit_price` is another name of usd. */
const COLUMNS = [
  'id',
  'name',
  'part',
  'pack',
  'holds',
  'usd',
  'usd_low',
  'usd_high',
  'valid_until',
  'taxable',
  'includes',
]

const PACKS = ['each', 'stick', 'box', 'spool', 'foot']

/** What lines above the table may state, as `# supplier: Name`. */
const HEAD = ['supplier', 'invented', 'valid_until', 'freight_usd', 'freight_free_from_usd']

const isNumber = (text: string): boolean => /^\d+(?:\.\d+)?$/u.test(text)

/** The table while it is read: problems and where the values of the list stand. */
class PriceTable {
  readonly problems: Problem[] = []
  readonly places = new Map<string, TableCell>()
  readonly #file: string

  constructor(file: string) {
    this.#file = file
  }

  tell(at: { readonly line: number; readonly column: number }, path: string, message: string): void {
    this.problems.push({ file: this.#file, line: at.line, column: at.column, path, message })
  }

  tellComplaint({ segments, message }: Complaint): void {
    for (let end = segments.length; end >= 0; end--) {
      const cell = this.places.get(segments.slice(0, end).join('\n'))
      if (cell !== undefined || end === 0) {
        this.tell(cell ?? { line: 1, column: 1 }, segments.join('.'), message)
        return
      }
    }
  }
}

/**
 * Reads a price list that is a table: one pack of an item on each row, further rows of an item its other packs.
 *
 * @throws ProjectError with every problem, each at its line and column.
 */
export function readPriceTable(file: string, text: string): PriceList {
  const table = new PriceTable(file)
  const refuse = (): ProjectError => new ProjectError(table.problems, 2, new Map([[file, text]]))
  const { head, headerLine } = readHead(text, table)
  const read = readTable(text, MOST_LIST_ROWS, undefined, headerLine)
  if (read === undefined) table.tell({ line: headerLine, column: 1 }, '', 'there are no column names')
  for (const problem of read?.problems ?? []) table.tell(problem, '', problem.message)
  const columns = new Map<string, number>()
  for (const [i, cell] of (read?.header ?? []).entries()) {
    const plain = cell.text.toLowerCase().replaceAll(/\s+/gu, '_')
    const name = plain === 'unit_price' || plain === 'unit_price_usd' ? 'usd' : plain
    if (!COLUMNS.includes(name)) table.tell(cell, cell.text, `no such column; known are ${COLUMNS.join(', ')}`)
    else if (columns.has(name)) table.tell(cell, cell.text, 'this column stands twice; keep one of them')
    columns.set(name, i)
  }
  for (const name of ['id', 'pack'])
    if (read !== undefined && !columns.has(name))
      table.tell({ line: headerLine, column: 1 }, '', `there is no column ${name}`)
  if (table.problems.length > 0) throw refuse()
  const items: Record<string, PriceItem> = {}
  for (const row of read?.rows ?? []) readItem(row, columns, items, table)
  const list = { format: 'gablewatt-prices/1', supplier: nameOf(file), ...head, items } as PriceList
  if (table.problems.length > 0) throw refuse()
  if (!validate(list))
    for (const { instancePath, keyword, params } of validate.errors ?? []) {
      const message = `breaks '${keyword}' of the schema: ${JSON.stringify(params)}`
      table.tellComplaint({ segments: instancePath.split('/').slice(1), at: 'value', message })
    }
  else for (const complaint of checkPrices(list)) table.tellComplaint(complaint)
  if (table.problems.length > 0) throw refuse()
  return list
}

const nameOf = (file: string): string => (file.split(/[/\\]/u).at(-1) ?? file).replace(/\.[a-z]+$/iu, '') || 'supplier'

/** Lines above the table that begin with #. */
function readHead(text: string, table: PriceTable): { head: Partial<PriceList>; headerLine: number } {
  const head: Record<string, unknown> = {}
  let line = 0
  for (const content of text.replace(/^\uFEFF/u, '').split(/\r?\n/u)) {
    line += 1
    const trimmed = content.trim()
    if (trimmed !== '' && !trimmed.startsWith('#')) return { head: head, headerLine: line }
    const [, key = '', value = ''] = /^#\s*([a-z_]+):\s*(.*?)[\s,;]*$/u.exec(trimmed) ?? []
    if (key === '') continue
    const at = { text: value, line, column: content.indexOf('#') + 1 }
    if (!HEAD.includes(key)) table.tell(at, key, `no such value of a price list; known are ${HEAD.join(', ')}`)
    else if (key === 'invented' && !/^(?:true|false)$/u.test(value))
      table.tell(at, key, `'${value}' is not true or false`)
    else if (key.endsWith('_usd') && !isNumber(value)) table.tell(at, key, `'${value}' is not a number of USD`)
    else head[key] = key === 'invented' ? value === 'true' : key.endsWith('_usd') ? Number(value) : value
    table.places.set(key, at)
  }
  return { head: head, headerLine: 1 }
}

function readItem(
  row: TableRow,
  columns: ReadonlyMap<string, number>,
  items: Record<string, PriceItem>,
  table: PriceTable,
): void {
  const cellOf = (name: string): TableCell | undefined => {
    const column = columns.get(name)
    const cell = column === undefined ? undefined : row.cell(column)
    return cell?.text === '' ? undefined : cell
  }
  const id = cellOf('id')
  const pack = cellOf('pack')
  if (id === undefined)
    return table.tell({ line: row.line, column: 1 }, 'id', 'the row has no id; price-bom prints them')
  if (pack === undefined)
    return table.tell(id, `items.${id.text}.pack`, 'the row has no pack: each, stick, box, spool or foot')
  const first = own(items, id.text)
  const base = [
    'items',
    id.text,
    ...(first === undefined ? [] : ['also_sold_as', String(first.also_sold_as?.length ?? 0)]),
  ]
  table.places.set(base.join('\n'), id)
  const values: Record<string, unknown> = {}
  for (const name of COLUMNS.slice(1)) {
    const cell = cellOf(name)
    if (cell === undefined) continue
    const path = [...base, name]
    table.places.set(path.join('\n'), cell)
    if (first !== undefined && ['name', 'taxable', 'includes'].includes(name)) {
      table.tell(cell, path.join('.'), `stands in the first row of ${id.text}; further rows are its other packs`)
      continue
    }
    values[name] = valueOf(name, cell, path, table)
  }
  if (first === undefined) {
    Object.defineProperty(items, id.text, { value: values, enumerable: true, configurable: true, writable: true })
    return
  }
  const packs = [...(first.also_sold_as ?? []), values as unknown as PricePack]
  items[id.text] = { ...first, also_sold_as: packs }
}

function valueOf(name: string, cell: TableCell, path: readonly string[], table: PriceTable): unknown {
  const { text } = cell
  const wrong = (message: string): undefined => table.tell(cell, path.join('.'), message) as undefined
  if (['holds', 'usd', 'usd_low', 'usd_high'].includes(name)) {
    const plain = text.replace(/^\$\s*/u, '')
    const number = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/u.test(plain) ? plain.replaceAll(',', '') : plain
    return isNumber(number) ? Number(number) : wrong(`'${text}' is not a number; write it as 1234.56`)
  }
  if (name === 'pack' && !PACKS.includes(text)) return wrong(`found '${text}'; allowed are ${PACKS.join(', ')}`)
  if (name === 'taxable') {
    if (/^(?:yes|true)$/iu.test(text)) return true
    return /^(?:no|false)$/iu.test(text) ? false : wrong(`'${text}' is neither yes nor no`)
  }
  if (name === 'includes') {
    const pairs = text.split(/[;\s]+/u).filter((pair) => pair !== '')
    const read = pairs.map((pair) => /^([^=]+)=(\d+(?:\.\d+)?)$/u.exec(pair))
    const bad = read.indexOf(null)
    if (bad >= 0) return wrong(`'${pairs[bad]}' is not id=number; write flashing.foot=1, several parted by semicolons`)
    return Object.fromEntries(read.map((match) => [match?.[1] ?? '', Number(match?.[2])]))
  }
  return text
}
