import type { LineValues } from '../materials/index.js'

/** One project of a fleet: a file, or a template with the values of a row of the table. */
export interface FleetJob {
  /** Place in the whole fleet, 0 first; a shard keeps the numbers of the whole. */
  readonly index: number
  /** Unique in the fleet; names the folder of its files and its entry in a baseline. */
  readonly name: string
  /** Project file or template. */
  readonly path: string
  /** `path=value`, in the order in which they are applied. */
  readonly overrides: readonly string[]
  /** Where the values of a row stand; undefined for a project file. */
  readonly row?: TableRow
  /** Texts of the person's own columns that are not empty, by heading. */
  readonly extra?: Readonly<Record<string, string>>
  /** What makes the row no project, found before it was tried. */
  readonly problems?: readonly FleetProblem[]
}

export interface TableRow {
  readonly file: string
  readonly line: number
  readonly cells: readonly TableCell[]
}

/** A cell that is not empty. */
export interface TableCell {
  /** Heading of its column: a path into the project file. */
  readonly key: string
  readonly line: number
  /** Character at which the cell begins, counted from 1. */
  readonly column: number
}

/** Something that a house needs bought. */
export type FleetItem = Pick<LineValues, 'item' | 'name' | 'group' | 'quantity' | 'unit'>

/** What keeps a project from being worked out. */
export interface FleetProblem {
  /** `customers.csv:7:31`, or a place in the project file. */
  readonly place: string
  /** Path into the project file, or '' when it is the file or the row as such. */
  readonly key: string
  readonly message: string
}

export interface FleetFinding {
  readonly stage: string
  readonly severity: 'error' | 'warning' | 'note'
  readonly id: string
  /** Place and path, or the path alone. */
  readonly where: string
  readonly message: string
}

/**
 * `failed`: a check of the design fails; `invalid`: not a usable project; `unreadable`: a file of it cannot be read or
 * written; `defect`: the program is to blame.
 */
export type FleetStatus = 'ok' | 'failed' | 'invalid' | 'unreadable' | 'defect'

/** A figure that is compared from run to run. */
export type Figure = number | string | boolean | null

/** Dotted names of a stage's values, such as `annual.ac_kwh`. */
export type Figures = Readonly<Record<string, Figure>>

/** All that is kept of a project: small, so that the whole result never has to be in memory. */
export interface FleetOutcome {
  readonly index: number
  readonly name: string
  /** `customers.csv:7`, or the project file. */
  readonly from: string
  readonly title: string | null
  readonly digest: string | null
  /** Texts of the person's own columns, by heading. */
  readonly extra: Readonly<Record<string, string>>
  readonly status: FleetStatus
  readonly problems: readonly FleetProblem[]
  readonly stages: Readonly<Record<string, Figures>>
  readonly findings: readonly FleetFinding[]
  /** Files written for it, relative to the output folder. */
  readonly files: readonly string[]
  /** What it needs bought, where a price list of the whole fleet is wanted; not part of any line. */
  readonly items?: readonly FleetItem[]
  /** Stamps of the files that it was made from, taken when they were read, with paths of this machine; not part of any output. */
  readonly inputs: readonly string[]
}

/** 0: all is well; 1: a check fails; 2: a project is not usable; 3: a file is not; 70: a defect of the program. */
export type ExitOfFleet = 0 | 1 | 2 | 3 | 70

/** Exit code of a run that holds projects of this status, as a run of one alone would give. */
export const EXIT_OF_STATUS: Readonly<Record<FleetStatus, ExitOfFleet>> = {
  ok: 0,
  failed: 1,
  invalid: 2,
  unreadable: 3,
  defect: 70,
}
