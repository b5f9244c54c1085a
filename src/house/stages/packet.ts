import { packetGaps, wallFindings, type PacketInput } from '../../drawings/index.js'
import type { WiringValues } from '../../electrical/index.js'
import type { Project } from '../../project/index.js'
import type { Arrangement } from '../../roof/index.js'
import type { MountValues } from '../../structure/index.js'
import { sortFindings, StageError, Worksheet, type Finding, type Result } from '../../worksheet/index.js'

/** What the person decides of a packet. */
export type PacketWishes = Pick<PacketInput, 'size' | 'documents' | 'threeLine'>

/** What the sheets are drawn from. A stage that could not run stands with its reason. */
export interface PacketNeeds {
  readonly arrangement: Result<Arrangement>
  readonly mounts: Result<MountValues> | StageError
  readonly wire: Result<WiringValues> | StageError
}

/** What the sheets of the permit packet are drawn from, with all findings; what cannot run is one of them. */
export function packetFrom(
  project: Project,
  { arrangement, mounts, wire: wiring }: PacketNeeds,
  { size, documents, threeLine }: PacketWishes,
): Omit<PacketInput, 'draft'> {
  const parts: Omit<PacketInput, 'draft' | 'findings'> = {
    project,
    size,
    arrangement,
    mounts: mounts instanceof StageError ? undefined : mounts,
    wire: wiring instanceof StageError ? undefined : wiring,
    documents,
    threeLine,
  }
  const findings = [
    ...packetGaps(parts),
    ...wallFindings(project),
    ...arrangement.findings,
    ...told('structure', project.structure, mounts),
    ...told('electrical', project.electrical, wiring),
  ]
  return { ...parts, findings: sortFindings(findings) }
}

function told(stage: string, part: unknown, result: Result<unknown> | StageError): readonly Finding[] {
  if (!(result instanceof StageError)) return result.findings
  const { where, message, fix } = result
  const what = part === undefined ? `the project has no part ${stage}` : message
  return [{ severity: 'error', id: `permit.${stage}-cannot-run`, message: what, where, fix }]
}

/** What the packet still lacks. That is no fault of the design: it stops the packet and is a warning here. */
export function permitGaps(project: Project, arrangement: Result<Arrangement>): Result<object> {
  const worksheet = new Worksheet()
  for (const gap of packetGaps({ project, arrangement })) {
    worksheet.find({ ...gap, severity: gap.severity === 'error' ? 'warning' : gap.severity })
  }
  for (const finding of wallFindings(project)) worksheet.find(finding)
  return worksheet.result({})
}
