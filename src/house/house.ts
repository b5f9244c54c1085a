import type { AuditValues, PacketInput, RequiredLabel } from '../drawings/index.js'
import type { WiringValues } from '../electrical/index.js'
import type { ReviewValues, WorkPlanValues } from '../fieldwork/index.js'
import type { BomInput, BomValues, PriceList } from '../materials/index.js'
import type { PaybackValues, ProjectSizeValues, SavingsValues } from '../money/index.js'
import type { Arrangement } from '../roof/index.js'
import type { MountValues } from '../structure/index.js'
import type { Result } from '../worksheet/index.js'
import type { YieldRun, YieldValues } from '../yield/index.js'
import type { LayoutValue } from './stages/layouts.js'
import type { PacketWishes } from './stages/packet.js'
import type { MeasuredProduction } from './stages/review.js'

/**
 * The stages of one house, each under the name that it has in JSON, in `--use`, in a check and in a fleet. A stage is
 * worked out when it is first asked for, with those that it needs, and never again; its trade is loaded then too. Each
 * rejects with a StageError when a safety input is missing or a case is not covered.
 */
export interface House {
  /** The modules on the roof. */
  readonly roof: () => Promise<Result<Arrangement>>
  /** The energy estimate with everything behind it. */
  readonly estimate: () => Promise<YieldRun>
  /** The energy estimate, kWh. */
  readonly yield: () => Promise<Result<YieldValues>>
  /** Conductors, raceways, breakers, grounds and panel. */
  readonly wire: () => Promise<Result<WiringValues>>
  /** Mounts and rails, with their own proof alone: for stages that hold the arrangement beside them. */
  readonly ownMounts: () => Promise<Result<MountValues>>
  /** Mounts and rails, with the proof of the arrangement before their own. */
  readonly mounts: () => Promise<Result<MountValues>>
  /** The layouts of fitted arrays beside each other, the chosen one first; none where there is no other. */
  readonly layouts: () => Promise<readonly LayoutValue[]>
  /** Labels that the wiring asks for. */
  readonly labels: () => Promise<readonly RequiredLabel[]>
  /** The price list that the project names, undefined when it names none. Rejects with ProjectError when it is wrong. */
  readonly prices: () => Promise<PriceList | undefined>
  /** What the bill of materials is taken from, but the prices: the stages whose parts the project has. */
  readonly takeOff: () => Promise<BomInput>
  /** The bill of materials with the project's price list, USD. */
  readonly bom: () => Promise<Result<BomValues>>
  /** The twelve bills of the utility without and with the system, USD. */
  readonly bill: () => Promise<Result<SavingsValues>>
  /** At the wished price, else the project's, else that of the bill that was given or wished. */
  readonly payback: () => Promise<Result<PaybackValues>>
  /** What each number of modules is worth. */
  readonly size: () => Promise<Result<ProjectSizeValues>>
  /** What the permit packet still lacks, as warnings. */
  readonly permit: () => Promise<Result<object>>
  /** What the sheets of the permit packet are drawn from; a stage that cannot run is a finding. */
  readonly packet: (wishes: PacketWishes) => Promise<Omit<PacketInput, 'draft'>>
  /** The drawn packet held against what its reviewer asks for. */
  readonly audit: (wishes: PacketWishes) => Promise<Result<AuditValues>>
  /** The work in order, with the numbers to hold to; a stage that cannot run leaves its steps without. */
  readonly work: () => Promise<Result<WorkPlanValues>>
  /** Whether measured energy, kWh, is what those days should give. Rejects with ProjectError when the table is wrong. */
  readonly output: (measured: MeasuredProduction) => Promise<Result<ReviewValues>>
}
