import type { SourceStanding } from '../../worksheet/index.js'
import type { Edition } from './editions.js'

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

const rule = (
  edition: Edition,
  section: string,
  name: string,
  expression: BusbarExpression,
  share: number,
  position: BusbarRule['position'],
  label: BusbarRule['label'],
  standing: SourceStanding,
  counts: BusbarRule['counts'] = 'at this busbar',
): BusbarRule => ({ edition, section, rule: name, expression, share, position, label, standing, counts })

const sinceNec2017 = (
  edition: Edition,
  section: (number: 1 | 2 | 3 | 4 | 5) => string,
  standing: (number: 1 | 2 | 3 | 4 | 5) => SourceStanding,
): readonly BusbarRule[] => [
  rule(edition, section(1), '100 percent', 'current', 1, 'any', undefined, standing(1)),
  rule(edition, section(2), '120 percent', 'current', 1.2, 'opposite end', 'BACKFED_BREAKER', standing(2)),
  rule(edition, section(3), 'sum of breakers', 'breaker-sum', 1, 'any', 'SUM_RULE', standing(3)),
  rule(
    edition,
    section(4),
    'centre-fed dwelling panel',
    'current',
    1.2,
    'centre-fed, either end',
    undefined,
    standing(4),
  ),
  rule(edition, section(5), 'engineering supervision', 'engineering', 1, 'any', undefined, standing(5)),
]

/**
 * Allowed connections to a busbar by edition, in the order of the code.
 *
 * @source NEC 705.12; 2017 read, the others from texts that quote them (2011 and 2014 forum and practitioner lists).
 */
export const busbarRules: readonly BusbarRule[] = [
  rule(
    'NEC 2011',
    '705.12(D)(2) and (D)(7)',
    '100 percent of breakers',
    'breakers',
    1,
    'any',
    undefined,
    'secondary',
    'first after the inverter',
  ),
  rule(
    'NEC 2011',
    '705.12(D)(2) and (D)(7)',
    '120 percent of breakers',
    'breakers',
    1.2,
    'opposite end',
    'BACKFED_BREAKER',
    'secondary',
    'first after the inverter',
  ),
  rule('NEC 2014', '705.12(D)(2)(3)(a)', '100 percent', 'current', 1, 'any', undefined, 'secondary'),
  rule('NEC 2014', '705.12(D)(2)(3)(b)', '120 percent', 'current', 1.2, 'opposite end', 'BACKFED_BREAKER', 'secondary'),
  rule('NEC 2014', '705.12(D)(2)(3)(c)', 'sum of breakers', 'breaker-sum', 1, 'any', 'SUM_RULE', 'secondary'),
  ...sinceNec2017(
    'NEC 2017',
    (number) => `705.12(B)(2)(3)(${'abcde'[number - 1] ?? ''})`,
    () => 'read',
  ),
  ...sinceNec2017(
    'NEC 2020',
    (number) => `705.12(B)(3)(${number})`,
    () => 'secondary',
  ),
  rule('NEC 2020', '705.12(B)(3)(6)', 'feed-through', 'feed-through', 1, 'any', undefined, 'secondary'),
  ...sinceNec2017(
    'NEC 2023',
    (number) => `705.12(B)(${number})`,
    (number) => (number <= 3 ? 'secondary' : 'from memory'),
  ),
  rule('NEC 2023', '705.12(B)(6)', 'feed-through', 'feed-through', 1, 'any', undefined, 'from memory'),
]
