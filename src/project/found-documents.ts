import { closeSync, readSync } from 'node:fs'
import { LARGEST_DOCUMENT_BYTES } from './budgets.js'
import { documentsOf } from './documents.js'
import { resolveInside } from './inside-folder.js'
import { openRegular } from './read-file.js'
import type { Project } from './project-types.generated.js'

/** The mark of a PDF stands within this many bytes from its start. */
const MARK_WITHIN = 1024

/** Ids of the documents whose file is there, may be read, and is a PDF by its first bytes. */
export function foundDocuments(project: Project, folder: string, allowOutside: boolean): ReadonlySet<string> {
  const found = new Set<string>()
  for (const { id, file } of documentsOf(project)) {
    if (id !== undefined && isPdf(file, folder, allowOutside)) found.add(id)
  }
  return found
}

function isPdf(file: string, folder: string, allowOutside: boolean): boolean {
  const path = file.includes('\0') ? undefined : resolveInside(folder, file, allowOutside)
  if (path === undefined) return false
  let handle: number | undefined
  try {
    handle = openRegular(path, LARGEST_DOCUMENT_BYTES)
    const start = Buffer.alloc(MARK_WITHIN)
    readSync(handle, start, 0, MARK_WITHIN, 0)
    return start.includes('%PDF-')
  } catch {
    return false
  } finally {
    if (handle !== undefined) closeSync(handle)
  }
}
