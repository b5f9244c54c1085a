import { resolveInside } from './inside-folder.js'
import { valueAt } from './plain-data.js'
import { decodeText, FileTrouble, readBytes } from './read-file.js'
import type { Reference } from './reference.js'

/** Text of a referenced file, or why there is none; undefined when the project does not name one. */
export type Referenced =
  | { readonly name: string; readonly text: string }
  | { readonly name: string; readonly trouble: string; readonly unreadable: boolean }
  | undefined

/** Reads the file that a place in the data names. A name of the wrong type is left to the schema. */
export function readReferenced(reference: Reference, data: unknown, folder: string, allowOutside: boolean): Referenced {
  const name = valueAt(data, reference.segments)
  if (typeof name !== 'string' || name.trim() === '') return undefined
  if (name.includes('\0')) return { name, trouble: 'a file name cannot hold NUL characters', unreadable: false }
  const path = resolveInside(folder, name, allowOutside)
  if (path === undefined) {
    const trouble = `file '${name}' lies outside the project's folder; copy it there, or allow outside files`
    return { name, trouble, unreadable: false }
  }
  try {
    return { name, text: decodeText(readBytes(path, reference.most), reference.fallback) }
  } catch (error) {
    if (!(error instanceof FileTrouble)) throw error
    return { name, trouble: `file '${name}': ${error.message}`, unreadable: error.unreadable }
  }
}
