/** Line in which a place of a text lies, counted from 1. Lines are counted, not cut out, as there may be millions. */
export function lineAt(text: string, at: number): number {
  let line = 1
  for (let end = text.indexOf('\n'); end >= 0 && end < at; end = text.indexOf('\n', end + 1)) line += 1
  return line
}

/** Some lines of a text without their ends, the first and last counted from 1; fewer where it has fewer. */
export function linesFrom(text: string, first: number, last: number): string[] {
  const lines: string[] = []
  let at = 0
  for (let line = 1; line <= last; line += 1) {
    const end = text.indexOf('\n', at)
    if (line >= first)
      lines.push(text.slice(at, end < 0 ? text.length : text[end - 1] === '\r' && end > at ? end - 1 : end))
    if (end < 0) break
    at = end + 1
  }
  return lines
}
