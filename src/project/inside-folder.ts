import { realpathSync } from 'node:fs'
import { isAbsolute, relative, resolve, sep } from 'node:path'

/**
 * Finds the file that a reference means, and refuses one that leads out of the project's folder.
 *
 * @param reference Path as written in the project.
 * @returns The absolute path, or undefined when it lies outside: by `..`, as an absolute path, or over a symbolic link.
 */
export function resolveInside(folder: string, reference: string, allowOutside: boolean): string | undefined {
  const path = resolve(folder, reference)
  if (allowOutside) return path
  const real = realPath(path)
  if (real === undefined) return contains(resolve(folder), path) ? path : undefined
  return contains(realPath(folder) ?? resolve(folder), real) ? real : undefined
}

function contains(folder: string, path: string): boolean {
  const way = relative(folder, path)
  return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way)
}

/** The path with every symbolic link followed, or undefined when nothing is there. */
function realPath(path: string): string | undefined {
  try {
    return realpathSync(path)
  } catch {
    return undefined
  }
}
