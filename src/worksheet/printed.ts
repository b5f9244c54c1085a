/** A number that must never reach output. Always a defect of ours: stages throw StageError long before. */
export function finite(value: number): number {
  if (!Number.isFinite(value)) throw new Error(`a number in the output is ${value}`)
  return value
}

/**
 * A number inside a formula: up to `digits` significant ones, no separators, no needless zeros: `0.00125`, `1234.5`.
 *
 * @throws Error when the value is not finite.
 */
export function formatSignificant(value: number, digits = 6): string {
  const rounded = Number(finite(value).toPrecision(digits))
  return rounded === 0 ? '0' : String(rounded)
}

/** A number or a name with its unit: `13.3875 A`. */
export function formatQuantity(value: number | string, unit: string): string {
  const text = typeof value === 'number' ? formatSignificant(value) : value
  return unit === '' ? text : `${text} ${unit}`
}
