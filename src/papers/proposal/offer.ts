import type { Arrangement } from '../../roof/index.js'
import type { Project } from '../../project/index.js'
import type { PaybackValues } from '../../money/index.js'
import type { YieldValues } from '../../yield/index.js'
import type { RuleSetFacts } from '../../tables/papers/index.js'
import type { Speaker } from '../words/index.js'
import type { ProposalValues } from './proposal-values.js'

/** All that the sections of a proposal are written from. */
export interface Offer {
  readonly project: Project
  readonly stated: NonNullable<Project['proposal']>
  readonly values: ProposalValues
  readonly arrangement: Arrangement
  readonly payback: PaybackValues
  readonly yield: YieldValues
  readonly rules: RuleSetFacts
  /** The installer's own terms, undefined when none are stated. */
  readonly terms: string | undefined
  readonly say: Speaker
  /** More about the customer, as label and text. */
  readonly customer?: readonly (readonly [label: string, text: string])[]
  /** Height of running text, points. */
  readonly textPt: number
}

/** `Name, address, telephone` of a party, undefined when it is not stated. */
export function partyText(party: NonNullable<Project['parties']>['owner'], say: Speaker): string | undefined {
  if (party === undefined) return undefined
  const { name, address, phone, email, license } = party
  const licence = license === undefined ? undefined : say.text('licence', { licence: license })
  return [name, address, phone, email, licence].filter((part) => part !== undefined && part !== '').join(', ')
}
