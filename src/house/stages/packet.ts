import { packetGaps, wallFindings, type PacketInput, type PaperName } from '../../drawings/index.js'
import { existingHouseFindings, type WiringValues } from '../../electrical/index.js'
import { readAuthority, type Authority, type Project } from '../../project/index.js'
import type { HouseInput } from '../house-input.js'
import type { Arrangement } from '../../roof/index.js'
import type { MountValues } from '../../structure/index.js'
import { sortFindings, StageError, Worksheet, type Finding, type Result } from '../../worksheet/index.js'

/** What the person decides of a packet. */
export type PacketWishes = Pick<PacketInput, 'documents' | 'threeLine'> & {
  /** That of the authority's file when left out, else 11x17. */
  readonly size?: PaperName | undefined
}

/** What the sheets are drawn from. A stage that could not run stands with its reason. */
export interface PacketNeeds {
  readonly arrangement: Result<Arrangement>
  readonly mounts: Result<MountValues> | StageError
  readonly wire: Result<WiringValues> | StageError
}

/**
 * What the authority of a project asks, undefined when the project names no file of it.
 *
 * @throws ProjectError with every problem of the file.
 */
export function projectAuthority({ project, files }: HouseInput): Authority | undefined {
  const name = project.permit?.authority
  const text = name === undefined ? undefined : files?.get(name)
  return name === undefined || text === undefined ? undefined : readAuthority(name, text)
}

/** The project with what its authority asks of codes and lettering; what the project states of the latter wins. */
export function withAuthority(project: Project, authority: Authority | undefined): Project {
  if (authority === undefined) return project
  const { local_amendments: amendments = [], least_text_in: leastTextIn } = authority
  const stated = project.codes?.local_amendments ?? []
  const local = [...stated, ...amendments.filter((each) => !stated.includes(each))]
  return {
    ...project,
    ...(local.length === 0 ? {} : { codes: { ...project.codes, local_amendments: local } }),
    ...(leastTextIn === undefined ? {} : { drawings: { least_text_in: leastTextIn, ...project.drawings } }),
  }
}

/** What the sheets of the permit packet are drawn from, with all findings; what cannot run is one of them. */
export function packetFrom(
  input: HouseInput,
  { arrangement, mounts, wire: wiring }: PacketNeeds,
  { size, documents, threeLine }: PacketWishes,
): Omit<PacketInput, 'draft'> {
  const authority = projectAuthority(input)
  const project = withAuthority(input.project, authority)
  const parts: Omit<PacketInput, 'draft' | 'findings'> = {
    project,
    size: size ?? authority?.paper ?? '11x17',
    authority,
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
    ...existingHouseFindings(project),
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
  for (const finding of existingHouseFindings(project)) worksheet.find(finding)
  for (const gap of packetGaps({ project, arrangement })) {
    worksheet.find({ ...gap, severity: gap.severity === 'error' ? 'warning' : gap.severity })
  }
  for (const finding of wallFindings(project)) worksheet.find(finding)
  return worksheet.result({})
}
