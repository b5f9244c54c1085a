import { describe, expect, test } from 'vitest'
import { emptyOutcome, runInOrder, threadPool, workerPool, type FleetJob } from '../../src/fleet/index.js'

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
