import { engine, LAYOUT, type Engine } from '../kernel/index.js'
import { domeOver, type Dome } from './dome-cells.js'
import { isBelowHorizon } from './horizon.js'
import type { ModuleView } from './module-view.js'
import { storeView, type StoredView } from './shade-memory.js'

/**
 * Directions in which an even sky and the ground are looked at. With so many the share of the sky that a module sees is
 * within 0.12 % of what 131,072 give (tests/yield/dome.test.ts), which is 0.05 % of the light of a plane's year where four
 * tenths of it come from the sky.
 */
export const DOME_DIRECTIONS = 4096

/** Twelve numbers, bytes. */
const MONTHS_SIZE = 96

/** What a module sees of an even sky and of the ground. */
export interface DomeShares {
  /** Share of the sky's light on the free plane that arrives, twelve months. */
  readonly sky: Float64Array
  /** Share of the ground's light on the free plane that arrives, twelve months. */
  readonly ground: Float64Array
}

/**
 * Shares of sky and ground that nothing hides. What a solid hides of the ground counts as dark, of the sky too; the
 * module's own roof reflects as the ground does.
 */
export function domeShares(view: ModuleView, count = DOME_DIRECTIONS): DomeShares {
  const machine = engine()
  const mark = machine.mark()
  const shares = domeOf(machine, storeView(machine, view), view, count)
  machine.release(mark)
  return shares
}

/** The same for a module that stands in the memory of the kernels. */
export function domeOf(machine: Engine, stored: StoredView, view: ModuleView, count = DOME_DIRECTIONS): DomeShares {
  const dome = domeOver(view.face.axes, count)
  const skyAt = machine.take(dome.bytes.length)
  const groundAt = skyAt + dome.skyCells * LAYOUT.CELL_SIZE
  const passes = machine.take(MONTHS_SIZE)
  const months = machine.take(MONTHS_SIZE)
  const below = storeBelow(machine, view, dome)
  machine.bytes.set(dome.bytes, skyAt)
  const shares = (isSky: boolean): Float64Array => {
    const all = isSky ? dome.skies : dome.grounds
    machine.reals.fill(0, months >> 3, (months + MONTHS_SIZE) >> 3)
    const cells = isSky ? skyAt : groundAt
    const cellCount = isSky ? dome.skyCells : dome.groundCells
    const { view: at, near } = stored
    const bySolids = machine.kernels.dome(at, cells, cellCount, isSky ? 1 : 0, below, near, passes, months)
    return machine.reals
      .slice(months >> 3, (months + MONTHS_SIZE) >> 3)
      .map((hidden) => (all === 0 ? 1 : Math.max(0, 1 - (hidden + bySolids) / all)))
  }
  return { sky: shares(true), ground: shares(false) }
}

const belowByHorizon = new WeakMap<ModuleView['horizon'], { readonly dome: Dome; readonly below: Uint8Array }>()

/** Puts down which directions the far horizon hides, by their number; 0 where there is no horizon. */
function storeBelow(machine: Engine, { horizon }: ModuleView, dome: Dome): number {
  if (horizon.length === 0) return 0
  let known = belowByHorizon.get(horizon)
  if (known?.dome !== dome) {
    const { towards, skies } = dome
    const below = new Uint8Array(skies + dome.grounds)
    for (let number = 0; number < skies; number += 1) {
      const direction = { east: towards[3 * number]!, north: towards[3 * number + 1]!, up: towards[3 * number + 2]! }
      if (isBelowHorizon(horizon, direction)) below[number] = 1
    }
    known = { dome, below }
    belowByHorizon.set(horizon, known)
  }
  const at = machine.take(known.below.length)
  machine.bytes.set(known.below, at)
  return at
}
