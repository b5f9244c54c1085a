import { sayBuild, standingOf } from '../seal/index.js'
import { line as validate } from './fleet-validators.generated.js'
import { FLEET_FORMAT } from './jsonl.js'
import type { FleetOutcome } from './types.js'
import { DoubtfulJson, parseJson } from '../values/index.js'

/** A line of `--jsonl` that was read. */
export interface FleetLine extends Omit<FleetOutcome, 'index' | 'items' | 'inputs'> {
  readonly tool: string
  readonly build: string
  readonly fleet: { readonly id: string; readonly row: number; readonly rows: number }
}

/** A line as it was written, or why it is none. */
export type ReadFleetLine = { readonly line: FleetLine } | { readonly trouble: string }

export function readFleetLine(text: string): ReadFleetLine {
  let data: unknown
  try {
    data = parseJson(text)
  } catch (error) {
    if (error instanceof DoubtfulJson) return { trouble: `not as it was written: JSON ${error.message}` }
    return { trouble: 'not JSON; a part is what run-fleet --jsonl wrote' }
  }
  if (typeof data !== 'object' || data === null || Array.isArray(data)) {
    return { trouble: 'no line of run-fleet --jsonl' }
  }
  const content = data as Record<string, unknown>
  const { format, build } = content
  if (typeof format !== 'string' || !format.startsWith('gablewatt-fleet/')) {
    return { trouble: 'no line of run-fleet --jsonl' }
  }
  if (format !== FLEET_FORMAT) return { trouble: `its format is '${format}', this program reads '${FLEET_FORMAT}'` }
  const { isWhole, fits } = standingOf(content, 'fleet-line')
  if (!isWhole) return { trouble: 'not as it was written: its seal does not fit, so that it was damaged or changed' }
  if (!fits) return { trouble: `it has another form, as ${sayBuild(String(build))} of the program wrote it` }
  if (!validate(content)) return { trouble: `a damaged line, at ${validate.errors?.[0]?.instancePath ?? ''}/` }
  return { line: content as unknown as FleetLine }
}
