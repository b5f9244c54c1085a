import { closeSync, readSync } from 'node:fs'
import { LARGEST_DOCUMENT_BYTES } from './budgets.js'
import { documentsOf } from './documents.js'
import { resolveInside } from './inside-folder.js'
import { FileTrouble, openRegular } from './read-file.js'
import type { Project } from './project-types.generated.js'

/** The mark of a PDF stands within this many bytes from its start. */
const MARK_WITHIN = 1024

/** What of the documents of a project can be used. */
export interface FoundDocuments {
  /** Ids of those whose file is there, may be read, and is a PDF by its first bytes. */
  readonly documents: ReadonlySet<string>
  /** Why the file of a document is there and yet of no use, with its size and what is allowed; by id. */
  readonly documentTroubles: ReadonlyMap<string, string>
}

export function foundDocuments(project: Project, folder: string, allowOutside: boolean): FoundDocuments {
  const documents = new Set<string>()
  const documentTroubles = new Map<string, string>()
  for (const { id, file } of documentsOf(project)) {
    if (id === undefined) continue
    const state = stateOf(file, folder, allowOutside)
    if (state === 'found') documents.add(id)
    else if (state !== 'missing') documentTroubles.set(id, state.why)
  }
  return { documents, documentTroubles }
}

function stateOf(file: string, folder: string, allowOutside: boolean): 'found' | 'missing' | { readonly why: string } {
  const path = file.includes('\0') ? undefined : resolveInside(folder, file, allowOutside)
  if (path === undefined) return 'missing'
  let handle: number | undefined
  try {
    handle = openRegular(path, LARGEST_DOCUMENT_BYTES)
    const start = Buffer.alloc(MARK_WITHIN)
    readSync(handle, start, 0, MARK_WITHIN, 0)
    return start.includes('%PDF-') ? 'found' : { why: 'it is no PDF by its first bytes' }
  } catch (error) {
    const says = error instanceof FileTrouble ? error.message : 'cannot be read'
    if (says.startsWith('no such file')) return 'missing'
    return { why: /^(?:is|lies|cannot) /u.test(says) ? `it ${says}` : says }
  } finally {
    if (handle !== undefined) closeSync(handle)
  }
}
