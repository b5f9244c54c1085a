import { readFileSync } from 'node:fs'
import { own } from '../values/index.js'
import { FleetError, fileTrouble } from './fleet-error.js'
import type { Figures, FleetOutcome } from './types.js'

export const BASELINE_FORMAT = 'gablewatt-fleet-baseline/1'

/** Figures of a project by stage. The stage `project` holds how it went. */
export type ProjectFigures = Readonly<Record<string, Figures>>

export type Baseline = ReadonlyMap<string, ProjectFigures>

/** What a baseline keeps of a project: figures, how it went, and the errors and warnings of every stage. */
export function baselineFigures(outcome: FleetOutcome): ProjectFigures {
  const figures: Record<string, Figures> = { project: { status: outcome.status } }
  for (const [stage, values] of Object.entries(outcome.stages)) figures[stage] = values
  const told: Record<string, string[]> = {}
  for (const { stage, severity, id } of outcome.findings) {
    if (severity !== 'note') (told[stage] ??= []).push(`${severity} ${id}`)
  }
  for (const [stage, lines] of Object.entries(told)) {
    figures[stage] = { ...own(figures, stage), findings: [...new Set(lines)].toSorted().join('; ') }
  }
  return figures
}

/** A baseline as a file: a line a value, so that a version control system shows what moved. */
export function writeBaseline(baseline: Baseline): string {
  const projects = Object.fromEntries([...baseline].toSorted(([a], [b]) => (a < b ? -1 : 1)))
  return `${JSON.stringify({ format: BASELINE_FORMAT, projects }, null, 1)}\n`
}

/**
 * Reads the figures of a saved run.
 *
 * @returns undefined when there is no such file.
 * @throws FleetError when it cannot be read or is no baseline.
 */
export function readBaseline(path: string): Baseline | undefined {
  let text: string
  try {
    text = readFileSync(path, 'utf8')
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return undefined
    throw fileTrouble('read', path, error)
  }
  const refuse = (why: string): FleetError => new FleetError(`${path}: ${why}`, 2)
  let data: unknown
  try {
    data = JSON.parse(text)
  } catch {
    throw refuse('not JSON; a baseline is what --update-baseline writes')
  }
  if (!isMap(data) || data['format'] !== BASELINE_FORMAT) {
    throw refuse(`no baseline of format '${BASELINE_FORMAT}'; write it anew with --update-baseline`)
  }
  const projects = data['projects']
  if (
    !isMap(projects) ||
    !Object.values(projects).every((stages) => isMap(stages) && Object.values(stages).every(isMap))
  ) {
    throw refuse('a damaged baseline; write it anew with --update-baseline')
  }
  return new Map(Object.entries(projects as Record<string, ProjectFigures>))
}

function isMap(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
