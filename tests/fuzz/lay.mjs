/** A case in its folder. */
import { lstatSync, mkdirSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'

/** A journal notes when its inputs were written, so all are as old. */
const WRITTEN = new Date(Date.UTC(2026, 0, 2))

/** What was laid in which folder, so that files that every case has are written once. */
const lying = new Map()

/**
 * Writes the files of a case, and takes away what else is there. A content may depend on the folder.
 *
 * @param {string} folder
 * @param {Record<string, string | Buffer | ((folder: string) => string)>} files
 * @returns {Record<string, string | Buffer>} The files as they were laid.
 */
export function lay(folder, files) {
  const before = lying.get(folder) ?? new Map()
  const now = new Map()
  for (const path of filesIn(folder)) {
    if (files[path] === undefined || before.get(path) !== files[path] || isChanged(folder, path))
      rmSync(join(folder, path))
    else now.set(path, files[path])
  }
  for (const [name, content] of Object.entries(files)) {
    if (now.has(name)) continue
    const path = join(folder, name)
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(path, typeof content === 'function' ? content(folder) : content)
    utimesSync(path, WRITTEN, WRITTEN)
    now.set(name, content)
  }
  lying.set(folder, now)
  return Object.fromEntries(
    Object.entries(files).map(([name, content]) => [name, typeof content === 'function' ? content(folder) : content]),
  )
}

/** What a run wrote: new files, and those of the case that are other ones now. */
export function written(folder, files) {
  const paths = filesIn(folder).filter((path) => files[path] === undefined || isChanged(folder, path))
  return Object.fromEntries(paths.map((path) => [path, readFileSync(join(folder, path))]))
}

function isChanged(folder, path) {
  return lstatSync(join(folder, path)).mtimeMs !== WRITTEN.getTime()
}

function filesIn(folder) {
  let entries
  try {
    entries = readdirSync(folder, { recursive: true, withFileTypes: true })
  } catch (error) {
    if (error.code === 'ENOENT') return []
    throw error
  }
  return entries
    .filter((entry) => !entry.isDirectory())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)))
}
