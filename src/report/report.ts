import type { Result } from '../worksheet/index.js'
import type { CautionSubject } from './cautions.js'

/** How a cell is to be read; the text renderer turns it into a colour, the other formats leave it out. */
export type Tone = 'good' | 'bad' | 'warn' | 'dim' | 'strong'

/** What stands in a table: a number is formatted by its column, `null` is an empty cell. */
export type Cell = string | number | null | ToneCell

export interface ToneCell {
  readonly value: string | number
  readonly tone: Tone
}

export interface Column {
  readonly heading: string
  /** Printed in the heading: `Energy (kWh)`. */
  readonly unit?: string
  /** Digits after the point of the numbers in this column; 0 when absent. */
  readonly decimals?: number
  /** Numbers stand right and words left unless this says otherwise. */
  readonly align?: 'left' | 'right'
  /** Name in CSV, snake_case with unit; made from heading and unit when absent. */
  readonly key?: string
}

/** A table of a report: columns with their units, and a cell a column in each row. */
export interface TableData {
  readonly columns: readonly Column[]
  readonly rows: readonly (readonly Cell[])[]
  /** A last row set apart from the others, such as a total. Not in CSV. */
  readonly total?: readonly Cell[]
}

export interface Fact {
  readonly label: string
  readonly value: Cell
  readonly unit?: string
  readonly decimals?: number
}

export interface Bar {
  readonly label: string
  /** Not negative. */
  readonly value: number
}

export interface Axis {
  readonly label: string
  readonly unit?: string
  readonly decimals?: number
}

export interface Series {
  readonly name: string
  readonly points: readonly (readonly [x: number, y: number])[]
}

/** A part of a report. Every kind has a form in text and in Markdown. */
export type Section = { readonly heading?: string } & (
  | ({ readonly kind: 'table' } & TableData)
  | { readonly kind: 'facts'; readonly facts: readonly Fact[] }
  | { readonly kind: 'paragraph'; readonly text: string }
  /** Lines that stand as they are, such as a plan in characters. */
  | { readonly kind: 'drawing'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | { readonly kind: 'bars'; readonly bars: readonly Bar[]; readonly unit: string; readonly decimals?: number }
  | { readonly kind: 'plot'; readonly x: Axis; readonly y: Axis; readonly series: readonly Series[] }
)

/** What a subcommand hands back: data only. The renderers for text, Markdown, CSV and JSON take it from there. */
export interface Report {
  readonly title: string
  /** Name of the stage in JSON and for `--use`: `yield`. */
  readonly stage: string
  readonly sections: readonly Section[]
  /** What `--csv` writes; the first table of `sections` when absent. */
  readonly csv?: TableData
  /** Values for JSON (snake_case keys that end in their unit), with their proof. */
  readonly result: Result<unknown>
  readonly cautions?: readonly CautionSubject[]
  /**
   * Options of the run that took the place of what the project states, such as `--codes NEC 2014`. The result then bears another hash than
   * one of the project as it stands, so that nothing takes it for that.
   */
  readonly inPlaceOfProject?: readonly string[]
  /** A command that a person may want to run now; told on stderr. */
  readonly next?: string
}

/** What the renderers need beside the report, filled in by the frame. */
export interface ReportContext {
  /** `gablewatt 0.1.0` */
  readonly tool: string
  readonly project: { readonly title: string; readonly digest: string } | undefined
  /** Turns a path of project.yaml into `file:line:column`; undefined when the place is not in a file. */
  readonly locate: (path: string) => string | undefined
  readonly showWork: boolean
}

export function cellValue(cell: Cell): string | number | null {
  return typeof cell === 'object' && cell !== null ? cell.value : cell
}

export function cellTone(cell: Cell): Tone | undefined {
  return typeof cell === 'object' && cell !== null ? cell.tone : undefined
}

export function columnTitle(column: { readonly heading: string; readonly unit?: string }): string {
  return column.unit === undefined || column.unit === '' ? column.heading : `${column.heading} (${column.unit})`
}

/** The table that `--csv` writes, undefined when the report has none. */
export function csvTable(report: Report): TableData | undefined {
  return report.csv ?? report.sections.find((section) => section.kind === 'table')
}
