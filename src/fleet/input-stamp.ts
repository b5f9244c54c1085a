import { statSync } from 'node:fs'

/** A file may bear a time that lies this much before the one at which it was written, as systems count in steps, ms. */
const STEP_MS = 20

/**
 * `size:time:change:path` of a file, so that a changed one is noticed; the second time is that of the last change of anything about it, which no
 * copy that keeps its time of writing can hide.
 */
export function stampOf(path: string, stats = statSync(path, { throwIfNoEntry: false })): string {
  return stats === undefined ? `gone:::${path}` : `${stats.size}:${stats.mtimeMs}:${stats.ctimeMs}:${path}`
}

/**
 * Stamps of files that were read just now.
 *
 * @param sinceMs When the first of them was opened. One that changed since then may not be what was read; its stamp fits no file.
 */
export function stampsAsRead(paths: readonly string[], sinceMs: number): string[] {
  return paths.map((path) => {
    const stats = statSync(path, { throwIfNoEntry: false })
    return stats !== undefined && stats.ctimeMs > sinceMs - STEP_MS ? `changing:::${path}` : stampOf(path, stats)
  })
}

/** Whether the file of a stamp is what it was. */
export function isAsStamped(stamp: string): boolean {
  return stamp === stampOf(stamp.split(':').slice(3).join(':'))
}
