import type { CellLoss } from './cell-model.js'
import { agedCell } from './cell-model.js'

/** How capacity fades; percents are of the new capacity. */
export type Fade =
  | {
      /** Straight from 100 % to `endPct` after `years`, and on with the same slope. */
      readonly kind: 'line'
      readonly endPct: number
      readonly years: number
    }
  | { readonly kind: 'stated'; readonly calendarPctPerYear: number; readonly cyclePctPerFullCycle: number }
  | { readonly kind: 'cell'; readonly temperatureC: number }

/** What a year of use does to the cells. */
export interface YearOfUse {
  readonly fullCycles: number
  /** Mean share of the store that is filled, 0 to 1. */
  readonly meanFilled: number
  /** Depths of its cycles, 0 to 1, half cycles counted as 0.5. */
  readonly cycles: readonly { readonly depth: number; readonly count: number }[]
  /** Power over capacity while it works, 1/h. */
  readonly cRate: number
}

/** Age of a battery: what is left, and what the cell model keeps of the past. */
export interface Aged {
  readonly capacityPct: number
  readonly cell: CellLoss
}

export const NEW: Aged = { capacityPct: 100, cell: { calendar: 0, cycle: 0 } }

/** A battery after one more year of use. Capacity never falls below zero. */
export function afterYear(before: Aged, fade: Fade, use: YearOfUse): Aged {
  switch (fade.kind) {
    case 'line':
      return { ...before, capacityPct: Math.max(0, before.capacityPct - (100 - fade.endPct) / fade.years) }
    case 'stated': {
      const lost = fade.calendarPctPerYear + fade.cyclePctPerFullCycle * use.fullCycles
      return { ...before, capacityPct: Math.max(0, before.capacityPct - lost) }
    }
    case 'cell': {
      const cell = agedCell(before.cell, fade.temperatureC, use)
      return { cell, capacityPct: Math.max(0, 100 * (1 - cell.calendar - cell.cycle)) }
    }
  }
}
