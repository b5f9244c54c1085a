import { busbarRules, type BusbarRule, type Edition } from '../tables/nec/index.js'
import { largestStandardDeviceA } from './standard-device.js'

/** A busbar and what is connected to it. */
export interface Busbar {
  readonly busA: number
  /** Device that protects it, A. */
  readonly mainA: number
  readonly mainPosition: 'end' | 'centre'
  /** Whether the PV breaker stands at the end of the bus opposite to the feed. */
  readonly oppositeEnd: boolean
  /** Sum of rated inverter output currents, A. */
  readonly inverterA: number
  /** Sum of PV breakers on this bus, A. */
  readonly sourceBreakersA: number
  /** Sum of the first breakers after the inverters, A. */
  readonly firstBreakersA: number
  /** Sum of all other breakers but the main, A; undefined when it is not known. */
  readonly loadBreakersA: number | undefined
  readonly feedThrough: { readonly ampacityA: number; readonly deviceA: number | undefined } | undefined
}

/** One rule, tried. */
export interface RuleVerdict {
  readonly rule: BusbarRule
  readonly holds: boolean
  /** Left and right side of the comparison, A; undefined where there is nothing to compare. */
  readonly sumA: number | undefined
  readonly limitA: number | undefined
  readonly formula: string
  readonly why: string
  /**
   * Largest sum of inverter currents that this rule takes here, A; never below `inverterA` where the rule holds, nor at
   * or above it where it does not for its sum. A rule that counts breakers takes so much with breakers in the proportion
   * in which they stand.
   */
  readonly maxInverterA: number
  /** Largest sum of PV breakers that a rule takes which counts breakers, A. */
  readonly maxBreakersA?: number
}

/**
 * Tries every connection rule of an edition on a busbar.
 *
 * @returns Verdicts in the order of the code.
 * @source NEC 705.12
 */
export function judgeBusbar(edition: Edition, bus: Busbar): RuleVerdict[] {
  return busbarRules.filter((rule) => rule.edition === edition).map((rule) => judge(rule, bus))
}

type Sum = Omit<RuleVerdict, 'rule' | 'holds' | 'why'> & { readonly unusable?: string }

function judge(rule: BusbarRule, bus: Busbar): RuleVerdict {
  const { unusable, ...sum } = SUMS[rule.expression](rule, bus)
  const misplaced = unusable ?? positionFault(rule, bus)
  if (misplaced !== undefined) {
    const nothing = sum.maxBreakersA === undefined ? {} : { maxBreakersA: 0 }
    return { rule, ...sum, ...nothing, holds: false, why: misplaced, maxInverterA: 0 }
  }
  const holds = sum.sumA !== undefined && sum.limitA !== undefined && sum.sumA <= sum.limitA * (1 + 1e-12)
  const why = `${fixed(sum.sumA)} A ${holds ? '<=' : '>'} ${fixed(sum.limitA)} A`
  return { rule, ...sum, holds, why }
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
      return bus.oppositeEnd ? undefined : 'the PV breaker does not stand at an end of the busbar'
  }
}

const SUMS: Readonly<Record<BusbarRule['expression'], (rule: BusbarRule, bus: Busbar) => Sum>> = {
  current: ({ share }, { busA, mainA, inverterA }) => ({
    formula: `M + 1.25 x I <= ${share} x B`,
    sumA: mainA + 1.25 * inverterA,
    limitA: share * busA,
    maxInverterA: Math.max(0, (share * busA - mainA) / 1.25),
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
  'breaker-sum': (_, { busA, mainA, sourceBreakersA, loadBreakersA, inverterA }) => ({
    formula: 'sum of all breakers but the main <= B, and M <= B',
    sumA: loadBreakersA === undefined ? undefined : loadBreakersA + sourceBreakersA,
    limitA: busA,
    ...(loadBreakersA === undefined
      ? { maxInverterA: 0 }
      : mostByBreakers(busA - loadBreakersA, sourceBreakersA, inverterA)),
    ...(loadBreakersA === undefined ? { unusable: 'the sum of the load breakers is not stated' } : {}),
    ...(mainA > busA ? { unusable: 'the main device is above the busbar rating' } : {}),
  }),
  'feed-through': (_, { mainA, inverterA, feedThrough }) => {
    const formula = 'feed-through conductors >= M + 1.25 x I, or a device at their load end that protects them'
    if (feedThrough === undefined)
      return {
        formula,
        sumA: undefined,
        limitA: undefined,
        maxInverterA: 0,
        unusable: 'there are no feed-through conductors',
      }
    const { ampacityA, deviceA } = feedThrough
    const isProtected = deviceA !== undefined && deviceA <= ampacityA
    return {
      formula,
      sumA: isProtected ? Math.max(deviceA, 1.25 * inverterA) : mainA + 1.25 * inverterA,
      limitA: ampacityA,
      maxInverterA: Math.max(0, isProtected ? ampacityA : ampacityA - mainA) / 1.25,
    }
  },
  engineering: () => ({
    formula: 'study of fault current and busbar load',
    sumA: undefined,
    limitA: undefined,
    maxInverterA: 0,
    unusable: 'needs a study by an engineer',
  }),
}

/** What fits by a rule that counts breakers. @param leftA What bus and other devices leave for PV breakers, A. */
function mostByBreakers(
  leftA: number,
  breakersA: number,
  inverterA: number,
): { readonly maxInverterA: number; readonly maxBreakersA: number } {
  const maxBreakersA = Math.max(0, leftA)
  const oneBreakerA = largestStandardDeviceA(maxBreakersA) / 1.25
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
