import { opendirSync } from 'node:fs'

/** Something in a folder; the name that the platform has for it is no part of the library's types. */
export interface FolderEntry {
  readonly name: string
  readonly isFile: () => boolean
  readonly isDirectory: () => boolean
  readonly isSymbolicLink: () => boolean
}

/** How many are asked for at a time. */
const AT_ONCE = 512

/**
 * What lies in a folder, in no order, one after the other, so that a folder of millions is never in memory as a whole.
 *
 * @throws what the system says, such as that there is no such folder.
 */
export function* entriesIn(folder: string): Generator<FolderEntry> {
  const open = opendirSync(folder, { bufferSize: AT_ONCE })
  try {
    for (let entry = open.readSync(); entry !== null; entry = open.readSync()) yield entry
  } finally {
    open.closeSync()
  }
}

/** The same at once; one more than `most` where there are more, and nothing beyond is looked at. */
export function entriesUpTo(folder: string, most: number): FolderEntry[] {
  const entries: FolderEntry[] = []
  for (const entry of entriesIn(folder)) {
    entries.push(entry)
    if (entries.length > most) break
  }
  return entries
}
