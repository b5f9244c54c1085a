import { mkdirSync, statSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { basename, dirname, join, resolve } from 'node:path'
import {
  digest,
  FleetError,
  openJournal,
  readBaseline,
  readShard,
  singleRunner,
  workerPool,
  type Journal,
  type Runner,
} from '../../fleet/index.js'
import { FileError, UsageError } from '../errors.js'
import { errnoWords } from '../output/errno.js'
import { cleanLine } from '../output/sanitise.js'
import { writeErr } from '../streams.js'
import type { CommandContext } from '../subcommand.js'
import type { Wanted } from './fleet-collect.js'
import { FLEET_STAGES } from './fleet-stages.js'
import { FILE_KINDS, workOut, type FleetFileKind, type FleetPlan } from './fleet-work.js'
import { workerScript, type FleetWorkerData } from './fleet-worker.js'

/** What the person asked for. */
export interface FleetOptions {
  readonly table?: string
  readonly stages?: string
  readonly set: readonly string[]
  readonly allowOutside?: boolean
  readonly jobs?: number
  readonly shard?: string
  readonly failFast?: boolean
  readonly resume?: boolean
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

/** Fewer projects are done before a worker has started. */
const FEW = 8

/**
 * @throws UsageError when options do not go together.
 */
export function checkOptions(options: FleetOptions): void {
  const needs = (option: string, given: unknown, other: string, there: unknown): void => {
    if (given !== undefined && there === undefined) throw new UsageError(`${option} goes with ${other}`)
  }
  needs('--write', options.write, '--out-dir', options.outDir)
  needs('--tolerance', options.tolerance, '--baseline', options.baseline)
  needs('--update-baseline', options.updateBaseline, '--baseline', options.baseline)
}

/**
 * All that decides what is done with every project.
 *
 * @throws UsageError when a stage or a kind of file has another name.
 */
export function planOf(tool: string, options: FleetOptions): FleetPlan {
  const stages =
    options.stages === undefined
      ? undefined
      : names(
          '--stages',
          options.stages,
          FLEET_STAGES.map(({ name }) => name),
        )
  return {
    tool,
    stages,
    allowOutside: options.allowOutside === true,
    outputFolder: options.outDir === undefined ? undefined : resolve(options.outDir),
    write: names('--write', options.write ?? 'results', FILE_KINDS) as FleetFileKind[],
    force: options.force === true || options.resume === true,
  }
}

function names(option: string, text: string, known: readonly string[]): string[] {
  const list = text.split(',').map((name) => name.trim())
  const other = list.find((name) => !known.includes(name))
  if (other !== undefined) throw new UsageError(`${option}: there is no '${other}'; there are ${known.join(', ')}`)
  return [...new Set(list)]
}

/**
 * Worker threads, or this thread alone for one job or a few projects.
 *
 * @param count Number of projects.
 */
export function runnerOf(options: FleetOptions, plan: FleetPlan, count: number): Runner {
  const workers = Math.min(options.jobs ?? (count < FEW ? 1 : availableParallelism()), count)
  const script = workers > 1 ? workerScript() : undefined
  if (script === undefined) return singleRunner((job) => workOut(job, plan))
  const workerData: FleetWorkerData = { gablewattFleet: plan }
  return workerPool({ script, workerData, workers })
}

/**
 * The saved run to compare with.
 *
 * @throws FileError when there is none, unless this run becomes it.
 */
export function baselineOf(options: FleetOptions, tolerancePct: number): Wanted['baseline'] {
  if (options.baseline === undefined) return undefined
  const update = options.updateBaseline === true
  const saved = readBaseline(options.baseline, update)
  if (saved === undefined && !update) {
    throw new FileError(`cannot read ${options.baseline}: no such file (ENOENT); --update-baseline makes it`)
  }
  return { saved: saved ?? new Map(), tolerancePct, update }
}

/**
 * The journal of this run. Without --journal it lies beside --out, in --out-dir, or in the current folder; where it
 * cannot be written, a run that did not ask for it goes on without.
 */
export function journalOf(context: CommandContext, options: FleetOptions, plan: FleetPlan): Journal | undefined {
  const identity = digest([plan.tool, JSON.stringify({ ...plan, force: undefined })])
  const path = options.journal ?? journalPath(context, options, identity)
  if (plan.outputFolder !== undefined) makeFolder(plan.outputFolder)
  const resume = options.resume === true
  if (!resume && options.quiet !== true && (statSync(path, { throwIfNoEntry: false })?.size ?? 0) > 0) {
    writeErr(`begun anew; --resume would have kept what ${cleanLine(path)} says is done\n`)
  }
  try {
    const journal = openJournal({
      path,
      plan: identity,
      resume,
      ...(plan.outputFolder === undefined ? {} : { outputFolder: plan.outputFolder }),
    })
    if (options.quiet !== true && journal.damaged.length > 0) tellDamaged(path, journal.damaged)
    return journal
  } catch (error) {
    if (!(error instanceof FleetError) || resume || options.journal !== undefined) throw error
    context.progress(`without a journal, so that --resume will not be possible: ${error.message}`)
    return undefined
  }
}

function tellDamaged(path: string, lines: readonly number[]): void {
  const first = lines.slice(0, 5).join(', ')
  const more = lines.length > 5 ? ` and ${lines.length - 5} more` : ''
  const which = lines.length === 1 ? `line ${first} is` : `lines ${first}${more} are`
  writeErr(`${cleanLine(path)}: ${which} not as written; what it held is worked out again\n`)
}

function journalPath(context: CommandContext, options: FleetOptions, identity: string): string {
  const shard = options.shard === undefined ? undefined : readShard(options.shard)
  const part = shard === undefined ? '' : `-${shard.part}of${shard.of}`
  if (options.target !== undefined && options.target !== '-' && isFileOrNew(options.target)) {
    return join(dirname(options.target), `.${basename(options.target)}${part}.journal`)
  }
  if (options.outDir !== undefined) return join(options.outDir, `.fleet${part}.journal`)
  const named = [...context.args, options.table ?? ''].map((path) => resolve(path))
  return `.gablewatt-fleet-${digest([identity, ...named, ...options.set]).slice(0, 8)}${part}.journal`
}

/** A device has no place for a journal beside it. */
function isFileOrNew(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isFile() ?? true
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true })
  } catch (error) {
    throw new FileError(`cannot make the folder ${folder}: ${errnoWords(error) ?? String(error)}`, { cause: error })
  }
}
