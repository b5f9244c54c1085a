import { MONTH_NAMES } from '../../../values/index.js'
import { unitOfPath } from '../../../project/index.js'
import { formatNumber, roundForMachines } from '../../../report/index.js'
import type { ValueFormat } from './form-mapping-types.generated.js'
import { convert } from './unit-factors.js'

/** A value as a field takes it, or why it cannot be written so, as a clause. */
export type Written = { readonly text: string } | { readonly wrong: string }

/**
 * Writes a single value.
 *
 * @param path Where it comes from; the ending of its last key says the unit.
 */
export function formatValue(value: unknown, format: ValueFormat | undefined, path: string): Written {
  if (format?.date !== undefined) return writeDay(value, format.date)
  if (typeof value === 'number') return writeNumber(value, format ?? {}, path)
  if (format !== undefined) return { wrong: `'format' is for numbers, and the value is ${kindOf(value)}` }
  if (typeof value === 'string') return { text: value }
  if (typeof value === 'boolean') return { text: value ? 'Yes' : 'No' }
  return { wrong: `it is ${kindOf(value)}, not a single value` }
}

function writeNumber(value: number, format: ValueFormat, path: string): Written {
  const segments = path.split('.').map((step) => (/^\d+$/u.test(step) ? Number(step) : step))
  const own = unitOfPath(segments)
  const unit = format.unit ?? own
  if ((format.unit !== undefined || format.with_unit === true) && own === '') {
    return { wrong: `the name of the value says no unit, so that it can be given none` }
  }
  const converted = convert(value, own, unit)
  if (converted === undefined) return { wrong: `it is in ${own}, which cannot be brought to ${unit}` }
  const plain = String(roundForMachines(converted))
  const digits = format.decimals ?? (/e/u.test(plain) ? undefined : (plain.split('.')[1]?.length ?? 0))
  const grouped = digits === undefined ? plain : formatNumber(converted, digits)
  const text = format.thousands === true ? grouped : grouped.replaceAll(',', '')
  return { text: format.with_unit === true ? `${text} ${unit}` : text }
}

function writeDay(value: unknown, way: NonNullable<ValueFormat['date']>): Written {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/u.exec(typeof value === 'string' ? value : '') ?? []
  if (year === undefined || month === undefined || day === undefined) {
    return { wrong: `'format.date' is for days (year-month-day), and the value is ${kindOf(value)}` }
  }
  switch (way) {
    case 'YYYY-MM-DD':
      return { text: `${year}-${month}-${day}` }
    case 'MM/DD/YYYY':
      return { text: `${month}/${day}/${year}` }
    case 'MM/DD/YY':
      return { text: `${month}/${day}/${year.slice(2)}` }
    case 'DD/MM/YYYY':
      return { text: `${day}/${month}/${year}` }
    case 'Month D, YYYY':
      return { text: `${MONTH_NAMES[Number(month) - 1] ?? month} ${Number(day)}, ${year}` }
  }
}

/** The kind of a value in words. */
export function kindOf(value: unknown): string {
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object') return 'a map'
  if (typeof value === 'boolean') return String(value)
  return typeof value === 'string' ? `the text '${value.slice(0, 60)}'` : `the number ${plainText(value)}`
}

/** A single value as it is written in YAML; '' for a list, a map and nothing. */
export function plainText(value: unknown): string {
  if (typeof value === 'string') return value
  return typeof value === 'number' || typeof value === 'boolean' ? String(value) : ''
}
