import { plainNumber } from '../layout/index.js'

/** A number with its unit, or a name as it stands; what is not stated has no unit. */
export function amount(value: number | string, unit: string): string {
  if (typeof value === 'string') return unit === '' || value === 'not stated' ? value : `${value} ${unit}`
  const size = Math.abs(value)
  const text = plainNumber(value, size >= 1000 ? 0 : size >= 10 ? 2 : size >= 0.01 || size === 0 ? 4 : 7)
  return unit === '' ? text : `${text} ${unit}`
}
