const LONGEST = 60

/** A value as it is quoted in a message: short, on one line. */
export function showValue(value: unknown): string {
  if (value === null || value === undefined) return 'nothing'
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object') return 'a map'
  if (typeof value === 'string') return `'${shorten(value)}'`
  return typeof value === 'number' || typeof value === 'boolean' ? String(value) : typeof value
}

/** The kind of a value and the value: `text 'twelve'`, `the number 12`. */
export function showKind(value: unknown): string {
  if (typeof value === 'string') return value === '' ? 'empty text' : `text ${showValue(value)}`
  if (typeof value === 'number') return `the number ${value}`
  return showValue(value)
}

export function shorten(text: string): string {
  return text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 3)}...`
}

/** `a, b, c`; a long list is cut. */
export function listWords(words: readonly string[], most = 14): string {
  return words.length <= most ? words.join(', ') : `${words.slice(0, most).join(', ')}, ... (${words.length} in all)`
}

/** `1 module`, `12 modules`. */
export function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`
}

/** A calculated number as it stands in a message, without the noise of floating point. */
export function showNumber(value: number): string {
  return String(Number(value.toPrecision(6)))
}
