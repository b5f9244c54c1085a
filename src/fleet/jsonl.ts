import type { FleetOutcome } from './types.js'

export const FLEET_FORMAT = 'gablewatt-fleet/1'

/** A project as one line of JSON: the same for the same project, whatever machine or shard it ran on. */
export function jsonLine(outcome: FleetOutcome): string {
  const { name, from, title, digest, extra, status, problems, stages, findings, files } = outcome
  return `${escape(
    JSON.stringify({
      format: FLEET_FORMAT,
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
    }),
  )}\n`
}

/** What JSON allows but a terminal would obey. */
function escape(json: string): string {
  return json.replaceAll(
    /[\u007F-\u009F\u200B\u200E\u200F\u2028-\u202E\u2066-\u2069\uFEFF]/gu,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )
}
