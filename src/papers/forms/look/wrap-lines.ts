/**
 * Breaks a text at its line ends, and at spaces where a line is too wide; a word that is wider than a line is cut.
 *
 * @param widthOf Width of a line, in the unit of `room`.
 */
export function wrapLines(text: string, widthOf: (line: string) => number, room: number): string[] {
  return text.split('\n').flatMap((paragraph) => wrapParagraph(paragraph, widthOf, room))
}

function wrapParagraph(paragraph: string, widthOf: (line: string) => number, room: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of paragraph.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`
    if (widthOf(longer) <= room) {
      line = longer
      continue
    }
    if (line !== '') lines.push(line)
    line = ''
    for (const character of word) {
      if (line !== '' && widthOf(line + character) > room) {
        lines.push(line)
        line = ''
      }
      line += character
    }
  }
  return [...lines, line]
}
