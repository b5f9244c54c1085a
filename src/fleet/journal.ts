import {
  closeSync,
  constants,
  existsSync,
  fsync,
  fsyncSync,
  ftruncateSync,
  openSync,
  readSync,
  statSync,
  unlinkSync,
  writeSync,
} from 'node:fs'
import { join } from 'node:path'
import { isWhole, sealed } from '../seal/index.js'
import { digest } from './digest.js'
import { FleetError, fileTrouble } from './fleet-error.js'
import { line as validate } from './fleet-validators.generated.js'
import { jsonLine } from './jsonl.js'
import { readLines, type Line } from './read-lines.js'
import type { FleetItem, FleetJob, FleetOutcome } from './types.js'

/**
 * What is done already, a line a project, so that a run that was killed goes on where it stopped. A line is written
 * in one piece as soon as its project is done; the system keeps it when the program is killed, and the disk is told to.
 */
export interface Journal {
  /** Number of outcomes of an earlier run that it holds. */
  readonly held: number
  /** Numbers of the lines that are not what was written; their projects are worked out again. */
  readonly damaged: readonly number[]
  /** Whether a later run has anything to take from it. */
  readonly isEmpty: () => boolean
  /** The outcome of an earlier run, when nothing that it was made from has changed. */
  readonly recall: (job: FleetJob) => FleetOutcome | undefined
  readonly add: (job: FleetJob, outcome: FleetOutcome) => void
  readonly close: () => void
  /** Removes it when all is done. */
  readonly remove: () => void
}

export interface JournalOptions {
  readonly path: string
  /** All that decides an outcome beside its project: version, stages, files to write. */
  readonly plan: string
  /** Whether to keep what is there; otherwise it begins anew. */
  readonly resume: boolean
  /** Folder of the files that outcomes name. */
  readonly outputFolder?: string
}

interface Entry {
  readonly key: string
  readonly inputs: readonly string[]
  readonly outcome: FleetOutcome
}

/**
 * Opens a journal for adding.
 *
 * @throws FleetError when it cannot be read or written, or when there is another file in its place.
 */
export function openJournal({ path, plan, resume, outputFolder }: JournalOptions): Journal {
  let file: number
  const held = new Map<string, Line>()
  const damaged: number[] = []
  try {
    file = openSync(path, constants.O_RDWR | constants.O_CREAT | constants.O_APPEND, 0o644)
    refuseOtherFile(file, path)
    if (resume) ftruncateSync(file, readHeld(file, held, damaged))
    else ftruncateSync(file, 0)
  } catch (error) {
    throw fileTrouble('write', path, error)
  }
  const keyOf = (job: FleetJob): string =>
    digest([plan, String(job.index), job.name, job.path, ...job.overrides, JSON.stringify(job.extra ?? {})])
  const sync = syncInBackground(file)
  let isEmpty = held.size === 0
  return {
    held: held.size,
    damaged,
    isEmpty: () => isEmpty,
    recall: (job) => {
      const line = held.get(keyOf(job))
      if (line === undefined) return undefined
      const { inputs, outcome } = parseEntry(textAt(file, line)) ?? {}
      if (inputs === undefined || outcome === undefined || inputs.some((input) => input !== stampOf(pathOf(input))))
        return undefined
      if (outcome.index !== job.index || outcome.name !== job.name) return undefined
      const areThere = outcome.files.every((name) => outputFolder !== undefined && existsSync(join(outputFolder, name)))
      return areThere ? outcome : undefined
    },
    add: (job, outcome) => {
      // What a next try may mend is tried again.
      if (outcome.status !== 'ok' && outcome.status !== 'failed') return
      const entry: Entry = { key: keyOf(job), inputs: outcome.inputs.map(stampOf), outcome }
      try {
        writeSync(file, `${JSON.stringify(sealed(entry))}\n`)
      } catch (error) {
        throw fileTrouble('write', path, error)
      }
      isEmpty = false
      sync.soon()
    },
    close: () => {
      sync.stop()
      closeSync(file)
    },
    remove: () => {
      try {
        unlinkSync(path)
      } catch {
        // Somebody removed it already.
      }
    },
  }
}

/** How every line begins. */
const BEGINNING = '{"key":"'

/** A file that is no journal is left as it is: it would be cut off or emptied. */
function refuseOtherFile(file: number, path: string): void {
  const buffer = Buffer.alloc(BEGINNING.length)
  const found = buffer.toString('utf8', 0, readSync(file, buffer, 0, buffer.length, 0))
  if (BEGINNING.startsWith(found)) return
  closeSync(file)
  throw new FleetError(
    `${path} is no journal of run-fleet, or a damaged one; remove it, or name another with --journal`,
    2,
  )
}

/** Finds the whole lines; returns the length up to the last of them, as a torn one may follow. */
function readHeld(file: number, into: Map<string, Line>, damaged: number[]): number {
  let [end, number] = [0, 0]
  for (const line of readLines(file)) {
    end = line.offset + line.length + 1
    number += 1
    const entry = parseEntry(line.text)
    if (entry === undefined) damaged.push(number)
    else into.set(entry.key, { offset: line.offset, length: line.length })
  }
  return end
}

/** @returns undefined for a line that is not what was written. */
function parseEntry(text: string): Entry | undefined {
  try {
    const data: unknown = JSON.parse(text)
    if (typeof data !== 'object' || data === null || !isWhole(data as Record<string, unknown>)) return undefined
    const { key, inputs, outcome } = data as Partial<Entry>
    if (typeof key !== 'string' || !Array.isArray(inputs) || outcome === undefined) return undefined
    return inputs.every((input) => typeof input === 'string') && isOutcome(outcome)
      ? { key, inputs, outcome }
      : undefined
  } catch {
    return undefined
  }
}

/** Whether a line of `--jsonl` can be made of it. */
function isOutcome(outcome: FleetOutcome): boolean {
  const { items = [] } = outcome
  return (
    validate(JSON.parse(jsonLine(outcome))) &&
    Number.isInteger(outcome.index) &&
    Array.isArray(outcome.inputs) &&
    Array.isArray(items) &&
    items.every(isItem)
  )
}

function isItem(one: Partial<FleetItem> | null): boolean {
  return (
    typeof one?.item === 'string' &&
    typeof one.name === 'string' &&
    typeof one.group === 'string' &&
    typeof one.unit === 'string' &&
    Number.isFinite(one.quantity)
  )
}

function textAt(file: number, { offset, length }: Line): string {
  const buffer = Buffer.alloc(length)
  readSync(file, buffer, 0, length, offset)
  return buffer.toString('utf8')
}

/** `size:time:path` of a file, so that a changed one is noticed. */
function stampOf(path: string): string {
  const stats = statSync(path, { throwIfNoEntry: false })
  return stats === undefined ? `gone::${path}` : `${stats.size}:${stats.mtimeMs}:${path}`
}

function pathOf(stamp: string): string {
  return stamp.split(':').slice(2).join(':')
}

/** Asks the disk to keep what was written, without waiting for it; one request at a time. */
function syncInBackground(file: number): { readonly soon: () => void; readonly stop: () => void } {
  let state: 'rest' | 'busy' | 'again' | 'stopped' = 'rest'
  const begin = (): void => {
    state = 'busy'
    fsync(file, () => {
      if (state === 'again') begin()
      else if (state === 'busy') state = 'rest'
    })
  }
  return {
    soon: () => {
      if (state === 'rest') begin()
      else if (state === 'busy') state = 'again'
    },
    stop: () => {
      state = 'stopped'
      fsyncSync(file)
    },
  }
}
