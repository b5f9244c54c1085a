import CliTable from 'cli-table3'
import { cellTone, cleanLine, columnTitle, type Cell, type Column, type TableData } from '../../report/index.js'
import { alignment, cellText } from './cells.js'
import { withRoundedSums } from './rounded-sums.js'
import type { Style } from './style.js'
import { displayWidth, hang, wrapText } from './wrap.js'

const GAP = 2
const NARROWEST_TEXT = 10
/** The drawer compares each cell with all before it, so that a thousand rows at once would take it most of a second. */
const DRAWN_TOGETHER = 16
const NO_BORDER = Object.fromEntries(
  ['top', 'bottom', 'left', 'right', 'mid'].flatMap((side) =>
    ['', '-mid', '-left', '-right'].map((end) => [side + end, '']),
  ),
)

/**
 * Lines of a table: a rule under the headings and no boxes, numbers right. Words wrap so that it fits the width; where
 * not even that fits, each row becomes a block of `heading: value` lines.
 */
export function renderTable(data: TableData, style: Style): string[] {
  const table = withRoundedSums(data)
  const rows = table.rows.map((row) => texts(row, table.columns))
  const total = table.total === undefined ? undefined : texts(table.total, table.columns)
  const all = total === undefined ? rows : [...rows, total]
  const widths = fitWidths(table.columns, all, style.width)
  if (widths === undefined) return renderBlocks(table.columns, all, style)

  const paint = (row: readonly string[], toneOf: (index: number) => Tone | undefined): string[] =>
    row.map((text, index) => paintLines(wrapText(text, widths[index] ?? 1), toneOf(index), style))
  const rule = paint(
    widths.map((width) => (style.lines ? '─' : '-').repeat(width)),
    () => 'dim',
  )
  const headings = table.columns.map((column) => cleanLine(columnTitle(column)))
  const body = rows.map((row, index) => paint(row, (column) => tone(table.rows[index]?.[column])))
  const aligned = table.columns.map((column, index) => alignment(column, table.rows, index))
  return [
    ...drawRows([paint(headings, () => 'heading'), rule], aligned),
    ...Array.from({ length: Math.ceil(body.length / DRAWN_TOGETHER) }, (_, part) =>
      // The rule gives the columns of each part the same widths.
      drawRows([rule, ...body.slice(part * DRAWN_TOGETHER, (part + 1) * DRAWN_TOGETHER)], aligned).slice(1),
    ).flat(),
    ...(total === undefined ? [] : drawRows([rule, paint(total, () => 'strong')], aligned)),
  ]
}

/** The cells of each row are broken into lines already: told no widths, the drawer cuts none. */
function drawRows(rows: readonly string[][], alignments: ('left' | 'right')[]): string[] {
  const drawn = new CliTable({
    chars: { ...NO_BORDER, middle: ' '.repeat(GAP) },
    style: { 'padding-left': 0, 'padding-right': 0, head: [], border: [], compact: true },
    colAligns: alignments,
  })
  drawn.push(...rows)
  return drawn
    .toString()
    .split('\n')
    .map((line) => line.trimEnd())
}

type Tone = Parameters<Style['paint']>[0]

function paintLines(lines: readonly string[], tone: Tone | undefined, style: Style): string {
  return lines.map((line) => (tone === undefined || line === '' ? line : style.paint(tone, line))).join('\n')
}

function tone(cell: Cell | undefined): ReturnType<typeof cellTone> {
  return cell === undefined ? undefined : cellTone(cell)
}

function texts(row: readonly Cell[], columns: readonly Column[]): string[] {
  if (row.length !== columns.length)
    throw new Error(`a table row has ${row.length} cells for ${columns.length} columns`)
  return row.map((cell, index) => cellText(cell, columns[index]?.decimals))
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
