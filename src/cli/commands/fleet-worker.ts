import { existsSync } from 'node:fs'
import { isMainThread, parentPort, workerData } from 'node:worker_threads'
import type { FleetJob } from '../../fleet/index.js'
import { workOut, type FleetPlan } from './fleet-work.js'

/** What a worker thread is started with. */
export interface FleetWorkerData {
  readonly gablewattFleet: FleetPlan
}

/** The file of the package that starts a worker: seen from the bundled program, or from the library. */
export function workerScript(): URL | undefined {
  return ['../../bin/fleet-worker.js', '../../../bin/fleet-worker.js']
    .map((path) => new URL(path, import.meta.url))
    .find((url) => existsSync(url))
}

/** The plan of this thread when it is a worker of a fleet. */
export function workerPlan(): FleetPlan | undefined {
  const data: unknown = workerData
  if (isMainThread || typeof data !== 'object' || data === null || !('gablewattFleet' in data)) return undefined
  return (data as FleetWorkerData).gablewattFleet
}

/** Works out every project that arrives, until the thread is ended. */
export async function serveFleet(plan: FleetPlan): Promise<void> {
  const port = parentPort
  if (port === null) throw new Error('a worker without a port')
  port.on('message', (job: FleetJob) => {
    void workOut(job, plan).then((outcome) => port.postMessage(outcome))
  })
  await new Promise((resolve) => port.once('close', resolve))
}
