import { existsSync } from 'node:fs'
import { Worker } from 'node:worker_threads'
import { FileError } from '../../files/index.js'
import { unpackError, type CarriedError } from './carried-error.js'
import { foreignLimits, type ForeignLimits } from './limits.js'
import type { FromWorker, ToWorker } from './messages.js'
import type { ForeignRunner, ForeignSubject } from './task.js'
import { WorkClock } from './work-clock.js'

/** Room for new objects, MB; it comes on top of what may grow. */
const YOUNG_MB = 16
/** A start takes a tenth of a second, on a busy machine far longer. */
const START_SECONDS = 60

/** Address of the file of the package that starts such a thread; undefined where the program is not built. */
function foreignScript(): URL | undefined {
  // From the library it is three folders up, from the bundled program two.
  const places = ['../../bin/foreign-worker.js', '../../../bin/foreign-worker.js']
  return places.map((place) => new URL(place, import.meta.url)).find((url) => existsSync(url))
}

/** A thread with what it may take. */
interface Bounded {
  readonly worker: Worker
  readonly memoryMb: number
}

let shared: ForeignRunner | undefined

/**
 * Works in a thread with limits of memory and time, so that a file made to harm takes neither the machine nor the program
 * with it. There is one such thread, which waits for the next file. Where the engine forbids threads (`--untrusted`), or the
 * program is not built, undefined.
 */
export function inWorker(): ForeignRunner | undefined {
  return (shared ??= inWorkerWith(foreignLimits))
}

/** The same with a thread of its own. @param limitsOf What a file of so many bytes may take. */
export function inWorkerWith(limitsOf: (bytes: number) => ForeignLimits): ForeignRunner | undefined {
  const script = foreignScript()
  if (script === undefined || process.env['GABLEWATT_UNTRUSTED'] === '1') return undefined
  let idle: Bounded | undefined
  const take = (memoryMb: number): Bounded => {
    const known = idle
    idle = undefined
    if (known?.memoryMb === memoryMb) return known
    void known?.worker.terminate()
    const resourceLimits = { maxOldGenerationSizeMb: memoryMb, maxYoungGenerationSizeMb: YOUNG_MB }
    const worker = new Worker(script, { resourceLimits, stdout: true, stderr: true })
    // A thread that is ended on purpose may still have something to say.
    worker.on('error', () => undefined)
    return { worker, memoryMb }
  }
  return {
    run: async (task, input, subject, ask) => {
      const limits = limitsOf(subject.bytes)
      const isNew = idle?.memoryMb !== limits.memoryMb
      const bounded = take(limits.memoryMb)
      const keep = (): void => {
        void idle?.worker.terminate()
        idle = bounded
        // It must not keep the program from ending.
        bounded.worker.unref()
      }
      try {
        const question = { kind: 'task', name: task.name, input } as const
        const outcome = await converse(bounded.worker, isNew, question, limits, subject, ask)
        keep()
        if (outcome.error !== undefined) throw unpackError(outcome.error)
        return outcome.output as never
      } catch (error) {
        // One that was given up is still at it; one that only refused a file is as good as before.
        if (idle !== bounded) void bounded.worker.terminate()
        throw error
      }
    },
  }
}

/** What came of a task. */
interface Outcome {
  readonly output: unknown
  readonly error: CarriedError | undefined
}

/** Gives a thread its task and answers what it asks until it is done. The clock stands while it waits for an answer. */
function converse(
  worker: Worker,
  isNew: boolean,
  task: ToWorker,
  limits: ForeignLimits,
  subject: ForeignSubject,
  ask: ((question: string) => Promise<unknown>) | undefined,
): Promise<Outcome> {
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- that is for windows of a browser
  const tell = (message: ToWorker): void => worker.postMessage(message)
  return new Promise((resolve, reject) => {
    const clock = new WorkClock(limits.seconds, () => settle(() => reject(gaveUp(subject, `${limits.seconds} s`))))
    let waiting: NodeJS.Timeout | undefined
    const settle = (finish: () => void): void => {
      clearTimeout(waiting)
      clock.stop()
      // One by one: the engine listens too, and hears nothing more when all are taken away.
      worker.off('message', heard).off('error', failed).off('exit', ended)
      finish()
    }
    const begin = (): void => {
      clearTimeout(waiting)
      clock.start()
      tell(task)
    }
    const answer = async (number: number, question: string): Promise<void> => {
      clock.stop()
      const value = await ask?.(question)
      clock.start()
      tell({ kind: 'answer', number, value })
    }
    const heard = (message: FromWorker): void => {
      if (message.kind === 'ready') begin()
      else if (message.kind === 'done') settle(() => resolve({ output: message.output, error: undefined }))
      else if (message.kind === 'failed') settle(() => resolve({ output: undefined, error: message.error }))
      else answer(message.number, message.question).catch((error: unknown) => settle(() => reject(error)))
    }
    const failed = (error: unknown): void => {
      settle(() => reject(isOutOfMemory(error) ? gaveUp(subject, `${limits.memoryMb} MB of memory`) : (error as Error)))
    }
    const ended = (code: number): void => {
      settle(() => reject(new Error(`the thread of ${subject.what} ended with code ${code}`)))
    }
    worker.on('message', heard).on('error', failed).on('exit', ended)
    worker.ref()
    if (isNew)
      waiting = setTimeout(() => settle(() => reject(new Error('the thread did not start'))), START_SECONDS * 1000)
    else begin()
  })
}

function isOutOfMemory(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY'
}

function gaveUp({ what, bytes, fix }: ForeignSubject, limit: string): FileError {
  const size = bytes < 100_000 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1e6).toFixed(1)} MB`
  return new FileError(
    `${what} was given up: it takes more than ${limit}, the limit for a file of its size (${size}); ${fix}`,
    { exitCode: 2 },
  )
}
