import type { LoadedProject } from './load-project.js'

/** Where a value stands: `project.yaml:12:7`, or the `--set` that made it. */
export function placeText(loaded: LoadedProject, path: string): string {
  const place = loaded.locate(path)
  return 'override' in place ? place.override : `${place.file}:${place.line}:${place.column}`
}
