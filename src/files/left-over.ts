import { readdirSync, statSync, unlinkSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { entriesIn } from './list-folder.js'

/** The file that grows until `target` is whole: `.result.json.4711.tmp` of the process 4711. */
export function temporaryOf(target: string): string {
  return join(dirname(target), `${startOf(target)}${process.pid}.tmp`)
}

/** Removes what runs that were killed left of the same target; a file of a run that goes on stays. */
export function removeLeftOvers(target: string): void {
  const [folder, start] = [dirname(target), startOf(target)]
  for (const { name } of entriesIn(folder)) {
    const pid = name.startsWith(start) ? /^(\d+)\.tmp$/u.exec(name.slice(start.length))?.[1] : undefined
    if (pid !== undefined && isLeft(join(folder, name), Number(pid))) removeQuietly(join(folder, name))
  }
}

/**
 * The same for many files below a folder, links not followed.
 *
 * @param names File names that were being written; other files are not looked at.
 */
export function removeLeftOversBelow(folder: string, names: ReadonlySet<string>): void {
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const [, name, pid] = /^\.(.+)\.(\d+)\.tmp$/u.exec(entry.name) ?? []
    if (name === undefined || !names.has(name) || !entry.isFile()) continue
    const path = join(entry.parentPath, entry.name)
    if (isLeft(path, Number(pid))) removeQuietly(path)
  }
}

export function removeQuietly(path: string): void {
  try {
    unlinkSync(path)
  } catch {
    // It was never made, has its final name already, or somebody else removed it.
  }
}

function startOf(target: string): string {
  return `.${basename(target).slice(0, 100)}.`
}

/** A day. */
const LONG_MS = 24 * 60 * 60 * 1000

/** Numbers of processes come again: one that wrote nothing for a day, or that had our number before we began, is gone. */
function isLeft(path: string, pid: number): boolean {
  const writtenMs = statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Infinity
  const now = Date.now()
  if (pid === process.pid) return writtenMs < now - 1000 * process.uptime()
  return !isAlive(pid) || writtenMs < now - LONG_MS
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM'
  }
}
