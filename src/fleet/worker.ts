import { existsSync } from 'node:fs'
import { parentPort, workerData } from 'node:worker_threads'
import type { FleetPlan } from './plan.js'
import type { FleetJob } from './types.js'
import { workOut } from './work-out.js'

/** What a worker thread is started with. */
export interface FleetWorkerData {
  readonly gablewattFleet: FleetPlan
}

/** Address of the file of the package that starts a worker, two folders up from the library and from the bundled program. */
export function workerScript(): string | undefined {
  const url = new URL('../../bin/fleet-worker.js', import.meta.url)
  return existsSync(url) ? url.href : undefined
}

/** In a worker thread: works out every project that arrives, until the thread is ended. */
export async function serveFleet(): Promise<void> {
  const port = parentPort
  if (port === null) throw new Error('a worker without a port')
  const { gablewattFleet: plan } = workerData as FleetWorkerData
  // The next one is here already; one after the other.
  let before = Promise.resolve()
  port.on('message', (job: FleetJob) => {
    before = before.then(async () => port.postMessage(await workOut(job, plan)))
  })
  await new Promise((resolve) => port.once('close', resolve))
}
