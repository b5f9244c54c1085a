/** Words that loggers write for no value. */
const MISSING = new Set(['', '-', '--', 'na', 'n/a', 'nan', 'null', 'none', 'missing', '#n/a'])

/**
 * Number of a cell.
 *
 * @param delimiter Character between the columns: a comma inside a cell is a decimal comma when columns are not parted by
 * commas, and parts thousands when they are.
 * @returns undefined for a cell that says that there is no value, NaN for one that is no number.
 */
export function parseNumber(text: string, delimiter: string): number | undefined {
  if (MISSING.has(text.toLowerCase())) return undefined
  const plain =
    delimiter === ',' && /^[+-]?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/u.test(text)
      ? text.replaceAll(',', '')
      : delimiter !== ',' && /^[+-]?\d+,\d+$/u.test(text)
        ? text.replace(',', '.')
        : text
  return /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/u.test(plain) ? Number(plain) : Number.NaN
}
