import { linesOf } from './lines.js'

/** Marks between the columns of tables. */
export const DELIMITERS = [',', ';', '\t', '|'] as const

/** A line without what stands in quotes. */
export function outsideQuotes(line: string): string {
  return line.replaceAll(/"[^"]*"/gu, '')
}

/** The mark that a line holds most often outside quotes. */
export function commonestDelimiter(line: string): string {
  const bare = outsideQuotes(line)
  const counts = DELIMITERS.map((each) => bare.split(each).length)
  return DELIMITERS[counts.indexOf(Math.max(...counts))] ?? ','
}

/** Those marks that a line of headings holds outside quotes: with one the table is parted by it, with more nobody knows. */
export function delimitersIn(line: string): string[] {
  const bare = outsideQuotes(line)
  return DELIMITERS.filter((each) => bare.includes(each))
}

/** The first line that is not empty, of a text that arrives in pieces; no more of it is taken than that. */
export function headerOf(chunks: Iterable<string>): string {
  for (const { text } of linesOf(chunks)) if (text.trim() !== '') return text
  return ''
}
