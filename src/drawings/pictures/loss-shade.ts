import type { Look } from '../model/index.js'

/** A class of yearly loss and how modules in it are drawn: darker and denser with more loss, without colour. */
export interface LossClass {
  /** The loss is below this, percent. */
  readonly belowPct: number
  readonly says: string
  readonly look: Look
}

/** Steps of loss that a person would act upon differently; the steps are ours. */
export const LOSS_CLASSES: readonly LossClass[] = [
  { belowPct: 1, says: 'less than 1 %', look: { fill: 'white' } },
  { belowPct: 5, says: '1 to 5 %', look: { fill: 'light' } },
  { belowPct: 15, says: '5 to 15 %', look: { fill: 'mid' } },
  { belowPct: 30, says: '15 to 30 %', look: { fill: 'light', hatch: { angleDeg: 45, gapPt: 3 } } },
  {
    belowPct: Infinity,
    says: '30 % and more',
    look: { fill: 'mid', hatch: { angleDeg: 45, gapPt: 2.5, cross: true } },
  },
]

/** Light and mismatch together, percent: what passes one is what the other takes from. */
export function wholeLossPct(lightLossPct: number, mismatchLossPct: number): number {
  return 100 - (100 - lightLossPct) * (1 - mismatchLossPct / 100)
}

/** The class of a loss. */
export function lossClass(lossPct: number): LossClass {
  return LOSS_CLASSES.find(({ belowPct }) => lossPct < belowPct) ?? LOSS_CLASSES.at(-1)!
}
