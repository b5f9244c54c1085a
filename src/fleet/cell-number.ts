/** A number of a cell as the project file writes it, or what is wrong with it. */
export type CellNumber = { readonly text: string } | { readonly trouble: string }

/** Reads a cell where a number of the project stands; what is no number at all is left to the check of the project. */
export function cellNumber(text: string, decimalComma: boolean): CellNumber {
  const trimmed = text.trim()
  const looksLikeNumber = /^[+-]?[\d.,]*\d[\d.,]*(?:[eE][+-]?\d+)?$/u.test(trimmed)
  if (!looksLikeNumber) return { text }
  const [points, commas] = [trimmed.split('.').length - 1, trimmed.split(',').length - 1]
  if (points + commas > 1) {
    const mark = decimalComma ? "a ','" : "a '.'"
    return { trouble: `'${trimmed}': write the number with ${mark} before its decimals and no mark between thousands` }
  }
  if (decimalComma && points > 0) {
    return { trouble: `'${trimmed}' has a point, and --decimal-comma says that decimals follow a comma` }
  }
  if (commas === 0) return { text }
  if (decimalComma) return { text: trimmed.replace(',', '.') }
  return {
    trouble: `'${trimmed}' has a comma; with --decimal-comma it is ${trimmed.replace(',', '.')}, and thousands have no mark`,
  }
}
