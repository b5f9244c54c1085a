import { parentPort, workerData } from 'node:worker_threads'
import type { Combination, TrialPlan, Tried } from '../house/index.js'

/** What a worker thread is started with. */
export interface PartsWorkerData {
  readonly gablewattParts: TrialPlan
}

/** The plan that this worker thread was started with; undefined in any other. */
export function partsPlan(): TrialPlan | undefined {
  return (workerData as Partial<PartsWorkerData> | null)?.gablewattParts
}

/** In a worker thread: tries the combinations of each message, until the thread is ended. */
export async function serveParts(plan: TrialPlan): Promise<void> {
  const port = parentPort
  if (port === null) throw new Error('a worker without a port')
  const { trialHouse, tryCombination } = await import('../house/index.js')
  const trial = await trialHouse(plan)
  port.on('message', (combinations: readonly Combination[]) => {
    void (async () => {
      const tried: Tried[] = []
      for (const combination of combinations) tried.push(await tryCombination(trial, combination))
      port.postMessage(tried)
    })()
  })
  await new Promise((resolve) => port.once('close', resolve))
}
