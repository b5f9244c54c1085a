import { join } from 'node:path'
import { entriesUpTo, type FolderEntry } from '../files/index.js'
import { expandBraces } from './expand-braces.js'
import { LOOKED_AT, type LookedAt } from './looked-at.js'
import { badPattern, nameMatcher } from './match-name.js'

/** More folders than this are not looked through. */
const MOST_FOLDERS = 100_000
/** No path of a file is longer on common systems. */
const LONGEST_PATTERN = 4096

/** Whether a text has characters that only a pattern has; a shell has often expanded them already. */
export function isPattern(text: string): boolean {
  return /[*?[\]{}]/u.test(text)
}

/**
 * Files that a pattern names, sorted: `*` and `?` within a folder, `**` for any folders, `[ab]`, `{east,west}`.
 * Names that begin with a dot match only a pattern that does.
 *
 * @param bounds How much may be found and looked past.
 * @throws FleetError when the pattern is badly written, or finds or looks through too much.
 */
export function expandPattern(pattern: string, bounds = LOOKED_AT): string[] {
  if (pattern.length > LONGEST_PATTERN) throw badPattern(pattern, `it has more than ${LONGEST_PATTERN} characters`)
  const walk = new Walk(pattern, bounds)
  for (const plain of expandBraces(pattern)) walk.find(plain)
  return [...walk.found].toSorted()
}

/** What a segment of a pattern asks for: any folders, the one above, or names. */
type Segment = '**' | '..' | ((name: string) => boolean)

class Walk {
  readonly found = new Set<string>()
  readonly #pattern: string
  readonly #bounds: LookedAt
  #entryCount = 0
  readonly #entries = new Map<string, readonly FolderEntry[]>()

  constructor(pattern: string, bounds: LookedAt) {
    this.#pattern = pattern
    this.#bounds = bounds
  }

  find(plain: string): void {
    const segments = plain
      .split('/')
      .filter((segment) => segment !== '' && segment !== '.')
      // Any folders below any folders are any folders.
      .filter((segment, i, all) => segment !== '**' || all[i - 1] !== '**')
      .map((segment): Segment => {
        return segment === '**' || segment === '..' ? segment : nameMatcher(segment, this.#pattern)
      })
    // Each folder is looked at once for each segment, in however many ways it can be reached.
    const seen = segments.map(() => new Set<string>())
    const waiting: (readonly [folder: string, at: number])[] = [[plain.startsWith('/') ? '/' : '', 0]]
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      const [folder, at] = next
      if (seen[at] === undefined || seen[at].has(folder)) continue
      seen[at].add(folder)
      waiting.push(...this.#step(folder, segments, at))
    }
  }

  #step(folder: string, segments: readonly Segment[], at: number): (readonly [string, number])[] {
    const segment = segments[at]
    if (segment === undefined) return []
    if (segment === '..') return [[join(folder, '..'), at + 1]]
    if (segment === '**') {
      const below = this.#read(folder).filter((entry) => entry.isDirectory() && !entry.name.startsWith('.'))
      return [[folder, at + 1], ...below.map((entry) => [join(folder, entry.name), at] as const)]
    }
    const isLast = at === segments.length - 1
    const fitting = this.#read(folder).filter((entry) => segment(entry.name))
    if (!isLast) return fitting.filter((e) => !e.isFile()).map((entry) => [join(folder, entry.name), at + 1] as const)
    for (const entry of fitting) if (!entry.isDirectory()) this.found.add(join(folder, entry.name))
    if (this.found.size > this.#bounds.houses) {
      throw badPattern(this.#pattern, `more than ${this.#bounds.houses} files match it; name fewer`)
    }
    return []
  }

  #read(folder: string): readonly FolderEntry[] {
    const known = this.#entries.get(folder)
    if (known !== undefined) return known
    if (this.#entries.size >= MOST_FOLDERS) {
      throw badPattern(this.#pattern, `it looks through more than ${MOST_FOLDERS} folders; begin it with a folder`)
    }
    const entries = entriesOf(folder, this.#bounds.entries - this.#entryCount)
    this.#entryCount += entries.length
    if (this.#entryCount > this.#bounds.entries) {
      throw badPattern(this.#pattern, `it looks at more than ${this.#bounds.entries} files; begin it with a folder`)
    }
    this.#entries.set(folder, entries)
    return entries
  }
}

function entriesOf(folder: string, most: number): FolderEntry[] {
  try {
    return entriesUpTo(folder === '' ? '.' : folder, most)
  } catch {
    return []
  }
}
