import {
  jsonLine,
  junitXml,
  readShard,
  readTolerance,
  runInOrder,
  writeBaseline,
  type Journal,
  type Move,
} from '../../fleet/index.js'
import { FileError, UsageError } from '../errors.js'
import { EXIT } from '../exit-codes.js'
import { checkTarget, cleanLine, writeWhole } from '../output/index.js'
import { writeErr } from '../streams.js'
import type { CommandContext, CommandOutcome } from '../subcommand.js'
import { FleetCollection, type Wanted } from './fleet-collect.js'
import { deliverReport, tellMoves, tellProblems } from './fleet-deliver.js'
import { listJobs, type JobList } from './fleet-jobs.js'
import { growingFile, makeBar, STDOUT, type LineTarget } from './fleet-output.js'
import { fleetReport } from './fleet-report.js'
import { baselineOf, checkOptions, journalOf, planOf, runnerOf, type FleetOptions } from './fleet-setup.js'
import type { FleetPlan } from './fleet-work.js'

/** Runs a fleet from its options to its last line of output. */
export async function runFleet(context: CommandContext, options: FleetOptions): Promise<CommandOutcome> {
  checkOptions(options)
  const shard = options.shard === undefined ? undefined : readShard(options.shard)
  const tolerancePct = readTolerance(options.tolerance ?? '0.01%')
  const list = listJobs({ projects: context.args, table: options.table, set: options.set, shard })
  const plan = planOf(context.tool, options)
  const baseline = baselineOf(options, tolerancePct)
  const lines = openTargets(options)
  const collection = new FleetCollection({ junit: options.junit !== undefined, baseline })
  const { recalled, journal } = await workThrough({ context, options, list, plan, lines, collection })
  const moves = baseline === undefined ? undefined : collection.moves(list.names, (shard?.part ?? 1) === 1)
  const left = list.count - collection.rows.length
  const part = shard === undefined ? '' : `, part ${shard.part} of ${shard.of}`
  const title = `Fleet: ${options.table ?? context.args.join(', ')}${part}`
  const report = fleetReport(collection, { title, recalled, left, moves, tolerancePct })
  if (lines === undefined) await deliverReport(report, context.tool, options)
  if (moves !== undefined && (lines !== undefined || options.csv === true))
    await tellMoves(report, context.tool, options)
  lines?.finish()
  writeSideFiles(options, collection, moves, baseline)
  endJournal(journal, left > 0 || collection.worst > EXIT.usage, options)
  return outcomeOf(collection, moves, baseline)
}

/** Looks before the work begins whether its results can be put where they shall go. */
function openTargets({ jsonl, target, junit, force = false }: FleetOptions): LineTarget | undefined {
  const path = target === '-' ? undefined : target
  for (const file of [path, junit]) if (file !== undefined) checkTarget(file, force)
  if (jsonl !== true) return undefined
  return path === undefined ? STDOUT : growingFile(path, force)
}

interface Work {
  readonly context: CommandContext
  readonly options: FleetOptions
  readonly list: JobList
  readonly plan: FleetPlan
  readonly lines: LineTarget | undefined
  readonly collection: FleetCollection
}

async function workThrough({ context, options, list, plan, lines, collection }: Work) {
  const bar = makeBar(list.count, options.quiet === true || (lines === STDOUT && process.stdout.isTTY))
  const journal = journalOf(context, options, plan)
  let recalled = 0
  try {
    const outcomes = runInOrder(list.jobs(), runnerOf(options, plan, list.count), {
      recall: (job) => {
        const outcome = journal?.recall(job)
        if (outcome !== undefined) recalled += 1
        return outcome
      },
      done: (job, outcome) => journal?.add(job, outcome),
    })
    for await (const outcome of outcomes) {
      collection.add(outcome)
      lines?.write(jsonLine(outcome))
      if (lines !== undefined || options.csv === true) {
        if (outcome.status !== 'ok') bar.clear()
        tellProblems(outcome)
      }
      bar.step(recalled)
      if (options.failFast === true && outcome.status !== 'ok') break
    }
  } catch (error) {
    lines?.abandon()
    throw error
  } finally {
    bar.clear()
    journal?.close()
  }
  return { recalled, journal }
}

function writeSideFiles(
  options: FleetOptions,
  collection: FleetCollection,
  moves: readonly Move[] | undefined,
  baseline: Wanted['baseline'],
): void {
  const wrote = (path: string): void => {
    if (options.quiet !== true) writeErr(`wrote ${cleanLine(path)}\n`)
  }
  if (options.junit !== undefined) {
    writeWhole(
      options.junit,
      junitXml(collection.junit, baseline?.update === true ? [] : (moves ?? [])),
      options.force === true,
    )
    wrote(options.junit)
  }
  if (options.baseline !== undefined && baseline?.update === true) {
    writeWhole(options.baseline, writeBaseline(collection.figures), true)
    wrote(options.baseline)
  }
}

/** A journal is kept as long as something is left to be done. */
function endJournal(journal: Journal | undefined, somethingLeft: boolean, { quiet }: FleetOptions): void {
  if (journal === undefined) return
  if (!somethingLeft || journal.isEmpty()) journal.remove()
  else if (quiet !== true) writeErr('--resume goes on from here without working out again what is done\n')
}

/** The exit code is the worst of all projects; 0 and 1 are the frame's, the others come by an error. */
function outcomeOf(
  collection: FleetCollection,
  moves: readonly Move[] | undefined,
  baseline: Wanted['baseline'],
): CommandOutcome {
  const { worst, rows } = collection
  const count = rows.filter(({ status }) => status !== 'ok' && status !== 'failed').length
  const says = `${count} of ${rows.length} project${rows.length === 1 ? '' : 's'} could not be worked out; the others are done`
  if (worst === EXIT.usage) throw new UsageError(says)
  if (worst === EXIT.file) throw new FileError(says)
  if (worst === EXIT.defect) throw new Error(says)
  const moved = baseline?.update !== true && (moves ?? []).some(({ over }) => over)
  return { document: '', failed: worst === EXIT.checkFailed || moved }
}
