import { statSync } from 'node:fs'
import { decodeText, LARGEST_BASELINE_BYTES, MOST_BASELINE_MARKS, readBytes } from '../project/index.js'
import { checkJson, DoubtfulJson, own, parseJson, TooMuchJson } from '../values/index.js'
import { envelopeOf, inEnvelope, standingOf } from '../seal/index.js'
import { FleetError, fileTrouble } from './fleet-error.js'
import { baseline as validate } from './fleet-validators.generated.js'
import type { Figures, FleetOutcome } from './types.js'

export const BASELINE_FORMAT = 'gablewatt-fleet-baseline/3'

const ANEW = 'write it anew with --update-baseline, once the figures of this run have been looked at'

/** Figures of a project by stage. The stage `project` holds how it went. */
export type ProjectFigures = Readonly<Record<string, Figures>>

export type Baseline = ReadonlyMap<string, ProjectFigures>

/** A baseline that was read. */
export interface SavedBaseline {
  readonly projects: Baseline
  /** The build of the program that saved it, where that is another. */
  readonly otherBuild: string | undefined
}

/** What a baseline keeps of a project: figures, how it went, and the errors and warnings of every stage. */
export function baselineFigures(outcome: FleetOutcome): ProjectFigures {
  const figures: Record<string, Figures> = { project: { status: outcome.status } }
  for (const [stage, values] of Object.entries(outcome.stages)) figures[stage] = values
  const told = new Map<string, string[]>()
  for (const { stage, severity, id } of outcome.findings) {
    if (severity !== 'note') told.set(stage, [...(told.get(stage) ?? []), `${severity} ${id}`])
  }
  for (const [stage, lines] of told) {
    figures[stage] = { ...own(figures, stage), findings: [...new Set(lines)].toSorted().join('; ') }
  }
  return figures
}

/** What a baseline may hold, so that it can be read again. */
const BOUNDS = { bytes: LARGEST_BASELINE_BYTES, marks: MOST_BASELINE_MARKS }

/**
 * A baseline as a file, sealed: a line a value, so that a version control system shows what moved.
 *
 * @throws FleetError when it would be more than is read of one.
 */
export function writeBaseline(baseline: Baseline, tool: string, bounds = BOUNDS): string {
  const fix = 'run the fleet in parts with --shard, each with a baseline of its own, or with fewer --stages'
  const refuse = (bytes: number): FleetError => {
    const size = `${baseline.size} houses have more than ${Math.floor(bytes / 1e6)} MB of figures`
    return new FleetError(
      `no baseline is written: ${size}, and at most ${bounds.bytes / 1e6} MB are read again; ${fix}`,
      2,
    )
  }
  // Before the text is made, which may be longer than the engine takes.
  let least = 0
  for (const [name, figures] of baseline) {
    least += name.length + JSON.stringify(figures).length
    if (least > bounds.bytes) throw refuse(least)
  }
  const projects = Object.fromEntries([...baseline].toSorted(([a], [b]) => (a < b ? -1 : 1)))
  const envelope = envelopeOf(BASELINE_FORMAT, tool, 'fleet-baseline')
  const text = `${JSON.stringify(inEnvelope(envelope, { projects }), null, 1)}\n`
  const bytes = Buffer.byteLength(text)
  if (bytes > bounds.bytes) throw refuse(bytes)
  try {
    checkJson(text, bounds.marks)
  } catch (error) {
    if (!(error instanceof TooMuchJson)) throw error
    throw new FleetError(`no baseline is written: it would have ${error.message}, which are not read again; ${fix}`, 2)
  }
  return text
}

/**
 * Reads the figures of a saved run.
 *
 * @param replace Whether this run replaces it: one of an older format, or a damaged one, is then taken as none.
 * @returns undefined when there is no such file.
 * @throws FleetError when it cannot be read, is no baseline, or not what was written.
 */
export function readBaseline(path: string, replace = false): SavedBaseline | undefined {
  let text: string
  try {
    if (statSync(path, { throwIfNoEntry: false }) === undefined) return undefined
    text = decodeText(readBytes(path, LARGEST_BASELINE_BYTES))
  } catch (error) {
    throw fileTrouble('read', path, error)
  }
  const refuse = (why: string): FleetError => new FleetError(`${path}: ${why}`, 2)
  let data: unknown
  try {
    data = parseJson(text, MOST_BASELINE_MARKS)
  } catch (error) {
    if (error instanceof TooMuchJson) throw refuse(`${error.message}; a baseline of 100000 houses has fewer`)
    if (error instanceof DoubtfulJson && replace) return undefined
    if (error instanceof DoubtfulJson) throw refuse(`JSON ${error.message}; ${ANEW}`)
    throw refuse('not JSON; a baseline is what --update-baseline writes: remove the file and write it anew with that')
  }
  const format = isMap(data) ? data['format'] : undefined
  if (!isMap(data) || typeof format !== 'string' || !format.startsWith('gablewatt-fleet-baseline/')) {
    throw refuse('no baseline; a baseline is what --update-baseline writes')
  }
  let otherBuild: string | undefined
  const why = ((): string | undefined => {
    if (format !== BASELINE_FORMAT) return `its format is '${format}', this program reads '${BASELINE_FORMAT}'`
    if (!validate(data)) return `a damaged baseline, at ${validate.errors?.[0]?.instancePath ?? ''}/`
    // What has another shape is not sealed anew for nothing.
    const standing = standingOf(data, 'fleet-baseline')
    otherBuild = standing.otherBuild
    if (!standing.isWhole) {
      return 'not as it was written: its seal does not fit, so that it was damaged or changed by hand'
    }
    return standing.fits ? undefined : 'its figures have another form, as another build of the program saved it'
  })()
  if (why === undefined) {
    const projects = new Map(Object.entries(data['projects'] as Record<string, ProjectFigures>))
    return { projects, otherBuild }
  }
  if (replace) return undefined
  throw refuse(`${why}; ${ANEW}`)
}

function isMap(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
