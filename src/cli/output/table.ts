import {
  type Cell,
  cellTone,
  cellValue,
  cleanLine,
  type Column,
  columnTitle,
  formatNumber,
  type TableData,
} from '../../report/index.js'
import type { Style } from './style.js'
import { displayWidth, hang, wrapText } from './wrap.js'

const GAP = 2
const NARROWEST_TEXT = 10
/**
 * Lines of a table: a rule under the headings and no boxes, numbers right. Words wrap so that it fits the width; where
 * not even that fits, each row becomes a block of `heading: value` lines.
 */
export function renderTable(table: TableData, style: Style): string[] {
  const rows = table.rows.map((row) => texts(row, table.columns))
  const total = table.total === undefined ? undefined : texts(table.total, table.columns)
  const all = total === undefined ? rows : [...rows, total]
  const widths = fitWidths(table.columns, all, style.width)
  if (widths === undefined) return renderBlocks(table.columns, all, style)

  const rule = widths.map((width) => (style.lines ? '─' : '-').repeat(width))
  const aligned = table.columns.map((column, index) => alignment(column, table.rows, index))
  const draw = (row: readonly string[], tone: (index: number) => Tone | undefined): string[] => {
    const cells = row.map((text, index) => wrapText(text, widths[index] ?? 1))
    return Array.from({ length: Math.max(...cells.map((lines) => lines.length)) }, (_, line) =>
      cells
        .map((lines, index) => padded(lines[line] ?? '', widths[index] ?? 1, aligned[index], tone(index), style))
        .join(' '.repeat(GAP))
        .trimEnd(),
    )
  }
  const headings = table.columns.map((column) => cleanLine(columnTitle(column)))
  return [
    ...draw(headings, () => 'heading'),
    ...draw(rule, () => 'dim'),
    ...rows.flatMap((row, index) => draw(row, (column) => tone(table.rows[index]?.[column]))),
    ...(total === undefined ? [] : [...draw(rule, () => 'dim'), ...draw(total, () => 'strong')]),
  ]
}

type Tone = Parameters<Style['paint']>[0]

function padded(
  text: string,
  width: number,
  align: 'left' | 'right' | undefined,
  tone: Tone | undefined,
  style: Style,
): string {
  const space = ' '.repeat(Math.max(0, width - displayWidth(text)))
  const painted = tone === undefined || text === '' ? text : style.paint(tone, text)
  return align === 'right' ? space + painted : painted + space
}

function tone(cell: Cell | undefined): ReturnType<typeof cellTone> {
  return cell === undefined ? undefined : cellTone(cell)
}

function texts(row: readonly Cell[], columns: readonly Column[]): string[] {
  if (row.length !== columns.length)
    throw new Error(`a table row has ${row.length} cells for ${columns.length} columns`)
  return row.map((cell, index) => cellText(cell, columns[index]?.decimals))
}

/** A cell as people read it. */
export function cellText(cell: Cell, decimals: number | undefined): string {
  const value = cellValue(cell)
  if (value === null) return ''
  return typeof value === 'number' ? formatNumber(value, decimals) : cleanLine(value)
}

function isNumeric(rows: readonly (readonly Cell[])[], index: number): boolean {
  const values = rows.map((row) => cellValue(row[index] ?? null)).filter((value) => value !== null && value !== '')
  return values.length > 0 && values.every((value) => typeof value === 'number')
}

export function alignment(column: Column, rows: readonly (readonly Cell[])[], index: number): 'left' | 'right' {
  return column.align ?? (isNumeric(rows, index) ? 'right' : 'left')
}

/** Widths that fit, taken from the widest columns first; undefined when even the narrowest do not fit. */
function fitWidths(columns: readonly Column[], rows: readonly string[][], available: number): number[] | undefined {
  const widest = (index: number, measure: (text: string) => number): number =>
    Math.max(
      1,
      measure(columnTitle(columns[index] ?? { heading: '' })),
      ...rows.map((row) => measure(row[index] ?? '')),
    )
  const widths = columns.map((_column, index) => widest(index, displayWidth))
  const least = columns.map((_column, index) =>
    Math.min(
      widths[index] ?? 1,
      Math.max(widest(index, longestWord), 3),
      Math.max(NARROWEST_TEXT, longestNumber(rows, index)),
    ),
  )
  const room = available - GAP * (columns.length - 1)
  let excess = widths.reduce((sum, width) => sum + width, 0) - room
  while (excess > 0) {
    const candidates = widths.map((width, index) => (width > (least[index] ?? 1) ? width : 0))
    const largest = Math.max(...candidates)
    if (largest === 0) return undefined
    const index = candidates.indexOf(largest)
    widths[index] = largest - 1
    excess -= 1
  }
  return widths
}

function longestWord(text: string): number {
  return Math.max(0, ...text.split(' ').map(displayWidth))
}

/** Numbers are never broken over lines. */
function longestNumber(rows: readonly string[][], index: number): number {
  return Math.max(0, ...rows.map((row) => (/^-?[\d,.]+$/u.test(row[index] ?? '') ? (row[index]?.length ?? 0) : 0)))
}

function renderBlocks(columns: readonly Column[], rows: readonly string[][], style: Style): string[] {
  return rows.flatMap((row, index) => [
    ...(index === 0 ? [] : ['']),
    ...row.flatMap((text, column) =>
      hang(`${cleanLine(columnTitle(columns[column] ?? { heading: '' }))}: `, text, style.width),
    ),
  ])
}
