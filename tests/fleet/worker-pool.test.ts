import { join } from 'node:path'
import { Worker } from 'node:worker_threads'
import { describe, expect, test } from 'vitest'
import {
  emptyOutcome,
  runInOrder,
  threadPool,
  workerPool,
  workerScript,
  type FleetJob,
  type FleetOutcome,
} from '../../src/fleet/index.js'
import { ensureBuilt, ROOT } from '../cli/binary.js'

const worker = `data:text/javascript,${encodeURIComponent(`
  import { parentPort } from 'node:worker_threads'
  parentPort.on('message', (job) => {
    if (job.name === 'dies') process.exit(7)
    if (job.name === 'throws') throw new Error('a broken worker')
    if (job.name === 'eats') { const held = []; for (;;) held.push(new Array(10000).fill(job.index + held.length)) }
    parentPort.postMessage({ ...job, status: 'ok' })
  })`)}`
const jobs = (names: readonly string[]): FleetJob[] =>
  names.map((name, index) => ({ index, name, path: 'p.yaml', overrides: [] }))

describe('a worker that fails takes its own project with it and no other', () => {
  test.each([
    ['dies', 'the worker ended with code 7'],
    ['throws', 'a broken worker'],
    ['eats', 'memory'],
  ])('it %s', async (name, message) => {
    const list = jobs(['a', 'b', name, 'c', 'd', 'e', name, 'f'])
    const runner = workerPool({ script: worker, workerData: {}, workers: 2, heapMb: 24 })
    const seen: [string, string][] = []
    for await (const outcome of runInOrder(list, runner)) {
      seen.push([outcome.name, outcome.status])
      if (outcome.status === 'defect') expect(outcome.problems[0]?.message).toContain(message)
    }
    expect(seen).toEqual(list.map((job) => [job.name, job.name === name ? 'defect' : emptyOutcome(job).status]))
  })
})

describe('jobs in hand', () => {
  /** Answers with what it was given; `held` comes back once the next job has arrived. */
  const holder = `data:text/javascript,${encodeURIComponent(`
    import { parentPort } from 'node:worker_threads'
    let held
    parentPort.on('message', (job) => {
      if (job === 'held') held = job
      else {
        if (held !== undefined) parentPort.postMessage(held)
        held = undefined
        parentPort.postMessage(job)
      }
    })`)}`

  test('the next job is with a worker while it works', async () => {
    const pool = threadPool<string, string>({ script: holder, workerData: {}, workers: 1, inHand: 2 }, (_, why) => why)
    expect(await Promise.all([pool.run('held'), pool.run('next'), pool.run('last')])).toEqual(['held', 'next', 'last'])
    await pool.close()
  })

  test('every worker has one before any has two', async () => {
    const teller = `data:text/javascript,${encodeURIComponent(`
      import { parentPort, threadId } from 'node:worker_threads'
      parentPort.on('message', () => parentPort.postMessage(threadId))`)}`
    const pool = threadPool<number, number>({ script: teller, workerData: {}, workers: 3, inHand: 2 }, () => 0)
    const threads = await Promise.all([1, 2, 3].map((job) => pool.run(job)))
    expect(new Set(threads).size).toBe(3)
    await pool.close()
  })
})

describe('a worker with one house in hand and one sent ahead', () => {
  /** Tells each job as it begins it, then answers after a while, or dies of it. */
  const dying = `data:text/javascript,${encodeURIComponent(`
    import { parentPort, workerData } from 'node:worker_threads'
    let before = Promise.resolve()
    parentPort.on('message', (job) => {
      before = before.then(async () => {
        Atomics.add(workerData, job, 1)
        await new Promise((resolve) => setTimeout(resolve, 5))
        if (job === 2 || job === 5) process.exit(7)
        parentPort.postMessage(job)
      })
    })`)}`

  test.each([1, 2, 3])('of %i that dies loses neither and has neither worked out twice', async (workers) => {
    const begun = new Int32Array(new SharedArrayBuffer(4 * 12))
    const pool = threadPool<number, string | number>(
      { script: dying, workerData: begun, workers, inHand: 2 },
      (job, reason) => `${job}: ${reason}`,
    )
    const outcomes = await Promise.all(Array.from(begun, (_, job) => pool.run(job)))
    await pool.close()
    const died = (job: number): string => `${job}: the worker ended with code 7`
    expect(outcomes).toEqual([0, 1, died(2), 3, 4, died(5), 6, 7, 8, 9, 10, 11])
    expect([...begun]).toEqual(Array.from(begun, () => 1))
  })

  test(
    'works strictly one after the other: what is quick waits for what came before it',
    { timeout: 60_000 },
    async () => {
      ensureBuilt()
      const plan = { tool: 'gablewatt 0.0.0', stages: ['yield'], allowOutside: false, write: ['results'], force: false }
      const worker = new Worker(new URL(workerScript() ?? ''), { workerData: { gablewattFleet: plan } })
      // The second is told at once, were it begun before the first has ended: there is no such file.
      const files = [
        join(ROOT, 'examples/lark-hollow.yaml'),
        'none.yaml',
        join(ROOT, 'tests/bench/plain-house.yaml'),
        'none.yaml',
      ]
      const seen: [number, string][] = []
      await new Promise<void>((resolve, reject) => {
        worker.on('error', reject)
        worker.on('message', ({ index, status }: FleetOutcome) => {
          seen.push([index, status])
          if (seen.length === files.length) resolve()
        })
        for (const [index, path] of files.entries()) {
          // oxlint-disable-next-line unicorn/require-post-message-target-origin -- that is for windows of a browser
          worker.postMessage({ index, name: `h${index}`, path, overrides: [] })
        }
      })
      await worker.terminate()
      expect(seen).toEqual([
        [0, 'ok'],
        [1, 'unreadable'],
        [2, 'ok'],
        [3, 'unreadable'],
      ])
    },
  )
})
