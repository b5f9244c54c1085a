/** A line of the code and a line of the value: what an ASCII DXF file is made of. */
export type Pair = readonly [code: number, value: string | number]

/** Group codes whose values are whole numbers. @source public DXF reference of its maker, "Group code value types" (secondary) */
const isWhole = (code: number): boolean =>
  (code >= 60 && code <= 99) ||
  (code >= 170 && code <= 179) ||
  (code >= 270 && code <= 299) ||
  (code >= 370 && code <= 389) ||
  (code >= 400 && code <= 409)

/** Pairs as a file, in ASCII with line feeds. */
export function writePairs(pairs: readonly Pair[]): string {
  return `${pairs.map(([code, value]) => `${String(code).padStart(3)}\n${valueText(code, value)}`).join('\n')}\n`
}

function valueText(code: number, value: string | number): string {
  if (typeof value === 'string') return value
  return isWhole(code) ? String(Math.round(value)) : realText(value)
}

/** Six decimals at most, a point always, no minus zero. */
export function realText(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a DXF file cannot hold ${value}`)
  const rounded = Math.round(value * 1e6) / 1e6 + 0
  const text = rounded.toFixed(6).replace(/0+$/u, '')
  return text.endsWith('.') ? `${text}0` : text
}

/**
 * A text as a line of a TEXT entity that shows it as it is: no code of the format in it is taken for one.
 * Percent signs that stand together, carets, backslashes that begin a code, and all but ASCII are written by their codes.
 */
export function dxfText(text: string): string {
  const plain = text
    .replaceAll(/\\(?=[UuMm]\+)/gu, '\\U+005C')
    .replaceAll(/%{2,}/gu, (run) => '%%%'.repeat(run.length))
    .replaceAll('^', '^ ')
    .replaceAll(/(?<!%)[\u00b0\u00b1\u2300]/gu, (sign) => SIGNS[sign] ?? sign)
  return coded(plain)
}

/** Signs that have codes of their own. */
const SIGNS: Readonly<Record<string, string>> = { '°': '%%d', '±': '%%p', '⌀': '%%c' }

/** A text of a dimension, which takes codes of its own. */
export function dxfFormatted(text: string): string {
  const plain = text.replaceAll(/[\\{}]/gu, (sign) => `\\${sign}`).replaceAll('^', '^ ')
  return coded(plain)
}

/** Characters beyond ASCII by their numbers; control characters as spaces. */
function coded(text: string): string {
  return Array.from({ length: text.length }, (_, index) => {
    const unit = text.charCodeAt(index)
    if (unit < 0x20 || unit === 0x7f) return ' '
    return unit < 0x7f ? text.charAt(index) : `\\U+${unit.toString(16).toUpperCase().padStart(4, '0')}`
  }).join('')
}
