import {
  closeSync,
  constants,
  existsSync,
  fstatSync,
  ftruncateSync,
  openSync,
  readSync,
  unlinkSync,
  writeSync,
} from 'node:fs'
import { join } from 'node:path'
import { LARGEST_JOURNAL_BYTES } from '../project/index.js'
import { BUILD, sayBuild } from '../seal/index.js'
import { digest } from './digest.js'
import { FleetError, fileTrouble } from './fleet-error.js'
import { isAsStamped } from './input-stamp.js'
import { BEGINNING, isDone, readEntry, writeEntry } from './journal-entry.js'
import { readLines, type Line } from './read-lines.js'
import { syncInBackground } from './sync-in-background.js'
import type { FleetFinding, FleetJob, FleetOutcome } from './types.js'

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
  /** All that decides an outcome beside its project and the build of the program: version, stages, files to write. */
  readonly plan: string
  /** `gablewatt 0.1.0` */
  readonly tool: string
  /** Whether what another build of the program finished is taken, with a warning. */
  readonly useAnyway?: boolean
  /** Whether to keep what is there; otherwise it begins anew. */
  readonly resume: boolean
  /** Folder of the files that outcomes name. */
  readonly outputFolder?: string
}

/**
 * Opens a journal for adding.
 *
 * @throws FleetError when it cannot be read or written, or when there is another file in its place.
 */
export function openJournal({ path, plan, tool, resume, outputFolder, useAnyway }: JournalOptions): Journal {
  let file: number
  const held = new Map<string, Line>()
  const damaged: number[] = []
  try {
    // Without waiting for somebody at the other end of a pipe.
    const how = constants.O_RDWR | constants.O_CREAT | constants.O_APPEND | (constants.O_NONBLOCK ?? 0)
    file = openSync(path, how, 0o644)
    checkRegular(file, path)
    refuseOtherFile(file, path)
    if (resume) {
      const { end, others } = readHeld(file, path, held, damaged)
      refuseOthers(file, path, others, useAnyway === true)
      ftruncateSync(file, end)
    } else ftruncateSync(file, 0)
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
      const { inputs, outcome, otherBuild } = readEntry(textAt(file, line)) ?? {}
      if (inputs === undefined || outcome === undefined || !inputs.every(isAsStamped)) return undefined
      if (outcome.index !== job.index || outcome.name !== job.name) return undefined
      const areThere = outcome.files.every((name) => outputFolder !== undefined && existsSync(join(outputFolder, name)))
      if (!areThere) return undefined
      return otherBuild === undefined ? outcome : { ...outcome, findings: [...outcome.findings, byOther(otherBuild)] }
    },
    add: (job, outcome) => {
      if (!isDone(outcome)) return
      const entry = { key: keyOf(job), inputs: outcome.inputs, outcome }
      try {
        writeSync(file, writeEntry(tool, entry))
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

/** A device or a pipe holds nothing that a later run could go on from. */
function checkRegular(file: number, path: string): void {
  const status = fstatSync(file)
  const says = !status.isFile()
    ? 'it is not a regular file; name another with --journal'
    : status.size > LARGEST_JOURNAL_BYTES
      ? `it is ${(status.size / 1e6).toFixed(1)} MB large; at most ${LARGEST_JOURNAL_BYTES / 1e6} MB is read: begin a new one`
      : undefined
  if (says === undefined) return
  closeSync(file)
  throw new FleetError(`cannot use the journal ${path}: ${says}`, 3)
}

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

/** Finds the whole lines, and their length up to the last of them, as a torn one may follow. */
function readHeld(
  file: number,
  path: string,
  into: Map<string, Line>,
  damaged: number[],
): { readonly end: number; readonly others: ReadonlyMap<string, boolean> } {
  let [end, number] = [0, 0]
  /** Other builds, and whether what they wrote can be read. */
  const others = new Map<string, boolean>()
  for (const line of readLines(file, path)) {
    end = line.offset + line.length + 1
    number += 1
    const entry = readEntry(line.text)
    if (entry === undefined) {
      damaged.push(number)
      continue
    }
    into.set(entry.key, { offset: line.offset, length: line.length })
    const { key, otherBuild } = entry
    if (otherBuild !== undefined) others.set(otherBuild, key !== '' && others.get(otherBuild) !== false)
  }
  return { end, others }
}

/** @throws FleetError when another build wrote what is there, and nobody says that it shall be taken. */
function refuseOthers(file: number, path: string, others: ReadonlyMap<string, boolean>, useAnyway: boolean): void {
  const [other] = others.keys()
  const isReadable = [...others.values()].every(Boolean)
  if (other === undefined || (useAnyway && isReadable)) return
  closeSync(file)
  const way = isReadable ? ', or take it with --use-anyway' : ''
  throw new FleetError(
    `${path} was begun by ${sayBuild(other)} of the program, this is ${sayBuild(BUILD)}; leave --resume out to begin anew${way}`,
    2,
  )
}

function byOther(build: string): FleetFinding {
  const message = `worked out by ${sayBuild(build)} of the program and taken by --use-anyway; the others are by ${sayBuild(BUILD)}`
  return { stage: 'project', severity: 'warning', id: 'fleet.other-build', where: '', message }
}

function textAt(file: number, { offset, length }: Line): string {
  const buffer = Buffer.alloc(length)
  readSync(file, buffer, 0, length, offset)
  return buffer.toString('utf8')
}
