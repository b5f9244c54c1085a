import type { FleetOutcome } from './types.js'
import type { FleetIdentity } from './jsonl.js'
import type { FleetRun } from './fleet-run.js'
import type { Shard } from './shard.js'

/** Which projects there are, and what is done with each. */
export interface FleetRequest {
  /** Project files, patterns and folders; with `table` one template. */
  readonly projects: readonly string[]
  /** A CSV file, or one with another mark between its columns, with a project a row: its headings are paths of the project file, and `id` names the project. */
  readonly table?: string | undefined
  /** Mark between the columns of the table; the one that its headings hold when left out. */
  readonly delimiter?: string | undefined
  /** Whether decimals in the table follow a comma. */
  readonly decimalComma?: boolean | undefined
  /** `path=value` for every project, in the order in which they are applied; they win over a row. */
  readonly overrides?: readonly string[] | undefined
  /** Whether projects may name files outside their own folders. */
  readonly allowOutside?: boolean | undefined
  /** Of `yield`, `wire`, `mounts`, `bom`, `payback`; left out, all that a project has the parts for. */
  readonly stages?: readonly string[] | undefined
  /** Worker threads; as many as processors when left out, and none for a few projects. */
  readonly workers?: number | undefined
  /** The part of the fleet that is worked out. */
  readonly shard?: Shard | undefined
  /** Whether to stop at the first project that fails. */
  readonly failFast?: boolean | undefined
  /** Files for every project, in a folder of its own below this one; `results` when no kind is named. */
  readonly output?: { readonly folder: string; readonly write?: readonly string[] | undefined } | undefined
  /** Figures and columns that the CSV table holds: those that all stages have when left out. */
  readonly columns?: readonly string[] | undefined
  /** Where to write a report for CI in JUnit XML. */
  readonly junit?: string | undefined
  readonly baseline?: BaselineRequest | undefined
  readonly journal?: JournalRequest | undefined
  /** Whether files that exist may be replaced. */
  readonly replace?: boolean | undefined
  /** Name and version that results bear; those of this program when left out. */
  readonly tool?: string | undefined
  /**
   * Whether documents of the projects are opened in a thread with limits of memory and time, as the command line does; in the thread
   * of the project and without limits when left out.
   */
  readonly confined?: boolean | undefined
  /** Whether a defect of the program is told with its stack. */
  readonly showStack?: boolean | undefined
}

/** A saved run to compare with. */
export interface BaselineRequest {
  readonly path: string
  /** Largest move of a number that passes, percent; 0.01 when left out. */
  readonly tolerancePct?: number | undefined
  /** Whether this run is saved in its place. */
  readonly update?: boolean | undefined
}

/** Where finished projects are noted while a run lasts, so that one that was killed can go on. */
export interface JournalRequest {
  /** Left out, it lies beside the file `beside`, in the output folder or in the current one; where it cannot be written
   *  there, the run goes on without. */
  readonly path?: string | undefined
  readonly beside?: string | undefined
  /** Whether to take what an interrupted run finished. */
  readonly resume?: boolean | undefined
  /** Whether to take what another build of the program finished, with a warning. */
  readonly useAnyway?: boolean | undefined
}

/** Who is told how a run goes on. */
export interface FleetListener {
  /** Whether a run that is stopped from now on can be gone on with. */
  readonly resumable?: (isResumable: boolean) => void
  /** All is read and looked at, and nothing worked out yet. */
  readonly begin?: (projects: number, identity: FleetIdentity) => void
  /**
   * A project is done; in the order of the fleet.
   *
   * @param recalled How many of all so far were taken from an interrupted run.
   */
  readonly done?: (outcome: FleetOutcome, recalled: number) => void
  /** All is worked out. When this throws, the journal stays, so that nothing is lost. */
  readonly end?: (run: FleetRun) => void | Promise<void>
  /** Something that a person ought to know, such as `wrote fleet.xml`. */
  readonly note?: (text: string) => void
  /** Something that is of no matter to anybody who does not watch. */
  readonly aside?: (text: string) => void
}
