import { closeSync, readSync, statSync, type Stats } from 'node:fs'
import { basename, extname, join } from 'node:path'
import { entriesUpTo, type FolderEntry } from '../files/index.js'
import { LARGEST_YAML_BYTES, openRegular } from '../project/index.js'
import { fileTrouble, FleetError } from './fleet-error.js'
import { expandPattern, isPattern } from './glob.js'
import { LOOKED_AT, type LookedAt } from './looked-at.js'
import type { FleetJob } from './types.js'

/**
 * The projects that files, patterns and folders name, each once, in the order in which they are named; those of a
 * folder or a pattern sorted by name. In a folder every YAML file that says `format: gablewatt/...` is a project.
 *
 * @param overrides `path=value` for every project.
 * @param bounds How much may be found and looked past.
 * @throws FleetError when a name leads to nothing, or to too much.
 */
export function fileJobs(named: readonly string[], overrides: readonly string[], bounds = LOOKED_AT): FleetJob[] {
  const found = new Map<string, string>()
  for (const text of named) for (const [path, name] of expand(text, bounds)) if (!found.has(path)) found.set(path, name)
  if (found.size > bounds.houses) {
    const says = `${found.size} projects; at most ${bounds.houses} are run at once: name fewer folders`
    throw new FleetError(`${named[0] ?? ''}: ${says}`, 2)
  }
  const times = new Map<string, number>()
  for (const name of found.values()) times.set(name, (times.get(name) ?? 0) + 1)
  return [...found].map(([path, name], index) => ({
    index,
    // Two folders may hold files of one name.
    name: times.get(name) === 1 ? name : withoutExtension(path.replace(/^(?:\.{0,2}\/)+/u, '')),
    path,
    overrides,
  }))
}

function expand(text: string, bounds: LookedAt): [path: string, name: string][] {
  const stats = statusOf(text)
  if (stats?.isDirectory() === true) {
    const found = [...projectsIn(text, '', { most: bounds.entries, left: bounds.entries })]
    if (found.length === 0)
      throw new FleetError(`${text}: no project file in this folder (YAML with 'format: gablewatt/2')`, 2)
    return found
  }
  if (stats !== undefined) return [[text, withoutExtension(basename(text))]]
  const files = isPattern(text) ? expandPattern(text, bounds) : []
  if (files.length === 0) {
    throw isPattern(text)
      ? new FleetError(`${text}: no file matches this pattern`, 3)
      : new FleetError(`cannot read ${text}: no such file or folder (ENOENT)`, 3)
  }
  return files.map((file) => [file, withoutExtension(basename(file))])
}

/** Undefined where nothing is there; a pattern may be longer than any name. */
function statusOf(text: string): Stats | undefined {
  try {
    return statSync(text, { throwIfNoEntry: false })
  } catch (error) {
    if (isPattern(text)) return undefined
    throw fileTrouble('read', text, error)
  }
}

/** @param looked How many more files and folders may be looked at. */
function* projectsIn(
  folder: string,
  below: string,
  looked: { readonly most: number; left: number },
): Generator<[string, string]> {
  const entries = listFolder(join(folder, below), looked.left).toSorted((a, b) => (a.name < b.name ? -1 : 1))
  looked.left -= entries.length
  if (looked.left < 0) {
    throw new FleetError(`${folder}: more than ${looked.most} files lie below it; name the folder of the projects`, 2)
  }
  for (const entry of entries) {
    if (entry.name.startsWith('.') || entry.name === 'node_modules') continue
    const inside = below === '' ? entry.name : `${below}/${entry.name}`
    if (entry.isDirectory()) yield* projectsIn(folder, inside, looked)
    else if (/\.ya?ml$/iu.test(entry.name) && isProject(join(folder, inside))) {
      yield [join(folder, inside), withoutExtension(inside)]
    }
  }
}

function listFolder(folder: string, most: number): FolderEntry[] {
  try {
    return entriesUpTo(folder, most)
  } catch (error) {
    throw fileTrouble('read', folder, error)
  }
}

/** Equipment and price lists lie beside projects, so that the format line decides; it stands near the top. */
function isProject(path: string): boolean {
  let file: number | undefined
  try {
    file = openRegular(path, LARGEST_YAML_BYTES)
    const buffer = Buffer.alloc(16_384)
    const length = readSync(file, buffer, 0, buffer.length, 0)
    return /^format:\s*['"]?gablewatt\//mu.test(buffer.toString('utf8', 0, length))
  } catch {
    // A project that cannot be read is told of when its turn comes.
    return true
  } finally {
    if (file !== undefined) closeSync(file)
  }
}

function withoutExtension(path: string): string {
  return path.slice(0, path.length - extname(path).length)
}
