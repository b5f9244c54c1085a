import { resolve } from 'node:path'
import { digest } from './digest.js'
import { FleetError } from './fleet-error.js'
import type { FleetRequest } from './fleet-request.js'
import { FLEET_STAGES } from './stages.js'
import { toolName } from './tool-name.js'

/**
 * What is written: for every project JSON of each stage, the shopping list, the permit packet, the papers that people are
 * handed; for all of them one price list.
 */
export const FILE_KINDS = [
  'results',
  'bom',
  'packet',
  'proposal',
  'proposal-html',
  'application',
  'handover',
  'price-list',
] as const
export type FleetFileKind = (typeof FILE_KINDS)[number]

/** Names of all files that are written into the output folder. */
export const FILE_NAMES: ReadonlySet<string> = new Set([
  ...FLEET_STAGES.map(({ name }) => `${name}.json`),
  'bom.csv',
  'packet.pdf',
  'proposal.pdf',
  'proposal.html',
  'application.pdf',
  'handover.pdf',
  'price-list.yaml',
])

/** Everything that a worker needs to know beside the project. */
export interface FleetPlan {
  readonly tool: string
  /** Names of the stages to run; undefined: all that a project has the parts for. */
  readonly stages: readonly string[] | undefined
  readonly allowOutside: boolean
  readonly outputFolder: string | undefined
  readonly write: readonly FleetFileKind[]
  /** Whether files in the output folder may be replaced. */
  readonly force: boolean
  /** Whether documents of the projects are opened in a thread with limits of memory and time. */
  readonly confined?: boolean | undefined
  /** Whether a defect is told with its stack. */
  readonly showStack?: boolean | undefined
}

/**
 * All that decides what is done with every project.
 *
 * @throws FleetError when a stage or a kind of file has another name.
 */
export function planOf({
  tool,
  stages,
  allowOutside,
  output,
  replace,
  journal,
  confined,
  showStack,
}: FleetRequest): FleetPlan {
  const known = FLEET_STAGES.map(({ name }) => name)
  return {
    tool: tool ?? toolName(),
    stages: stages === undefined ? undefined : named('--stages', stages, known),
    allowOutside: allowOutside === true,
    outputFolder: output === undefined ? undefined : resolve(output.folder),
    write: named('--write', output?.write ?? ['results'], FILE_KINDS),
    force: replace === true || journal?.resume === true,
    confined,
    showStack,
  }
}

/** A fingerprint of all of a plan that decides an outcome. */
export function identityOf(plan: FleetPlan): string {
  return digest([plan.tool, JSON.stringify({ ...plan, force: undefined, confined: undefined, showStack: undefined })])
}

function named<Name extends string>(option: string, names: readonly string[], known: readonly Name[]): Name[] {
  const list = names.map((name) => {
    const found = known.find((one) => one === name)
    if (found === undefined) {
      throw new FleetError(`${option}: there is no '${name}'; there are ${known.join(', ')}`, 2)
    }
    return found
  })
  return [...new Set(list)]
}
