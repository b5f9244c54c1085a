import type { FleetJob, FleetOutcome } from './types.js'

/** Something that works projects out, one or several at a time. */
export interface Runner {
  readonly run: (job: FleetJob) => Promise<FleetOutcome>
  /** How many may be under way at once. */
  readonly atOnce: number
  readonly close: () => Promise<void>
}

export interface RunOptions {
  /** The outcome of an earlier, interrupted run. */
  readonly recall?: (job: FleetJob) => FleetOutcome | undefined
  /** Called as soon as a project is done, in whatever order that happens. */
  readonly done?: (job: FleetJob, outcome: FleetOutcome) => void
}

/** How many projects may wait for a slow one before them, per project under way; bounds the memory. */
const WAITING_PER_RUN = 16

/**
 * Works out projects and hands back their outcomes in the order of the projects, whatever the workers do. Projects are
 * taken in only as fast as they are worked out.
 */
export async function* runInOrder(
  jobs: Iterable<FleetJob>,
  runner: Runner,
  { recall, done }: RunOptions = {},
): AsyncGenerator<FleetOutcome> {
  const waiting: Promise<FleetOutcome>[] = []
  const start = (job: FleetJob): Promise<FleetOutcome> => {
    const recalled = recall?.(job)
    if (recalled !== undefined) return Promise.resolve(recalled)
    const outcome = job.problems === undefined ? runner.run(job) : Promise.resolve(badRow(job, job.problems))
    const kept = outcome.then((result) => {
      done?.(job, result)
      return result
    })
    // Whoever stops in the middle leaves the rest unheard.
    kept.catch(() => undefined)
    return kept
  }
  const most = runner.atOnce === 1 ? 1 : runner.atOnce * WAITING_PER_RUN
  try {
    for (const job of jobs) {
      waiting.push(start(job))
      if (waiting.length < most) continue
      const first = waiting.shift()
      if (first !== undefined) yield await first
    }
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) yield await next
  } finally {
    await runner.close()
  }
}

function badRow(job: FleetJob, problems: FleetOutcome['problems']): FleetOutcome {
  return { ...emptyOutcome(job), status: 'invalid', problems }
}

/** What is known of a project before it is worked out. */
export function emptyOutcome(job: FleetJob): FleetOutcome {
  return {
    index: job.index,
    name: job.name,
    from: job.row === undefined ? job.path : `${job.row.file}:${job.row.line}`,
    title: null,
    digest: null,
    extra: job.extra ?? {},
    status: 'ok',
    problems: [],
    stages: {},
    findings: [],
    files: [],
    inputs: [],
  }
}
