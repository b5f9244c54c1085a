import type { Edition, SupplySideRule } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import { mostByBreakers } from './judge-busbar.js'
import { supplySideRule } from '../system/index.js'
import type { Amperes } from '../../values/index.js'

/** What is connected ahead of the service disconnect. */
export interface SupplySide {
  readonly serviceA: Amperes | undefined
  readonly serviceAmpacityA: Amperes | undefined
  readonly inverterA: Amperes
  readonly sourceBreakersA: Amperes
}

/** The supply-side comparison. */
export interface SupplySideVerdict {
  readonly rule: SupplySideRule
  readonly holds: boolean
  readonly formula: string
  readonly sumA: Amperes
  readonly limitA: Amperes
  readonly maxInverterA: Amperes
}

/**
 * Compares sources with the service.
 *
 * @throws StageError when the rating that the edition compares with is missing.
 * @source NEC 705.12(A) (to 2017), 705.11 (2020, 2023)
 */
export function judgeSupplySide(edition: Edition, side: SupplySide): SupplySideVerdict {
  const rule = supplySideRule(edition)
  switch (rule.compares) {
    case 'devices with service rating': {
      const limitA = stated(
        side.serviceA,
        'electrical.service.rating_a',
        'the rating of the service',
        'the service disconnect',
      )
      return {
        rule,
        formula: 'sum of source overcurrent devices <= service rating',
        sumA: side.sourceBreakersA,
        limitA,
        holds: side.sourceBreakersA <= limitA,
        maxInverterA: mostByBreakers(limitA, side.sourceBreakersA, side.inverterA).maxInverterA,
      }
    }
    case 'currents with service conductor ampacity': {
      const limitA = stated(
        side.serviceAmpacityA,
        'electrical.service.conductor_ampacity_a',
        'the ampacity of the service conductors',
        "the utility's record, or size and insulation of the conductors",
      )
      return {
        rule,
        formula: 'sum of inverter currents <= ampacity of the service conductors',
        sumA: side.inverterA,
        limitA,
        holds: side.inverterA <= limitA,
        maxInverterA: limitA,
      }
    }
  }
}

function stated(value: number | undefined, where: string, what: string, found: string): number {
  if (value !== undefined && Number.isFinite(value) && value > 0) return value
  throw new StageError(where, `${what} is not stated`, `Find it on ${found}`)
}
