import type { Project } from '../../project/index.js'
import { CALIFORNIA_DAYS, COOLING_OFF, type RuleSet } from '../../tables/papers/index.js'
import type { Source } from '../../worksheet/index.js'
import { lastDayToCancel } from './last-day.js'
import type { Cancellation } from './proposal-values.js'

/** The longest right to cancel that follows from what is stated; null where where it is sold is not stated, or gives none. */
export function cancellationOf(project: Project, ruleSet: RuleSet, priceUsd: number): Cancellation | null {
  const { proposal } = project
  const right = rightOf(proposal ?? {}, ruleSet, priceUsd)
  if (right === undefined) return null
  const signed = proposal?.signing_date
  return {
    business_days: right.days,
    last_day: signed === undefined ? null : lastDayToCancel(signed, right.days),
    source: `${right.source.document} (${right.source.standing})`,
  }
}

type Stated = NonNullable<Project['proposal']>

function rightOf(
  { sold_at: place, customer_65_or_older: older, disaster_repair: disaster }: Stated,
  ruleSet: RuleSet,
  priceUsd: number,
): { readonly days: number; readonly source: Source } | undefined {
  const { businessDays: days, source } = COOLING_OFF
  if (ruleSet === 'california') {
    if (disaster === true) return { days: CALIFORNIA_DAYS.disaster, source: CALIFORNIA_DAYS.source }
    if (older === true) return { days: CALIFORNIA_DAYS.older, source: CALIFORNIA_DAYS.source }
    return { days, source: CALIFORNIA_DAYS.source }
  }
  if (ruleSet === 'nevada') return { days, source }
  if (place === 'home' && priceUsd >= COOLING_OFF.homeUsd) return { days, source }
  if (place === 'temporary_place' && priceUsd >= COOLING_OFF.temporaryPlaceUsd) return { days, source }
  return undefined
}
