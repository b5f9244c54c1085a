import { readShard, readTolerance, type FleetRequest } from '../../fleet/index.js'
import { UsageError } from '../errors.js'

/** What the person asked for. */
export interface FleetOptions {
  readonly table?: string
  readonly delimiter?: string
  readonly decimalComma?: boolean
  readonly columns?: string
  readonly stages?: string
  readonly set: readonly string[]
  readonly allowOutside?: boolean
  readonly jobs?: number
  readonly shard?: string
  readonly merge?: boolean
  readonly failFast?: boolean
  readonly resume?: boolean
  readonly useAnyway?: boolean
  readonly journal?: string
  readonly jsonl?: boolean
  readonly json?: boolean
  readonly csv?: boolean
  readonly markdown?: boolean
  readonly junit?: string
  /** `--out` */
  readonly target?: string
  readonly force?: boolean
  readonly outDir?: string
  readonly write?: string
  readonly baseline?: string
  readonly tolerance?: string
  readonly updateBaseline?: boolean
  readonly color: boolean
  readonly quiet?: boolean
}

/** File of `--out`; undefined for stdout. */
export function outFile({ target }: FleetOptions): string | undefined {
  return target === '-' ? undefined : target
}

/**
 * The options as the fleet takes them.
 *
 * @throws UsageError when options do not go together; FleetError when one is badly written.
 */
export function requestOf(projects: readonly string[], tool: string, options: FleetOptions): FleetRequest {
  checkOptions(options)
  const shard = options.shard === undefined ? undefined : readShard(options.shard)
  const tolerancePct = options.tolerance === undefined ? undefined : readTolerance(options.tolerance)
  const { table, delimiter, decimalComma, allowOutside, failFast, junit, baseline, updateBaseline: update } = options
  return {
    projects,
    table,
    delimiter: delimiter === undefined ? undefined : markOf(delimiter),
    decimalComma,
    columns: listed(options.columns),
    overrides: options.set,
    allowOutside,
    stages: listed(options.stages),
    workers: options.jobs,
    shard,
    failFast,
    output: options.outDir === undefined ? undefined : { folder: options.outDir, write: listed(options.write) },
    junit,
    baseline: baseline === undefined ? undefined : { path: baseline, tolerancePct, update },
    journal: { path: options.journal, beside: outFile(options), resume: options.resume, useAnyway: options.useAnyway },
    replace: options.force,
    tool,
    confined: true,
    showStack: (process.env['GABLEWATT_DEBUG'] ?? '') !== '',
  }
}

function checkOptions(options: FleetOptions): void {
  const needs = (option: string, given: unknown, other: string, there: unknown): void => {
    if (given !== undefined && there === undefined) throw new UsageError(`${option} goes with ${other}`)
  }
  needs('--delimiter', options.delimiter, '--table', options.table)
  needs('--decimal-comma', options.decimalComma, '--table', options.table)
  needs('--columns', options.columns, '--csv', options.csv)
  needs('--use-anyway', options.useAnyway, '--resume', options.resume)
  needs('--write', options.write, '--out-dir', options.outDir)
  needs('--tolerance', options.tolerance, '--baseline', options.baseline)
  needs('--update-baseline', options.updateBaseline, '--baseline', options.baseline)
}

const MARKS = new Map([
  ['comma', ','],
  ['semicolon', ';'],
  ['tab', '\t'],
  ['bar', '|'],
])

/** @throws UsageError for any other mark. */
function markOf(text: string): string {
  const mark = MARKS.get(text) ?? [...MARKS.values()].find((one) => one === text)
  if (mark === undefined) throw new UsageError(`--delimiter ${text}: write ${[...MARKS.keys()].join(', ')}`)
  return mark
}

function listed(text: string | undefined): string[] | undefined {
  return text?.split(',').map((name) => name.trim())
}
