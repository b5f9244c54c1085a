import type { SourceStanding } from '../../worksheet/index.js'
import type { Edition } from './editions.js'
import { carriedStanding, withCarried } from './edition-2026.js'

/**
 * How a rule adds up. B busbar rating, M device that protects the busbar, I sum of rated inverter output currents.
 * - current: M + 1.25 I <= share x B
 * - breakers: M + sum of PV breakers <= share x B
 * - breaker-sum: sum of all breakers but the main <= B, and M <= B
 * - feed-through: feed-through conductors carry M + 1.25 I, or a device protects them
 * - engineering: a study by an engineer; nothing to compute
 */
export type BusbarExpression = 'current' | 'breakers' | 'breaker-sum' | 'feed-through' | 'engineering'

/** One allowed way of connecting to a busbar. */
export interface BusbarRule {
  readonly edition: Edition
  readonly section: string
  readonly rule: string
  readonly expression: BusbarExpression
  /** Share of the busbar rating that may be reached; 1 where it does not enter. */
  readonly share: number
  /** Where the PV breaker must stand, or how the busbar must be fed. */
  readonly position: 'any' | 'opposite end' | 'centre-fed, either end'
  /** PV breakers that count in a `breakers` rule when several lie one behind the other. */
  readonly counts: 'first after the inverter' | 'at this busbar'
  /** Id of the label that the rule asks for. */
  readonly label: 'BACKFED_BREAKER' | 'SUM_RULE' | undefined
  readonly standing: SourceStanding
}

type Method = Pick<BusbarRule, 'rule' | 'expression' | 'share' | 'position' | 'counts' | 'label'>

const atThisBusbar = { counts: 'at this busbar', label: undefined } as const

/** The ways of connecting, whatever edition and section allow them. */
const METHODS = {
  allOfTheCurrents: { ...atThisBusbar, rule: '100 percent', expression: 'current', share: 1, position: 'any' },
  upTo120: {
    ...atThisBusbar,
    rule: '120 percent',
    expression: 'current',
    share: 1.2,
    position: 'opposite end',
    label: 'BACKFED_BREAKER',
  },
  sumOfBreakers: {
    ...atThisBusbar,
    rule: 'sum of breakers',
    expression: 'breaker-sum',
    share: 1,
    position: 'any',
    label: 'SUM_RULE',
  },
  centreFed: {
    ...atThisBusbar,
    rule: 'centre-fed dwelling panel',
    expression: 'current',
    share: 1.2,
    position: 'centre-fed, either end',
  },
  engineered: {
    ...atThisBusbar,
    rule: 'engineering supervision',
    expression: 'engineering',
    share: 1,
    position: 'any',
  },
  feedThrough: { ...atThisBusbar, rule: 'feed-through', expression: 'feed-through', share: 1, position: 'any' },
  allOfTheBreakers: {
    rule: '100 percent of breakers',
    expression: 'breakers',
    share: 1,
    position: 'any',
    counts: 'first after the inverter',
    label: undefined,
  },
  breakersUpTo120: {
    rule: '120 percent of breakers',
    expression: 'breakers',
    share: 1.2,
    position: 'opposite end',
    counts: 'first after the inverter',
    label: 'BACKFED_BREAKER',
  },
} as const satisfies Readonly<Record<string, Method>>

const rule = (
  edition: Edition,
  section: string,
  method: keyof typeof METHODS,
  standing: SourceStanding,
): BusbarRule => ({ edition, section, ...METHODS[method], standing })

/** The methods that an edition from 2017 on lists, in its order. */
const LISTED = ['allOfTheCurrents', 'upTo120', 'sumOfBreakers', 'centreFed', 'engineered'] as const

const rows: readonly BusbarRule[] = [
  rule('NEC 2011', '705.12(D)(2) and (D)(7)', 'allOfTheBreakers', 'secondary'),
  rule('NEC 2011', '705.12(D)(2) and (D)(7)', 'breakersUpTo120', 'secondary'),
  rule('NEC 2014', '705.12(D)(2)(3)(a)', 'allOfTheCurrents', 'secondary'),
  rule('NEC 2014', '705.12(D)(2)(3)(b)', 'upTo120', 'secondary'),
  rule('NEC 2014', '705.12(D)(2)(3)(c)', 'sumOfBreakers', 'secondary'),
  ...LISTED.map((method, index) => rule('NEC 2017', `705.12(B)(2)(3)(${'abcde'[index] ?? ''})`, method, 'read')),
  ...LISTED.map((method, index) => rule('NEC 2020', `705.12(B)(3)(${index + 1})`, method, 'secondary')),
  rule('NEC 2020', '705.12(B)(3)(6)', 'feedThrough', 'secondary'),
  ...LISTED.map((method, index) =>
    rule('NEC 2023', `705.12(B)(${index + 1})`, method, index < 3 ? 'secondary' : 'from memory'),
  ),
  rule('NEC 2023', '705.12(B)(6)', 'feedThrough', 'from memory'),
]

/**
 * Allowed connections to a busbar by edition, in the order of the code.
 *
 * @source NEC 705.12; 2017 read, the others from texts that quote them (2011 and 2014 forum and practitioner lists); 2026 as 2023, no source reports a change.
 */
export const busbarRules: readonly BusbarRule[] = withCarried(rows, (row) => ({
  ...row,
  standing: carriedStanding(row.standing),
}))
