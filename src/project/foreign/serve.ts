import { parentPort } from 'node:worker_threads'
import { packError } from './carried-error.js'
import type { FromWorker, ToWorker } from './messages.js'
import type { Ask, ForeignTask } from './task.js'

/** In the other thread: works on each task that arrives, one at a time, until the thread is ended. */
export async function serveForeign(tasks: readonly ForeignTask<never, unknown>[]): Promise<void> {
  const port = parentPort
  if (port === null) throw new Error('a worker without a port')
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- that is for windows of a browser
  const tell = (message: FromWorker): void => port.postMessage(message)
  const asked = new Map<number, (value: unknown) => void>()
  let questions = 0
  const ask: Ask = (question) =>
    new Promise((resolve) => {
      const number = questions++
      asked.set(number, resolve)
      tell({ kind: 'question', number, question })
    })
  const work = async (name: string, input: unknown): Promise<void> => {
    try {
      const task = tasks.find((one) => one.name === name)
      if (task === undefined) throw new Error(`there is no task '${name}'`)
      tell({ kind: 'done', output: await task.work(input as never, ask) })
    } catch (error) {
      tell({ kind: 'failed', error: packError(error) })
    }
  }
  port.on('message', (message: ToWorker) => {
    if (message.kind === 'task') return void work(message.name, message.input)
    asked.get(message.number)?.(message.value)
    asked.delete(message.number)
  })
  tell({ kind: 'ready' })
  await new Promise((resolve) => port.once('close', resolve))
}
