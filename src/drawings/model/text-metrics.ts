import { GLYPH_RUNS, UNITS_PER_EM } from './glyph-widths.js'
import { unbroken } from './unbroken.js'

export type Face = 'plain' | 'bold'

/** Parts of the height of type above and below the baseline that the box of a line covers. */
export const ASCENT = 0.78
export const DESCENT = 0.24

/** Height of capitals over height of type. @source DejaVu Sans 2.37: 1493 of 2048 units. */
export const CAP_HEIGHT = 1493 / 2048

/** Distance from baseline to baseline over height of type. */
export const LEADING = 1.22

const WIDTHS: Readonly<Record<Face, ReadonlyMap<number, number>>> = { plain: widthsOf('plain'), bold: widthsOf('bold') }

/**
 * Width of one line of text.
 *
 * @returns points.
 * @throws RangeError when the font lacks a character; `missingGlyphs` tells before.
 */
export function textWidthPt(text: string, sizePt: number, face: Face = 'plain'): number {
  return (unitsOf(text, face) * sizePt) / UNITS_PER_EM
}

/** Width of one line in whole units of the font, so that widths of pieces add up exactly. */
function unitsOf(text: string, face: Face): number {
  const widths = WIDTHS[face]
  let units = 0
  for (const character of text) {
    const width = widths.get(character.codePointAt(0) ?? 0)
    if (width === undefined) throw new RangeError(`the font has no character '${character}'`)
    units += width
  }
  return units
}

/** The characters of a text that the embedded font cannot print, each once. */
export function missingGlyphs(text: string): string[] {
  const missing = Array.from(printed(text)).filter((character) => !WIDTHS.plain.has(character.codePointAt(0) ?? 0))
  return [...new Set(missing)].filter((character) => character !== '\n')
}

/** A text in capitals, letter by letter: one whose capital the font lacks stays as it is, as those of Georgian do. */
export function inCapitals(text: string): string {
  return Array.from(text, (letter) => {
    const capital = letter.toUpperCase()
    return missingGlyphs(capital).length === 0 ? capital : letter
  }).join('')
}

/** A text as it is printed: accents joined with their letters, tabs and odd spaces as spaces, without hyphens that only say where to break. */
export function printed(text: string): string {
  // Nothing of what follows changes such a text, and most are.
  if (/^[\n -~]*$/u.test(text)) return text
  return text
    .normalize('NFC')
    .replaceAll('\u00AD', '')
    .replaceAll(/\r\n?/gu, '\n')
    .replaceAll(/[^\S\n]/gu, ' ')
}

/**
 * Breaks a text into lines that fit a width, at spaces where it can, inside a word where it must. A number keeps its
 * unit beside it where the width holds both.
 *
 * @param widthPt Width of the lines; no limit when undefined.
 */
export function wrapText(text: string, sizePt: number, face: Face, widthPt: number | undefined): string[] {
  return printed(text)
    .split('\n')
    .flatMap((paragraph) => (widthPt === undefined ? [paragraph] : wrapLine(paragraph, sizePt, face, widthPt)))
}

function wrapLine(text: string, sizePt: number, face: Face, widthPt: number): string[] {
  const fits = (units: number): boolean => (units * sizePt) / UNITS_PER_EM <= widthPt
  if (!text.startsWith(' ') && fits(unitsOf(text, face))) return [text]
  const lines: string[] = []
  let line = ''
  let lineUnits = 0
  const space = unitsOf(' ', face)
  const words = unbroken(text).flatMap((each) => (fits(unitsOf(each, face)) ? [each] : each.split(' ')))
  for (const word of words) {
    const units = unitsOf(word, face)
    const longer = line === '' ? units : lineUnits + space + units
    if (fits(longer)) {
      line = line === '' ? word : `${line} ${word}`
      lineUnits = longer
      continue
    }
    if (line !== '') lines.push(line)
    line = ''
    for (const piece of pieces(word, sizePt, face, widthPt)) {
      if (line !== '') lines.push(line)
      line = piece
    }
    lineUnits = unitsOf(line, face)
  }
  return [...lines, line]
}

/** A word cut where it does not fit, after a mark such as `-` or `/` when there is one. */
function pieces(word: string, sizePt: number, face: Face, widthPt: number): string[] {
  const found: string[] = []
  let rest = word
  while (textWidthPt(rest, sizePt, face) > widthPt && rest.length > 1) {
    let count = 1
    while (count < rest.length && textWidthPt(rest.slice(0, count + 1), sizePt, face) <= widthPt) count++
    const mark = Math.max(...['-', '/', '_', '.', ','].map((each) => rest.lastIndexOf(each, count - 1)))
    if (mark > 0) count = mark + 1
    found.push(rest.slice(0, count))
    rest = rest.slice(count)
  }
  return [...found, rest]
}

function widthsOf(face: Face): Map<number, number> {
  const widths = new Map<number, number>()
  for (const run of GLYPH_RUNS) {
    for (const [index, width] of run[face].entries()) if (width > 0) widths.set(run.first + index, width)
  }
  return widths
}
