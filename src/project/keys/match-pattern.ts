/**
 * How well a pattern of a table fits a key: the number of letters that it names, undefined when it does not fit.
 *
 * @param pattern Segments where `*` stands for anything in one; the last may be `**`, for all that lies below.
 */
export function fitOf(pattern: readonly string[], key: readonly string[]): number | undefined {
  const isOpen = pattern.at(-1) === '**'
  const named = isOpen ? pattern.slice(0, -1) : pattern
  if (isOpen ? key.length <= named.length : key.length !== named.length) return undefined
  let letters = 0
  for (const [i, part] of named.entries()) {
    const segment = key[i] ?? ''
    if (!segmentFits(part, segment)) return undefined
    // A segment named in full counts for more than any that is named in part, and the key itself most.
    const full = i === key.length - 1 ? 250 : 100
    letters += part === segment && part !== '*' ? full : part.replaceAll('*', '').length + (part === '*' ? 0 : 1)
  }
  return letters
}

function segmentFits(part: string, segment: string): boolean {
  if (part === '*' || part === segment) return true
  const [first = '', ...rest] = part.split('*')
  if (rest.length === 0 || !segment.startsWith(first)) return false
  let at = first.length
  for (const [i, piece] of rest.entries()) {
    const found = i === rest.length - 1 ? segment.length - piece.length : segment.indexOf(piece, at)
    if (found < at || !segment.startsWith(piece, found)) return false
    at = found + piece.length
  }
  return true
}

/** The entry of a table whose pattern names most of a key; the later of two that name as much. */
export function bestFit<Entry extends readonly [pattern: string, ...rest: unknown[]]>(
  table: readonly Entry[],
  key: readonly string[],
): Entry | undefined {
  let best: Entry | undefined
  let most = -1
  for (const entry of table) {
    const fit = fitOf(entry[0].split('.'), key)
    if (fit !== undefined && fit >= most) [best, most] = [entry, fit]
  }
  return best
}
