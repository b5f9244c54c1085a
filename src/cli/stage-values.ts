import type { WiringValues } from '../electrical/index.js'
import type { CheckValues, LayoutValue, PartsValues } from '../house/index.js'
import type { BillComparison, BomValues } from '../materials/index.js'
import type { PaybackValues } from '../money/index.js'
import type { ApplicationValues, HandoverValues, ProposalValues } from '../papers/index.js'
import type { MountValues } from '../structure/index.js'
import type { Sweep, YieldValues } from '../yield/index.js'
import type { Scenario } from './commands/payback-versus.js'

/*
 * The values of results by stage. `npm run generate` makes a JSON Schema of each type of this file, and validators for
 * those that `--use` takes, so that a value that comes or goes changes them too.
 */

export type CheckStage = CheckValues

export interface YieldStage extends YieldValues {
  /** With --sweep. */
  readonly sweep?: Sweep
}

/** Values with money in them. */
interface Money {
  /** Label of all money, where the project states finance.currency; names of keys keep `usd`, and nothing is converted. */
  readonly currency?: string
}

export interface WireStage extends WiringValues, Money {}

export interface MountsStage extends MountValues, Money {
  /** With an array that is fitted to its rafters: its layouts beside each other, the chosen one first. */
  readonly alternatives?: readonly LayoutValue[]
}

export interface BomStage extends BomValues, Money {
  /** With --compare. */
  readonly comparison?: BillComparison & { readonly other: BomValues }
}

export interface ProposalStage extends ProposalValues, Money {}

export interface PaybackStage extends PaybackValues, Money {
  /** With --versus. */
  readonly versus?: readonly Scenario['values'][]
}

export interface ApplicationStage extends ApplicationValues, Money {}

export type HandoverStage = HandoverValues

export interface PartsStage extends PartsValues, Money {}
