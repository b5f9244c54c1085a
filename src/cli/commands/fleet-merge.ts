import { checkTarget, growingFile } from '../../files/index.js'
import { mergeParts, type MergedParts } from '../../fleet/index.js'
import { cleanLine } from '../../report/index.js'
import { UsageError } from '../errors.js'
import { writeErr, writeOut } from '../streams.js'
import { outFile, type FleetOptions } from './fleet-options.js'

/** Options that mean something for the joining of parts; all others are of their making. */
const MEANT = new Set(['merge', 'jsonl', 'target', 'force', 'color', 'quiet', 'set'])

/** What the exit code of a fleet follows from. */
export interface Joined {
  readonly projects: MergedParts['rows']
  readonly worst: MergedParts['worst']
  readonly hasMoved: boolean
}

/**
 * `--merge`: the parts that shards wrote as one file of lines, in the order of the fleet.
 *
 * @throws UsageError when another option is given, FleetError when the parts do not fit together.
 */
export function mergeFleet(paths: readonly string[], options: FleetOptions): Joined {
  const other = Object.entries(options).find(([key, value]) => !MEANT.has(key) && value !== undefined)
  if (other !== undefined || options.set.length > 0) {
    throw new UsageError(
      '--merge joins lines that are worked out already; it goes with --out, --force and --quiet only',
    )
  }
  const { force = false, quiet } = options
  const path = outFile(options)
  if (path !== undefined) checkTarget(path, force)
  const parts = mergeParts(paths)
  try {
    const target = path === undefined ? undefined : growingFile(path, force)
    try {
      for (const line of parts.lines()) {
        if (target === undefined) writeOut(line)
        else target.write(line)
      }
      target?.finish()
    } catch (error) {
      target?.abandon()
      throw error
    }
  } finally {
    parts.close()
  }
  const { rows, worst, files } = parts
  const count = (status: string): number => rows.filter((row) => row.status === status).length
  if (quiet !== true) {
    const [ok, failed] = [count('ok'), count('failed')]
    const where = path === undefined ? '' : `wrote ${cleanLine(path)}: `
    writeErr(
      `${where}${rows.length} houses of ${files} files; ${ok} pass, in ${failed} a check fails, ${rows.length - ok - failed} not usable\n`,
    )
  }
  return { projects: rows, worst, hasMoved: false }
}
