import type { StatedDocument } from '../project/facts.js'
import type { WiringValues } from '../electrical/index.js'
import type { Authority, Project, ReviewComments } from '../project/index.js'
import type { Arrangement } from '../roof/index.js'
import type { MountValues } from '../structure/index.js'
import type { Finding, Result } from '../worksheet/index.js'
import type { PaperName } from './layout/index.js'

/** A document of the person that follows the drawings. */
export interface AppendedDocument {
  readonly path: string
  readonly pages: number
  readonly id?: string | undefined
  readonly title?: string | undefined
  /** Year-month-day. */
  readonly date?: string | undefined
  readonly kind?: StatedDocument['kind']
  /** Equipment that it is the sheet of: `modules.m410`. */
  readonly items?: readonly string[] | undefined
}

/** Everything that the packet is drawn from. A stage that could not run is left out and stands among the findings. */
export interface PacketInput {
  readonly project: Project
  readonly size: PaperName
  readonly draft: boolean
  /** Whether a three-line diagram was asked for beside the project's own wish. */
  readonly threeLine?: boolean | undefined
  readonly arrangement: Result<Arrangement>
  readonly mounts?: Result<MountValues> | undefined
  readonly wire?: Result<WiringValues> | undefined
  readonly documents: readonly AppendedDocument[]
  /** What the authority asks, when the project names a file of it. */
  readonly authority?: Authority | undefined
  /** What a plan reviewer commented, with the answers. */
  readonly comments?: ReviewComments | undefined
  /** What is wrong or missing, of all stages and of the packet itself. */
  readonly findings: readonly Finding[]
}
