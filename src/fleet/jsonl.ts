import { cleanJson } from '../report/index.js'
import { envelopeOf, inEnvelope } from '../seal/index.js'
import type { FleetOutcome } from './types.js'

export const FLEET_FORMAT = 'gablewatt-fleet/2'

/** What the lines of a fleet have in common. */
export interface FleetIdentity {
  /** `gablewatt 0.1.0` */
  readonly tool: string
  /** Fingerprint of the build, the stages, the template, and names and values of all houses. */
  readonly fleet: string
  /** Number of projects of the whole fleet, that a shard is a part of. */
  readonly rows: number
}

/** A project as one line of JSON in its envelope: the same in the same fleet, whatever machine or shard it ran on. */
export function jsonLine(outcome: FleetOutcome, { tool, fleet, rows }: FleetIdentity): string {
  const { index, name, from, title, digest, extra, status, problems, stages, findings, files } = outcome
  const data = {
    fleet: { id: fleet, row: index + 1, rows },
    name,
    from,
    title,
    digest,
    extra,
    status,
    problems,
    stages,
    findings,
    files,
  }
  return `${cleanJson(JSON.stringify(inEnvelope(envelopeOf(FLEET_FORMAT, tool, 'fleet-line'), data)))}\n`
}
