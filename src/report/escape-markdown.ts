import { cleanLine } from './sanitise.js'

/** A stranger's text on one line of Markdown: it must not become markup, also where it begins the line, and cannot break it. */
export function markdownLine(text: string): string {
  return (
    cleanLine(text)
      .replaceAll(/[\\`*[\]<>|]/gu, '\\$&')
      // Within a word and in a row to write on they stay.
      .replaceAll(/(?<![\p{L}\p{N}])_(?!_)|_(?![\p{L}\p{N}_])/gu, '\\_')
      .replace(/^[#+~-]/u, '\\$&')
      // The number of a list; one with decimals is none, and a mark before a digit would be printed.
      .replace(/^(?<number>\d+)(?<mark>[.)])(?=\s|$)/u, '$<number>\\$<mark>')
  )
}
