import { Worker } from 'node:worker_threads'
import { emptyOutcome, type Runner } from './run-in-order.js'
import type { FleetJob, FleetOutcome } from './types.js'

interface Task<Job, Outcome> {
  readonly job: Job
  readonly resolve: (outcome: Outcome) => void
}

export interface PoolOptions {
  /** Address (`file:`, `data:`) of the program of a worker: takes jobs as messages and answers each with its outcome. */
  readonly script: string
  readonly workerData: unknown
  readonly workers: number
  /** Most memory of a worker's old objects, MB. */
  readonly heapMb?: number
}

/**
 * Room for new objects, MB: of all workers together, and the least of one. A worker copies what lives at each collection, which
 * takes a sixth of its time with 24 MB and a twentieth with 128.
 */
const YOUNG_MB = { together: 256, least: 24 }
/**
 * Limit of its old objects, MB, far above what is used (about 40): with a near one the engine collects them so often that
 * it throws compiled code away.
 */
const OLD_MB = 2000

/** Threads that take jobs. */
export interface ThreadPool<Job, Outcome> {
  readonly run: (job: Job) => Promise<Outcome>
  /** How many may be under way at once. */
  readonly atOnce: number
  readonly close: () => Promise<void>
}

/** Several worker threads that take projects as they become free. */
export function workerPool(options: PoolOptions): Runner {
  return threadPool(options, crashed)
}

/**
 * Several worker threads that take jobs as they become free. A worker is started when there is work for it.
 *
 * @param lost Outcome of a job whose worker failed.
 */
export function threadPool<Job, Outcome>(
  { script, workerData, workers, heapMb = OLD_MB }: PoolOptions,
  lost: (job: Job, reason: string) => Outcome,
): ThreadPool<Job, Outcome> {
  const resourceLimits = {
    maxOldGenerationSizeMb: heapMb,
    maxYoungGenerationSizeMb: Math.max(YOUNG_MB.least, YOUNG_MB.together / workers),
  }
  const queue: Task<Job, Outcome>[] = []
  const idle: Worker[] = []
  const all = new Map<Worker, Task<Job, Outcome> | undefined>()
  let closed = false

  const give = (worker: Worker, task: Task<Job, Outcome>): void => {
    all.set(worker, task)
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- that is for windows of a browser
    worker.postMessage(task.job)
  }
  const free = (worker: Worker): void => {
    const next = queue.shift()
    if (next === undefined) idle.push(worker)
    else give(worker, next)
  }
  /** A worker that fails takes its job with it and no other. */
  const lose = (worker: Worker, reason: string): void => {
    const task = all.get(worker)
    if (!all.delete(worker) || closed) return
    const at = idle.indexOf(worker)
    if (at >= 0) idle.splice(at, 1)
    task?.resolve(lost(task.job, reason))
    const next = queue.shift()
    if (next !== undefined) give(start(), next)
  }
  const start = (): Worker => {
    const worker = new Worker(new URL(script), { workerData, resourceLimits })
    all.set(worker, undefined)
    worker.on('message', (outcome: Outcome) => {
      const task = all.get(worker)
      all.set(worker, undefined)
      free(worker)
      task?.resolve(outcome)
    })
    worker.on('error', (error) => lose(worker, error instanceof Error ? error.message : String(error)))
    worker.on('exit', (code) => lose(worker, `the worker ended with code ${code}`))
    return worker
  }

  return {
    atOnce: workers,
    run: (job) =>
      new Promise((resolve) => {
        const worker = idle.pop() ?? (all.size < workers ? start() : undefined)
        const task = { job, resolve }
        if (worker === undefined) queue.push(task)
        else give(worker, task)
      }),
    close: async () => {
      closed = true
      await Promise.all([...all.keys()].map((worker) => worker.terminate()))
    },
  }
}

function crashed(job: FleetJob, reason: string): FleetOutcome {
  const empty = emptyOutcome(job)
  return {
    ...empty,
    status: 'defect',
    problems: [{ place: empty.from, key: '', message: `defect in gablewatt: the worker failed: ${reason}` }],
  }
}

/** Works out one project after the other in this thread, which hears of signals in between. */
export function singleRunner(work: (job: FleetJob) => Promise<FleetOutcome>): Runner {
  const run = async (job: FleetJob): Promise<FleetOutcome> => {
    await new Promise((resolve) => setImmediate(resolve))
    return work(job)
  }
  return { atOnce: 1, run, close: () => Promise.resolve() }
}
