import { SOURCE_FACTOR, busbarRules, type BusbarRule, type Edition } from '../../tables/nec/index.js'
import { judgeFeedThrough, type FeedThrough } from './judge-feed-through.js'
import { largestStandardDeviceA } from '../system/index.js'
import type { Amperes } from '../../values/index.js'

/** A busbar and what is connected to it. */
export interface Busbar {
  readonly busA: Amperes
  /** Device that protects it, A. */
  readonly mainA: Amperes
  readonly mainPosition: 'end' | 'centre'
  /** Whether the PV breaker stands at the end of the bus opposite to the feed. */
  readonly oppositeEnd: boolean
  /** Whether breakers of several sources stand on it, which may be at both ends of a busbar fed in its centre. */
  readonly bothEnds?: boolean
  /** Sum of rated inverter output currents, A. */
  readonly inverterA: Amperes
  /** Sum of PV breakers on this bus, A. */
  readonly sourceBreakersA: Amperes
  /** Sum of the first breakers after the inverters, A. */
  readonly firstBreakersA: Amperes
  /** Sum of all other breakers but the main, A; undefined when it is not known. */
  readonly loadBreakersA: Amperes | undefined
  readonly feedThrough: FeedThrough | undefined
}

/** One rule, tried. */
export interface RuleVerdict {
  readonly rule: BusbarRule
  readonly holds: boolean
  /** Left and right side of the comparison, A; undefined where there is nothing to compare. */
  readonly sumA: Amperes | undefined
  readonly limitA: Amperes | undefined
  readonly formula: string
  readonly why: string
  /**
   * Largest sum of inverter currents that this rule takes here, A; never below `inverterA` where the rule holds, nor at
   * or above it where it does not for its sum. A rule that counts breakers takes so much with breakers in the proportion
   * in which they stand.
   */
  readonly maxInverterA: Amperes
  /** Largest sum of PV breakers that a rule takes which counts breakers, A. */
  readonly maxBreakersA?: Amperes
}

/**
 * Tries every connection rule of an edition on a busbar.
 *
 * @returns Verdicts in the order of the code. None holds on a busbar whose own main is above its rating, and none while
 * feed-through conductors or the panel behind them do not take what main and sources can feed into them.
 * @source NEC 705.12, 408.36
 */
export function judgeBusbar(edition: Edition, bus: Busbar): RuleVerdict[] {
  const rules = busbarRules.filter((rule) => rule.edition === edition)
  const others = rules.filter((rule) => rule.expression !== 'feed-through').map((rule) => judge(rule, bus))
  return rules.map(
    (rule) =>
      others.find((verdict) => verdict.rule === rule) ??
      (bus.feedThrough === undefined ? judge(rule, bus) : feedThroughRule(rule, bus, bus.feedThrough, others)),
  )
}

type Sum = Omit<RuleVerdict, 'rule' | 'holds' | 'why'> & { readonly unusable?: string }

function judge(rule: BusbarRule, bus: Busbar): RuleVerdict {
  const { unusable, ...sum } = SUMS[rule.expression](rule, bus)
  const misplaced = unusable ?? mainFault(bus) ?? positionFault(rule, bus) ?? methodFault(rule, bus)
  if (misplaced !== undefined) {
    const nothing = sum.maxBreakersA === undefined ? {} : { maxBreakersA: 0 }
    return { rule, ...sum, ...nothing, holds: false, why: misplaced, maxInverterA: 0 }
  }
  const fits = sum.sumA !== undefined && sum.limitA !== undefined && sum.sumA <= sum.limitA * (1 + 1e-12)
  const beyond = bus.feedThrough && judgeFeedThrough(bus.feedThrough, bus.mainA, sourcesA(rule, bus))
  const why = `${fixed(sum.sumA)} A ${fits ? '<=' : '>'} ${fixed(sum.limitA)} A`
  return {
    rule,
    ...sum,
    holds: fits && beyond?.fault === undefined,
    why: beyond?.fault === undefined ? why : `${why}; ${beyond.fault}`,
    ...(sum.maxBreakersA === undefined
      ? {}
      : { maxBreakersA: Math.min(sum.maxBreakersA, beyond?.sourceLimitA ?? Infinity) }),
    maxInverterA: Math.min(sum.maxInverterA, largestInverterA(rule, beyond?.sourceLimitA ?? Infinity)),
  }
}

const largestInverterA = ({ expression }: BusbarRule, sourcesA: Amperes): Amperes =>
  (expression === 'breakers' && sourcesA < Infinity ? largestStandardDeviceA(sourcesA) : sourcesA) / SOURCE_FACTOR

/** What the sources count with, A: their breakers where the edition adds breakers, else 125 percent of their current. */
function sourcesA({ expression }: BusbarRule, { inverterA, firstBreakersA }: Busbar): Amperes {
  return expression === 'breakers' ? Math.max(firstBreakersA, SOURCE_FACTOR * inverterA) : SOURCE_FACTOR * inverterA
}

function mainFault({ mainA, busA }: Busbar): string | undefined {
  return mainA > busA ? 'the main device is above the busbar rating' : undefined
}

/**
 * The load on feed-through lugs is no breaker of this busbar. Without a device at their start only the 100 percent method
 * covers it, wherever the loads hang.
 */
function methodFault({ expression, share, position }: BusbarRule, { feedThrough }: Busbar): string | undefined {
  if (feedThrough === undefined) return undefined
  if (share === 1 && expression !== 'breaker-sum') return undefined
  if (position === 'centre-fed, either end') return 'the busbar has feed-through lugs'
  const guarded = feedThrough.deviceA !== undefined && feedThrough.deviceAt === 'start'
  return guarded ? undefined : 'the busbar has feed-through lugs without a device at their start'
}

/**
 * The rule for a busbar with feed-through lugs. It does not free the busbar itself: that passes another method, or has no
 * loads and a device in the feed-through conductors that keeps what leaves by the lugs within its rating.
 *
 * @source NEC 705.12(B)(3)(6) (2020), 705.12(B)(6) (2023), restated; the condition on the busbar itself is ours, on the safe side
 */
function feedThroughRule(
  rule: BusbarRule,
  bus: Busbar,
  lugs: FeedThrough,
  others: readonly RuleVerdict[],
): RuleVerdict {
  const { formula } = SUMS['feed-through'](rule, bus)
  const { busA, mainA, inverterA, loadBreakersA } = bus
  const beyond = judgeFeedThrough(lugs, mainA, SOURCE_FACTOR * inverterA)
  const { deviceA } = lugs
  const guarded = deviceA !== undefined && beyond.sourceLimitA === Infinity
  const unloaded = loadBreakersA === 0 && deviceA !== undefined && deviceA <= busA && mainA <= busA
  const passes = others.some(({ holds }) => holds) || (unloaded && SOURCE_FACTOR * inverterA <= busA * (1 + 1e-12))
  const faults = [
    mainFault(bus) ??
      (passes
        ? undefined
        : loadBreakersA === undefined
          ? 'the busbar passes none of the other methods, and its load breakers are not stated'
          : 'the busbar passes none of the other methods, and it has loads or no device in the feed-through conductors that keeps within its rating'),
    beyond.fault,
  ].filter((fault) => fault !== undefined)
  const limitA = Math.min(lugs.ampacityA, lugs.panelBusA ?? 0)
  const sumA = guarded ? deviceA : mainA + SOURCE_FACTOR * inverterA
  const ownMaxA = Math.max(...others.map(({ maxInverterA }) => maxInverterA), unloaded ? busA / SOURCE_FACTOR : 0)
  return {
    rule,
    formula,
    holds: faults.length === 0,
    sumA,
    limitA,
    why: faults.length === 0 ? `${fixed(sumA)} A <= ${fixed(limitA)} A` : faults.join('; '),
    maxInverterA: Math.min(ownMaxA, beyond.sourceLimitA / SOURCE_FACTOR),
  }
}

const fixed = (value: number | undefined): string => (value === undefined ? '?' : value.toFixed(1))

function positionFault(rule: BusbarRule, bus: Busbar): string | undefined {
  switch (rule.position) {
    case 'any':
      return undefined
    case 'opposite end':
      if (bus.mainPosition === 'centre') return 'the busbar is fed in the centre'
      return bus.oppositeEnd ? undefined : 'the PV breaker does not stand at the end opposite to the main'
    case 'centre-fed, either end':
      if (bus.mainPosition === 'end') return 'the busbar is fed at its end'
      if (!bus.oppositeEnd) return 'the PV breaker does not stand at an end of the busbar'
      return bus.bothEnds === true ? 'several sources feed it, which may stand at both ends' : undefined
  }
}

const SUMS: Readonly<Record<BusbarRule['expression'], (rule: BusbarRule, bus: Busbar) => Sum>> = {
  current: ({ share }, { busA, mainA, inverterA }) => ({
    formula: `M + 1.25 x I <= ${share} x B`,
    sumA: mainA + SOURCE_FACTOR * inverterA,
    limitA: share * busA,
    maxInverterA: Math.max(0, (share * busA - mainA) / SOURCE_FACTOR),
  }),
  breakers: ({ share, counts }, { busA, mainA, sourceBreakersA, firstBreakersA, inverterA }) => {
    const countedA = counts === 'first after the inverter' ? firstBreakersA : sourceBreakersA
    return {
      formula: `M + sum of PV breakers <= ${share} x B`,
      sumA: mainA + countedA,
      limitA: share * busA,
      ...mostByBreakers(share * busA - mainA, countedA, inverterA),
    }
  },
  'breaker-sum': (_, { busA, sourceBreakersA, loadBreakersA, inverterA, feedThrough }) => {
    const loadsA = loadBreakersA === undefined ? undefined : loadBreakersA + (feedThrough?.deviceA ?? 0)
    return {
      formula: 'sum of all breakers but the main <= B, and M <= B',
      sumA: loadsA === undefined ? undefined : loadsA + sourceBreakersA,
      limitA: busA,
      ...(loadsA === undefined ? { maxInverterA: 0 } : mostByBreakers(busA - loadsA, sourceBreakersA, inverterA)),
      ...(loadsA === undefined ? { unusable: 'the sum of the load breakers is not stated' } : {}),
    }
  },
  'feed-through': () => ({
    formula:
      'busbar by another method or without loads; feed-through conductors and panel behind them >= M + 1.25 x I, or a device that protects both',
    sumA: undefined,
    limitA: undefined,
    maxInverterA: 0,
    unusable: 'there are no feed-through conductors',
  }),
  engineering: () => ({
    formula: 'study of fault current and busbar load',
    sumA: undefined,
    limitA: undefined,
    maxInverterA: 0,
    unusable: 'needs a study by an engineer',
  }),
}

/** What fits by a rule that counts breakers. @param leftA What bus and other devices leave for PV breakers, A. */
export function mostByBreakers(
  leftA: Amperes,
  breakersA: Amperes,
  inverterA: Amperes,
): { readonly maxInverterA: Amperes; readonly maxBreakersA: Amperes } {
  const maxBreakersA = Math.max(0, leftA)
  const oneBreakerA = largestStandardDeviceA(maxBreakersA) / SOURCE_FACTOR
  return {
    maxBreakersA,
    maxInverterA:
      breakersA <= maxBreakersA * (1 + 1e-12)
        ? Math.max(oneBreakerA, inverterA)
        : Math.min(oneBreakerA, (inverterA * maxBreakersA) / breakersA),
  }
}

/** The rule that governs: the first that holds, else the one that takes most. */
export function governingRule(verdicts: readonly RuleVerdict[]): RuleVerdict {
  const [first] = verdicts
  if (first === undefined) throw new Error('an edition without busbar rules')
  const holding = verdicts.find((verdict) => verdict.holds)
  return (
    holding ?? verdicts.reduce((best, verdict) => (verdict.maxInverterA > best.maxInverterA ? verdict : best), first)
  )
}
