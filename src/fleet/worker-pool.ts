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
  /**
   * Jobs that are with a worker at once: one under way, the others next. A worker then need not wait until this thread has its turn; jobs
   * of very different length are better given one by one.
   */
  readonly inHand?: number
}

/**
 * Room for new objects, MB: of all workers together, and the least of one. A worker copies what lives at each collection: two with
 * 24 MB each are a twelfth slower than with 48, with 128 no quicker.
 */
const YOUNG_MB = { together: 96, least: 24 }
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
  return threadPool({ inHand: 2, ...options }, crashed)
}

/**
 * Several worker threads that take jobs as they become free and work on them in the order in which they arrive. A worker is started
 * when there is work for it.
 *
 * @param lost Outcome of a job whose worker failed.
 */
export function threadPool<Job, Outcome>(
  { script, workerData, workers, heapMb = OLD_MB, inHand = 1 }: PoolOptions,
  lost: (job: Job, reason: string) => Outcome,
): ThreadPool<Job, Outcome> {
  const resourceLimits = {
    maxOldGenerationSizeMb: heapMb,
    maxYoungGenerationSizeMb: Math.max(YOUNG_MB.least, YOUNG_MB.together / workers),
  }
  const queue: Task<Job, Outcome>[] = []
  /** What each worker has in hand, what it works on first. */
  const all = new Map<Worker, Task<Job, Outcome>[]>()
  let closed = false

  const give = (worker: Worker): void => {
    const own = all.get(worker)
    if (own === undefined) return
    const room = inHand - own.length
    for (const next of queue.splice(0, Math.max(0, room))) {
      own.push(next)
      // oxlint-disable-next-line unicorn/require-post-message-target-origin -- that is for windows of a browser
      worker.postMessage(next.job)
    }
  }
  /** A worker that fails takes the job it is at with it and no other. */
  const lose = (worker: Worker, reason: string): void => {
    const own = all.get(worker)
    if (!all.delete(worker) || closed || own === undefined) return
    const [task, ...untouched] = own
    queue.unshift(...untouched)
    task?.resolve(lost(task.job, reason))
    if (queue.length > 0) give(start())
  }
  const start = (): Worker => {
    const worker = new Worker(new URL(script), { workerData, resourceLimits })
    all.set(worker, [])
    worker.on('message', (outcome: Outcome) => {
      const task = all.get(worker)?.shift()
      give(worker)
      task?.resolve(outcome)
    })
    // What it answered before it failed may come after the error, and always comes before the end.
    let reason: string | undefined
    worker.on('error', (error) => (reason = error instanceof Error ? error.message : String(error)))
    worker.on('exit', (code) => lose(worker, reason ?? `the worker ended with code ${code}`))
    return worker
  }
  /** The one with the least in hand; a new one before any has two. */
  const freest = (): Worker => {
    let least: Worker | undefined
    for (const [worker, { length }] of all) if (least === undefined || length < all.get(least)!.length) least = worker
    const isFree = least !== undefined && all.get(least)!.length === 0
    return least === undefined || (!isFree && all.size < workers) ? start() : least
  }

  return {
    atOnce: workers,
    run: (job) =>
      new Promise((resolve) => {
        queue.push({ job, resolve })
        give(freest())
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
