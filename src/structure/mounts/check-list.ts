import type { Pounds } from '../../values/index.js'
import type { MountCheck, MountLoad, SheetStrength } from './mount-strength.js'

/** Checks that are collected one by one. */
export interface CheckList {
  readonly checks: MountCheck[]
  readonly add: (name: string, demandLb: Pounds, capacityLb: Pounds) => void
}

export function checkList(): CheckList {
  const checks: MountCheck[] = []
  return {
    checks,
    add: (name, demandLb, capacityLb) => {
      checks.push({ name, demandLb, capacityLb, ratio: demandLb / capacityLb })
    },
  }
}

/** What the sheet allows under a load: a tested value is multiplied by load duration only when the sheet says so. */
export function sheetAllows<Strength extends SheetStrength>(mount: Strength, { loadDuration }: MountLoad): Strength {
  if (mount.timesDuration !== true) return mount
  const { upliftLb, downLb, lateralLb } = mount
  return {
    ...mount,
    upliftLb: upliftLb * loadDuration,
    downLb: downLb * loadDuration,
    lateralLb: lateralLb === undefined ? undefined : lateralLb * loadDuration,
  }
}

/** What a mount allows when pulled and pushed along the slope at once. */
export interface Interaction {
  readonly upliftLb: Pounds
  readonly lateralLb: Pounds
  /** m of (T / Ta)^m + (V / Va)^m <= 1. */
  readonly interactionExponent: number
}

/**
 * Adds the check of both directions together: the resultant against the one of the same direction that just passes.
 *
 * @source (T / Ta)^m + (V / Va)^m <= 1; m is 1 unless the sheet gives another (common practice, no source)
 */
export function addInteraction({ add }: CheckList, allowed: Interaction, pullLb: Pounds, alongLb: Pounds): void {
  const m = allowed.interactionExponent
  const index = (pullLb / allowed.upliftLb) ** m + (alongLb / allowed.lateralLb) ** m
  if (index === 0) return
  const resultant = Math.hypot(pullLb, alongLb)
  add('mount combined', resultant, resultant * index ** (-1 / m))
}
