import { availableParallelism } from 'node:os'
import { threadPool, workerScript } from '../fleet/index.js'
import type { Combination, TryAll, Tried } from '../house/index.js'
import type { PartsWorkerData } from './parts-worker.js'

/** Fewer combinations are tried before a worker has started. */
const FEW = 12

/**
 * Tries combinations in worker threads; undefined where one thread is as quick, or none may be started. What has the same modules,
 * inverter and size stays together, as roof, mounts and sky are then found again.
 */
export function partsPool(count: number): TryAll | undefined {
  const workers = Math.min(availableParallelism(), 8)
  const script = workerScript()
  const confined = process.env['GABLEWATT_UNTRUSTED'] === '1'
  if (count < FEW || workers < 2 || script === undefined || confined) return undefined
  return async (plan, combinations, progress) => {
    const workerData: PartsWorkerData = { gablewattParts: plan }
    // A worker that fails is a fault of the program, no property of a combination.
    const pool = threadPool<readonly Combination[], readonly Tried[] | Error>(
      { script, workerData, workers },
      (_, reason) => new Error(`a worker failed: ${reason}`),
    )
    try {
      let done = 0
      const groups = byRoof(combinations)
      const outcomes = await Promise.all(
        groups.map(async (group) => {
          const tried = await pool.run(group)
          if (tried instanceof Error) throw tried
          done += group.length
          progress(done - 1)
          return tried
        }),
      )
      return outcomes.flat()
    } finally {
      await pool.close()
    }
  }
}

/** Neighbours with the same roof; in the order of the combinations. */
function byRoof(combinations: readonly Combination[]): Combination[][] {
  const groups: Combination[][] = []
  let last = ''
  for (const one of combinations) {
    const roof = JSON.stringify([one.module, one.inverter, one.size])
    if (roof === last) groups.at(-1)?.push(one)
    else groups.push([one])
    last = roof
  }
  return groups
}
