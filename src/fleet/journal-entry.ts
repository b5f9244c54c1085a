import { envelopeOf, inEnvelope, standingOf } from '../seal/index.js'
import { line as validate } from './fleet-validators.generated.js'
import { jsonLine } from './jsonl.js'
import type { FleetItem, FleetOutcome } from './types.js'
import { parseJson } from '../values/index.js'

const FORMAT = 'gablewatt-fleet-journal/1'

/** How every line of a journal begins. */
export const BEGINNING = '{"format":"gablewatt-fleet-journal/'

/** A project that is done. */
export interface Entry {
  readonly key: string
  /** Stamps of the files that it was made from. */
  readonly inputs: readonly string[]
  readonly outcome: FleetOutcome
}

/** An entry that was read. */
export interface ReadEntry extends Entry {
  /** The build of the program that wrote it, where that is another. */
  readonly otherBuild: string | undefined
}

/** Whether a project is done: what a next try may mend is tried again, and no journal keeps it. */
export function isDone({ status }: FleetOutcome): boolean {
  return status === 'ok' || status === 'failed'
}

export function writeEntry(tool: string, { key, inputs, outcome }: Entry): string {
  return `${JSON.stringify(inEnvelope(envelopeOf(FORMAT, tool, 'fleet-line'), { key, inputs, outcome }))}\n`
}

/** @returns undefined for a line that is not what was written. */
export function readEntry(text: string): ReadEntry | undefined {
  try {
    const data: unknown = parseJson(text)
    if (typeof data !== 'object' || data === null) return undefined
    const { format, key, inputs, outcome } = data as Partial<Entry> & { readonly format?: unknown }
    const { isWhole, fits, otherBuild } = standingOf(data as Record<string, unknown>, 'fleet-line')
    if (format !== FORMAT || !isWhole) return undefined
    // What another build keeps may have another form; it is refused before anybody looks at it.
    if (!fits) return { key: '', inputs: [], outcome: NOTHING, otherBuild: otherBuild ?? 'without a name' }
    if (typeof key !== 'string' || !Array.isArray(inputs) || outcome === undefined) return undefined
    return inputs.every((input) => typeof input === 'string') && isOutcome(outcome)
      ? { key, inputs, outcome, otherBuild }
      : undefined
  } catch {
    return undefined
  }
}

const NOTHING: FleetOutcome = {
  index: 0,
  name: '',
  from: '',
  title: null,
  digest: null,
  extra: {},
  status: 'defect',
  problems: [],
  stages: {},
  findings: [],
  files: [],
  inputs: [],
}

/** Whether a line of `--jsonl` can be made of it. */
function isOutcome(outcome: FleetOutcome): boolean {
  const { items = [] } = outcome
  const line = jsonLine(outcome, { tool: 'gablewatt 0.0.0', fleet: '0'.repeat(32), rows: 1 })
  return (
    validate(JSON.parse(line)) &&
    isDone(outcome) &&
    Number.isInteger(outcome.index) &&
    Array.isArray(outcome.inputs) &&
    Array.isArray(items) &&
    items.every(isItem)
  )
}

function isItem(one: Partial<FleetItem> | null): boolean {
  return (
    typeof one?.item === 'string' &&
    typeof one.name === 'string' &&
    typeof one.group === 'string' &&
    typeof one.unit === 'string' &&
    Number.isFinite(one.quantity)
  )
}
