import { existsSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { join } from 'node:path'
import { checkTarget, writeWhole } from '../files/index.js'
import { BUILD } from '../seal/index.js'
import { readBaseline, writeBaseline } from './baseline.js'
import { FleetCollection, type BaselineOfRun } from './collect.js'
import type { Move } from './compare-baseline.js'
import { chosenColumns, missingFigures, type FleetColumn } from './fleet-columns.js'
import { FleetError } from './fleet-error.js'
import { digest } from './digest.js'
import { fleetReport } from './fleet-report.js'
import type { BaselineRequest, FleetListener, FleetRequest } from './fleet-request.js'
import type { FleetRun } from './fleet-run.js'
import type { Journal } from './journal.js'
import { endJournal, journalOf } from './journal-of-run.js'
import type { FleetIdentity } from './jsonl.js'
import { junitXml } from './junit.js'
import { listJobs, type JobList } from './list-jobs.js'
import { planOf, type FleetPlan } from './plan.js'
import { PRICE_LIST_FILE } from './price-items.js'
import { runInOrder, type Runner } from './run-in-order.js'
import { EXIT_OF_STATUS } from './types.js'
import { workOut } from './work-out.js'
import { workerScript, type FleetWorkerData } from './worker.js'
import { singleRunner, workerPool } from './worker-pool.js'

const DEFAULT_TOLERANCE_PCT = 0.01
/** Fewer projects are done before a worker has started. */
const FEW = 8

/**
 * Works many projects out, each as `runHouse` does, and puts together what they came to. A project that cannot be worked
 * out stands in the result and stops no other.
 *
 * @throws FleetError when the fleet as such cannot be run: a table, a pattern, a baseline or a journal is not usable.
 * @throws FileError when a file of the whole fleet cannot be written.
 */
export async function runFleet(request: FleetRequest, listener: FleetListener = {}): Promise<FleetRun> {
  const { projects, table, overrides = [], shard, junit, replace = false } = request
  const { delimiter, decimalComma } = request
  const list = listJobs({ projects, table, overrides, shard, form: { delimiter, decimalComma } })
  const plan = planOf(request)
  if (list.delimiter !== undefined && list.delimiter !== ',') {
    const mark = list.delimiter === '\t' ? 'tabs' : `'${list.delimiter}'`
    listener.note?.(
      `${table}: columns are parted by ${mark}, decimals by a ${decimalComma === true ? 'comma' : 'point'}`,
    )
  }
  const columns = request.columns === undefined ? undefined : chosenColumns(request.columns, list.extra, plan.stages)
  const baseline = baselineOf(request.baseline)
  if (junit !== undefined) checkTarget(junit, replace)
  const priceList = priceListOf(plan, request)
  const identity = identityOfFleet(plan, list)
  listener.begin?.(list.count, identity)
  const collection = new FleetCollection({ junit: junit !== undefined, baseline, figures: figuresIn(columns) })
  const journal = journalOf(request, plan, listener)
  listener.resumable?.(journal !== undefined)
  const recalled = await workThrough({ request, listener, list, plan, journal, collection })
  const moves = baseline === undefined ? undefined : collection.moves(list.names, (shard?.part ?? 1) === 1)
  const { rows, worst } = collection
  const left = list.count - rows.length
  const part = shard === undefined ? '' : `, part ${shard.part} of ${shard.of}`
  const title = `Fleet: ${table ?? projects.join(', ')}${part}`
  const tolerancePct = baseline?.tolerancePct ?? DEFAULT_TOLERANCE_PCT
  const run: FleetRun = {
    projects: rows,
    report: fleetReport(collection, {
      title,
      recalled,
      left,
      moves,
      tolerancePct,
      extra: list.extra,
      columns,
      savedBy: baseline?.otherBuild,
    }),
    worst,
    moves,
    hasMoved: baseline?.update !== true && (moves ?? []).some(({ over }) => over),
  }
  await listener.end?.(run)
  for (const text of missingFigures(columns ?? [], rows, collection.seen)) listener.note?.(text)
  writeSideFiles(
    request,
    { collection, moves, baseline, tool: plan.tool, priceList: left > 0 ? undefined : priceList },
    listener,
  )
  endJournal(journal, left > 0 || worst > EXIT_OF_STATUS.invalid, listener)
  return run
}

function identityOfFleet({ tool, stages }: FleetPlan, { contents, names }: JobList): FleetIdentity {
  const fleet = digest([BUILD, tool, JSON.stringify(stages ?? null), contents])
  return { tool, fleet, rows: names.size }
}

function figuresIn(columns: readonly FleetColumn[] | undefined): ReadonlySet<string> | undefined {
  return columns && new Set(columns.flatMap(({ figure }) => figure ?? []))
}

/** @throws FleetError when there is none, unless this run becomes it. */
function baselineOf(wish: BaselineRequest | undefined): BaselineOfRun | undefined {
  if (wish === undefined) return undefined
  const { path, tolerancePct = DEFAULT_TOLERANCE_PCT, update = false } = wish
  const saved = readBaseline(path, update)
  if (saved === undefined && !update) {
    throw new FleetError(`cannot read ${path}: no such file (ENOENT); --update-baseline makes it`, 3)
  }
  const { projects = new Map(), otherBuild } = saved ?? {}
  return { path, saved: projects, otherBuild, tolerancePct, update }
}

interface Work {
  readonly request: FleetRequest
  readonly listener: FleetListener
  readonly list: JobList
  readonly plan: FleetPlan
  readonly journal: Journal | undefined
  readonly collection: FleetCollection
}

/** @returns How many projects were taken from an interrupted run. */
async function workThrough({ request, listener, list, plan, journal, collection }: Work): Promise<number> {
  let recalled = 0
  try {
    const outcomes = runInOrder(list.jobs(), runnerOf(request, plan, list.count), {
      recall: (job) => {
        const outcome = journal?.recall(job)
        if (outcome !== undefined) recalled += 1
        return outcome
      },
      done: (job, outcome) => journal?.add(job, outcome),
    })
    for await (const outcome of outcomes) {
      collection.add(outcome)
      listener.done?.(outcome, recalled)
      if (request.failFast === true && outcome.status !== 'ok') break
    }
  } finally {
    journal?.close()
  }
  return recalled
}

/** Worker threads, or this thread alone for one job or a few projects. */
function runnerOf({ workers: wished }: FleetRequest, plan: FleetPlan, count: number): Runner {
  const workers = Math.min(wished ?? (count < FEW ? 1 : availableParallelism()), count)
  const script = workers > 1 ? workerScript() : undefined
  if (script === undefined) return singleRunner((job) => workOut(job, plan))
  const workerData: FleetWorkerData = { gablewattFleet: plan }
  return workerPool({ script, workerData, workers })
}

interface Made {
  readonly collection: FleetCollection
  readonly moves: readonly Move[] | undefined
  readonly baseline: BaselineOfRun | undefined
  readonly tool: string
  /** Where the price list of the whole fleet goes. */
  readonly priceList: { readonly path: string; readonly force: boolean } | undefined
}

/** @throws FleetError when it cannot be made, FileError when it is there already. */
function priceListOf(plan: FleetPlan, { shard }: FleetRequest): Made['priceList'] {
  if (plan.outputFolder === undefined || !plan.write.includes('price-list')) return undefined
  if (shard !== undefined) {
    throw new FleetError('--write price-list is one list for the whole fleet; leave --shard out', 2)
  }
  const path = join(plan.outputFolder, PRICE_LIST_FILE)
  if (existsSync(plan.outputFolder)) checkTarget(path, plan.force)
  return { path, force: plan.force }
}

function writeSideFiles(
  { junit, replace = false }: FleetRequest,
  { collection, moves, baseline, priceList, tool }: Made,
  { note }: FleetListener,
): void {
  const { items } = collection
  const write = (path: string, content: string, force: boolean): void => {
    writeWhole(path, content, force)
    note?.(`wrote ${path}`)
  }
  if (priceList !== undefined && items.count > 0) {
    write(priceList.path, items.text(), priceList.force)
    note?.(`${items.count} items of ${items.houses} houses, to be filled in once`)
  }
  if (junit !== undefined) {
    write(junit, junitXml(collection.junit, baseline?.update === true ? [] : (moves ?? [])), replace)
  }
  if (baseline?.update === true) write(baseline.path, writeBaseline(collection.figures, tool), true)
}
