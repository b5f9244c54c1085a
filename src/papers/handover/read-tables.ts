import { MOST_LIST_ROWS } from '../../project/facts.js'
import { didYouMean, ProjectError, type Problem, type StringReading } from '../../project/index.js'
import { readTable, type TableCell, type TableRow } from '../../values/index.js'
import type { SerialNumber } from './handover-values.js'

/** A table with its name for messages. */
export interface TableText {
  readonly name: string
  readonly text: string
}

const KINDS = ['module', 'inverter', 'other'] as const
const SERIAL_COLUMNS = ['kind', 'unit', 'serial'] as const
/** Keys of a string's readings with the most that each may be. */
const READING_COLUMNS = {
  voc_v: 2000,
  isc_a: 200,
  operating_a: 200,
  irradiance_w_m2: 1600,
  cell_c: 100,
  insulation_test_v: 5000,
  insulation_negative_mohm: 1e6,
  insulation_positive_mohm: 1e6,
  insulation_both_mohm: 1e6,
} as const satisfies Partial<Record<keyof StringReading, number>>
type NumberKey = keyof typeof READING_COLUMNS
const isNumberKey = (name: string): name is NumberKey => Object.hasOwn(READING_COLUMNS, name)

/**
 * Serial numbers of a table with the columns kind (module, inverter, other), unit and serial.
 *
 * @param units Modules and inverters that there are.
 * @throws ProjectError with every problem at its line and column; a number or a unit that stands twice is one.
 */
export function readSerials(
  table: TableText,
  units: Readonly<Record<'module' | 'inverter', readonly string[]>>,
): SerialNumber[] {
  const reader = new Reader(table)
  const columns = reader.columns(SERIAL_COLUMNS, [])
  const serials = reader.rows.flatMap((row): SerialNumber[] => {
    const [kind, unit, serial] = SERIAL_COLUMNS.map((name) => row.cell(columns.get(name) ?? -1))
    if (kind === undefined || unit === undefined || serial === undefined) return []
    const known = KINDS.find((each) => each === kind.text.toLowerCase())
    if (known === undefined) {
      reader.complain(kind, `'${kind.text}' is no kind; allowed: ${KINDS.join(', ')}${didYouMean(kind.text, KINDS)}`)
      return []
    }
    for (const [cell, what] of [
      [unit, 'unit'],
      [serial, 'serial number'],
    ] as const)
      if (cell.text === '') reader.complain(cell, `the ${what} is empty; take the row out until it is known`)
    if (known !== 'other' && unit.text !== '' && !units[known].includes(unit.text))
      reader.complain(
        unit,
        `there is no ${known} '${unit.text}' in this project; named as in estimate-yield --json, the first is ${units[known][0] ?? 'none'}${didYouMean(unit.text, units[known])}`,
      )
    reader.once(`unit ${known} ${unit.text}`, unit, `${known} '${unit.text}' has a row already`)
    reader.once(`serial ${known} ${serial.text}`, serial, `serial number '${serial.text}' stands there already`)
    return [{ kind: known, unit: unit.text, serial: serial.text }]
  })
  reader.finish()
  return serials
}

/**
 * Readings of strings from a table: a column `string`, and columns named as the keys under commissioning.strings.
 *
 * @param strings Ids of the strings that there are.
 * @throws ProjectError with every problem at its line and column.
 */
export function readReadings(table: TableText, strings: readonly string[]): Readonly<Record<string, StringReading>> {
  const reader = new Reader(table)
  const columns = reader.columns(['string'], ['polarity', 'photo', ...Object.keys(READING_COLUMNS)])
  const readings = new Map<string, StringReading>()
  for (const row of reader.rows) {
    const id = row.cell(columns.get('string') ?? -1)
    if (id === undefined) continue
    if (id.text === '') reader.complain(id, 'the string is not named; write its id as size-wire has it: south_s1')
    else if (!strings.includes(id.text))
      reader.complain(
        id,
        `there is no string '${id.text}'; strings of this project: ${strings.length === 0 ? 'none' : strings.join(', ')}${didYouMean(id.text, strings)}`,
      )
    reader.once(`string ${id.text}`, id, `string '${id.text}' has a row already`)
    const reading: { -readonly [Key in keyof StringReading]: StringReading[Key] } = {}
    for (const [name, at] of columns) {
      const cell = row.cell(at)
      if (cell === undefined || cell.text === '' || name === 'string') continue
      if (name === 'photo') reading.photo = cell.text
      else if (name === 'polarity') {
        if (cell.text === 'right' || cell.text === 'reversed') reading.polarity = cell.text
        else reader.complain(cell, `'${cell.text}' is no polarity; allowed: right, reversed`)
      } else if (isNumberKey(name)) {
        const value = reader.number(cell, name)
        if (value !== undefined) reading[name] = value
      }
    }
    readings.set(id.text, reading)
  }
  reader.finish()
  return Object.fromEntries(readings)
}

/** A table with its complaints. */
class Reader {
  readonly rows: readonly TableRow[]
  readonly #file: TableText
  readonly #header: readonly TableCell[]
  readonly #problems: Problem[] = []
  readonly #seen = new Map<string, TableCell>()

  constructor(file: TableText) {
    this.#file = file
    const table = readTable(file.text, MOST_LIST_ROWS)
    this.rows = table?.rows ?? []
    this.#header = table?.header ?? []
    for (const { line, column, message } of table?.problems ?? []) this.complain({ text: '', line, column }, message)
  }

  complain({ line, column, text }: TableCell, message: string): void {
    this.#problems.push({ file: this.#file.name, line, column, length: Math.max(1, text.length), path: '', message })
  }

  /** Places of the columns by name; every one of `needed` has to be there. */
  columns(needed: readonly string[], others: readonly string[]): Map<string, number> {
    const known = [...needed, ...others]
    const found = new Map<string, number>()
    for (const [at, cell] of this.#header.entries()) {
      const name = cell.text.toLowerCase()
      if (!known.includes(name))
        this.complain(cell, `there is no column '${cell.text}'; known: ${known.join(', ')}${didYouMean(name, known)}`)
      else if (found.has(name)) this.complain(cell, `the column ${name} stands there already`)
      else found.set(name, at)
    }
    const lacking = needed.filter((name) => !found.has(name))
    if (lacking.length > 0)
      this.complain(
        this.#header[0] ?? { text: '', line: 1, column: 1 },
        `the table has no column ${lacking.join(', ')}; its first line names the columns: ${known.join(',')}`,
      )
    if (this.#problems.length > 0) this.finish()
    if (this.rows.length === 0) this.complain({ text: '', line: 1, column: 1 }, 'the table has no rows')
    return found
  }

  once(key: string, cell: TableCell, message: string): void {
    const before = this.#seen.get(key)
    if (before === undefined) this.#seen.set(key, cell)
    else if (cell.text !== '') this.complain(cell, `${message} (line ${before.line})`)
  }

  number(cell: TableCell, name: NumberKey): number | undefined {
    const value = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/u.test(cell.text) ? Number(cell.text) : Number.NaN
    const least = name === 'cell_c' ? -50 : 0
    const most = READING_COLUMNS[name]
    if (value >= least && value <= most) return value
    this.complain(cell, `'${cell.text}' is no reading for ${name}; allowed: a number from ${least} to ${most}`)
    return undefined
  }

  /** @throws ProjectError when there was anything to complain about. */
  finish(): void {
    if (this.#problems.length === 0) return
    throw new ProjectError(this.#problems, 2, new Map([[this.#file.name, this.#file.text]]))
  }
}
