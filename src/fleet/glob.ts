import { readdirSync, type Dirent } from 'node:fs'
import { join } from 'node:path'

/** Whether a text has characters that only a pattern has; a shell has often expanded them already. */
export function isPattern(text: string): boolean {
  return /[*?[\]{}]/u.test(text)
}

/**
 * Files that a pattern names, sorted: `*` and `?` within a folder, `**` for any folders, `[ab]`, `{east,west}`.
 * Names that begin with a dot match only a pattern that does.
 */
export function expandPattern(pattern: string): string[] {
  const found = expandBraces(pattern).flatMap((plain) => {
    const isAbsolute = plain.startsWith('/')
    const segments = plain.split('/').filter((segment) => segment !== '' && segment !== '.')
    return [...walk(isAbsolute ? '/' : '', segments)]
  })
  return [...new Set(found)].toSorted()
}

function* walk(folder: string, segments: readonly string[]): Generator<string> {
  const [segment, ...rest] = segments
  if (segment === undefined) return
  if (segment === '..') {
    yield* walk(join(folder, '..'), rest)
    return
  }
  if (segment === '**') {
    yield* walk(folder, rest)
    for (const entry of entriesOf(folder)) {
      if (entry.isDirectory() && !entry.name.startsWith('.')) yield* walk(join(folder, entry.name), segments)
    }
    return
  }
  const matches = matcher(segment)
  for (const entry of entriesOf(folder)) {
    if (!matches(entry.name)) continue
    const path = join(folder, entry.name)
    if (rest.length > 0) {
      if (!entry.isFile()) yield* walk(path, rest)
    } else if (!entry.isDirectory()) yield path
  }
}

function entriesOf(folder: string): Dirent[] {
  try {
    return readdirSync(folder === '' ? '.' : folder, { withFileTypes: true })
  } catch {
    return []
  }
}

function matcher(segment: string): (name: string) => boolean {
  const source = [...segment.matchAll(/\*+|\?|\[[^\]]*\]|[^*?[]+|\[/gu)].map(([part]) => partSource(part)).join('')
  const pattern = new RegExp(`^${source}$`, 'u')
  return (name) => (!name.startsWith('.') || segment.startsWith('.')) && pattern.test(name)
}

function partSource(part: string): string {
  if (part.startsWith('*')) return '.*'
  if (part === '?') return '.'
  const list = /^\[([!^]?)([^\]]+)\]$/u.exec(part)
  if (list !== null) return `[${list[1] === '' ? '' : '^'}${(list[2] ?? '').replaceAll(/[\\^\][]/gu, '\\$&')}]`
  return part.replaceAll(/[.*+?^${}()|[\]\\/]/gu, '\\$&')
}

function expandBraces(pattern: string): string[] {
  const found = /^(.*?)\{([^{}]*)\}(.*)$/u.exec(pattern)
  if (found === null) return [pattern]
  const [, before = '', inside = '', after = ''] = found
  return inside.split(',').flatMap((choice) => expandBraces(`${before}${choice}${after}`))
}
