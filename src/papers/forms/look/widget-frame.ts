import type { PDFContext, PDFDict, PDFObject } from '@cantoo/pdf-lib'
import { dictOf, listOf, numberOf, textOf, valueOf, type FormWidget } from '../document/index.js'

/** The box of a widget as its look is drawn: upright, from 0, 0. */
export interface WidgetFrame {
  readonly widthPt: number
  readonly heightPt: number
  readonly borderPt: number
  /** Turns the upright box into the widget's place. */
  readonly matrix: readonly number[]
  /** Operators that draw ground and border. */
  readonly operators: readonly string[]
}

/**
 * The box of a widget with the ground and the border that it asks for; undefined when the form gives it no place.
 *
 * @source ISO 32000-1:2008, 12.5.6.19 (MK), 12.5.4 (BS); from memory. Borders of every style are drawn as plain or
 * dashed lines or as a line below.
 */
export function frameOf({ dict, rect }: FormWidget): WidgetFrame | undefined {
  if (rect === undefined) return undefined
  const [wide, high] = [rect[2] - rect[0], rect[3] - rect[1]]
  if (!(wide > 0.5 && high > 0.5)) return undefined
  const { context } = dict
  const marks = dictOf(dict, 'MK')
  const turn = (((numberOf(marks && valueOf(marks, 'R')) ?? 0) % 360) + 360) % 360
  const [widthPt, heightPt] = turn === 90 || turn === 270 ? [high, wide] : [wide, high]
  const border = colourOf(marks && valueOf(marks, 'BC'), context, ['G', 'RG', 'K'])
  const ground = colourOf(marks && valueOf(marks, 'BG'), context, ['g', 'rg', 'k'])
  const borderPt = border === undefined ? 0 : borderWidth(dict)
  const operators: string[] = []
  if (ground !== undefined) operators.push(`q ${ground} 0 0 ${pt(widthPt)} ${pt(heightPt)} re f Q`)
  if (border !== undefined && borderPt > 0) {
    operators.push(`q ${border} ${pt(borderPt)} w ${borderPath(dict, widthPt, heightPt, borderPt)} S Q`)
  }
  return { widthPt, heightPt, borderPt, matrix: matrixOf(turn, wide, high), operators }
}

/** A number of a content stream. */
export function pt(value: number): string {
  return String(Number(value.toFixed(3)) + 0)
}

function matrixOf(turn: number, wide: number, high: number): number[] {
  if (turn === 90) return [0, 1, -1, 0, wide, 0]
  if (turn === 180) return [-1, 0, 0, -1, wide, high]
  if (turn === 270) return [0, -1, 1, 0, 0, high]
  return [1, 0, 0, 1, 0, 0]
}

function borderWidth(dict: PDFDict): number {
  const style = dictOf(dict, 'BS')
  const width = style === undefined ? listOf(valueOf(dict, 'Border'), dict.context)[2] : valueOf(style, 'W')
  return Math.max(0, Math.min(12, numberOf(width) ?? 1))
}

function borderPath(dict: PDFDict, widthPt: number, heightPt: number, borderPt: number): string {
  const style = dictOf(dict, 'BS')
  const kind = textOf(style && valueOf(style, 'S'))
  const half = borderPt / 2
  if (kind === 'U') return `0 ${pt(half)} m ${pt(widthPt)} ${pt(half)} l`
  const dash = kind === 'D' ? '[3] 0 d ' : ''
  return `${dash}${pt(half)} ${pt(half)} ${pt(widthPt - borderPt)} ${pt(heightPt - borderPt)} re`
}

/** The operator of a colour by its count of parts; an empty list is no colour. */
function colourOf(value: PDFObject | undefined, context: PDFContext, names: readonly string[]): string | undefined {
  const parts = listOf(value, context).map((part) => numberOf(part))
  if (parts.some((part) => part === undefined)) return undefined
  const name = { 1: names[0], 3: names[1], 4: names[2] }[parts.length as 1 | 3 | 4]
  return name === undefined ? undefined : `${parts.map((part) => pt(part ?? 0)).join(' ')} ${name}`
}
