import type { Override } from './override.js'
import { isWithin, splitPath } from './path.js'

/**
 * Markers that still count: a value that `--set` states for a run is not made up in it. A marker on a map or a list stands
 * for all that lies under it, until the whole of it is stated.
 *
 * @param paths Dotted paths.
 */
export function stillMadeUp(paths: readonly string[], overrides: readonly Pick<Override, 'segments'>[]): string[] {
  return [...new Set(paths)].filter((path) => !overrides.some(({ segments }) => isWithin(splitPath(path), segments)))
}
