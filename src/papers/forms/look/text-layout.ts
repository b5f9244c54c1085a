import type { LookFont } from './look-font.js'
import { wrapLines } from './wrap-lines.js'

/** A text in its box, points from the lower left corner of the box. */
export interface TextLayout {
  readonly sizePt: number
  readonly pieces: readonly { readonly text: string; readonly x: number; readonly y: number }[]
  /** Why it does not fit; undefined when it does. */
  readonly trouble: string | undefined
}

/** What a text has to fit into. */
export interface TextBox {
  readonly widthPt: number
  readonly heightPt: number
  /** Kept free on each side. */
  readonly paddingPt: number
  /** 0 left, 1 centre, 2 right. */
  readonly alignment: 0 | 1 | 2
  readonly multiline: boolean
  /** Number of cells that the characters are spread over; undefined when they stand as they come. */
  readonly cells: number | undefined
  /** 0 when the size follows the box. */
  readonly sizePt: number
}

/** Nothing smaller can be read on paper. */
const SMALLEST_PT = 4
/** Largest letters of several lines whose size follows the box. */
const LARGEST_OF_LINES_PT = 12
/** Distance of baselines over height of type. */
const LEADING = 1.15
/** Rounding of coordinates in files. */
const SLACK_PT = 0.01

/** Lays a text into its box as a viewer would. */
export function layText(text: string, font: LookFont, box: TextBox): TextLayout {
  if (box.cells !== undefined) return spread(text, font, box, box.cells)
  return box.multiline ? layLines(text, font, box) : layLine(text, font, box)
}

function layLine(text: string, font: LookFont, box: TextBox): TextLayout {
  const line = text.replaceAll('\n', ' ')
  const roomPt = box.widthPt - 2 * box.paddingPt
  const highest = heightSize(font, box)
  const widest = roomPt / Math.max(font.widthPt(line, 1), 1e-6)
  const sizePt = box.sizePt > 0 ? box.sizePt : Math.max(SMALLEST_PT, roundDown(Math.min(highest, widest)))
  const needPt = font.widthPt(line, sizePt)
  const pieces = [{ text: line, x: startOf(needPt, box), y: middleOf(font, sizePt, box) }]
  const trouble =
    needPt > roomPt + SLACK_PT
      ? `it is ${needPt.toFixed(0)} pt wide at ${sizePt} pt letters, and the box holds ${roomPt.toFixed(0)} pt`
      : tooHigh(font, sizePt, box)
  return { sizePt, pieces, trouble }
}

function layLines(text: string, font: LookFont, box: TextBox): TextLayout {
  const roomPt = box.widthPt - 2 * box.paddingPt
  const at = (sizePt: number): { readonly lines: string[]; readonly fits: boolean } => {
    const lines = wrapLines(text, (line) => font.widthPt(line, sizePt), roomPt)
    const heightPt = ((lines.length - 1) * LEADING + font.ascent + font.descent) * sizePt
    const isNarrow = lines.every((line) => font.widthPt(line, sizePt) <= roomPt + SLACK_PT)
    return { lines, fits: isNarrow && heightPt <= box.heightPt - box.paddingPt + SLACK_PT }
  }
  let sizePt = box.sizePt > 0 ? box.sizePt : LARGEST_OF_LINES_PT
  let laid = at(sizePt)
  while (box.sizePt === 0 && !laid.fits && sizePt > SMALLEST_PT) {
    sizePt -= 0.5
    laid = at(sizePt)
  }
  const top = box.heightPt - box.paddingPt - font.ascent * sizePt
  const pieces = laid.lines.map((line, index) => ({
    text: line,
    x: startOf(font.widthPt(line, sizePt), box),
    y: top - index * LEADING * sizePt,
  }))
  const trouble = laid.fits ? undefined : `its ${laid.lines.length} lines at ${sizePt} pt letters are more than fit`
  return { sizePt, pieces, trouble }
}

/** One character a cell, each in its middle. */
function spread(text: string, font: LookFont, box: TextBox, cells: number): TextLayout {
  const characters = Array.from(text.replaceAll('\n', ' '))
  const cellPt = box.widthPt / cells
  const widest = Math.max(1e-6, ...characters.map((character) => font.widthPt(character, 1)))
  const fitting = Math.min(heightSize(font, box), cellPt / widest)
  const sizePt = box.sizePt > 0 ? box.sizePt : Math.max(SMALLEST_PT, roundDown(fitting))
  const free = Math.max(0, cells - characters.length)
  const first = box.alignment === 2 ? free : box.alignment === 1 ? Math.floor(free / 2) : 0
  const pieces = characters.map((character, index) => ({
    text: character,
    x: (first + index) * cellPt + (cellPt - font.widthPt(character, sizePt)) / 2,
    y: middleOf(font, sizePt, box),
  }))
  const tooWide = widest * sizePt > cellPt + SLACK_PT
  const trouble = tooWide
    ? `its characters at ${sizePt} pt are wider than a cell of ${cellPt.toFixed(1)} pt`
    : tooHigh(font, sizePt, box)
  return { sizePt, pieces, trouble: characters.length > cells ? `it has more than ${cells} characters` : trouble }
}

/** Size at which a line is as high as the box less 2 pt above and below. */
function heightSize(font: LookFont, { heightPt }: TextBox): number {
  return (heightPt - 4) / (font.ascent + font.descent)
}

function tooHigh(font: LookFont, sizePt: number, { heightPt }: TextBox): string | undefined {
  const needPt = (font.ascent + font.descent) * sizePt
  if (needPt <= heightPt + SLACK_PT) return undefined
  return `it is ${needPt.toFixed(1)} pt high at ${sizePt} pt letters, and the box is ${heightPt.toFixed(1)} pt high`
}

function startOf(widthPt: number, box: TextBox): number {
  if (box.alignment === 1) return (box.widthPt - widthPt) / 2
  return box.alignment === 2 ? box.widthPt - box.paddingPt - widthPt : box.paddingPt
}

/** The baseline that puts letters into the middle as the eye sees it: half of what hangs below counts. */
function middleOf(font: LookFont, sizePt: number, { heightPt }: TextBox): number {
  return heightPt / 2 - ((font.ascent - font.descent / 2) / 2) * sizePt
}

/** To tenths of a point, as sizes are written in forms. */
const roundDown = (sizePt: number): number => Math.floor(sizePt * 10 + 1e-9) / 10
