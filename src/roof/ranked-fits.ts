import type { FitRequest } from '../project/index.js'
import { feetOf, type Feet } from '../values/index.js'
import type { FitArea } from './fit-area.js'
import { FieldOnRafters, type OrientedGrid, type PlacedRow, type StackOnRafters } from './fit-on-rafters.js'
import type { Pathway } from './pathways.js'
import type { ModulePlacement } from './placement.js'
import type { RailGround } from './rail-ground.js'
import { railLines } from './rail-lines.js'
import { fewestOnRafters } from './rail-rules.js'
import { modulesOfRow, type ArrayPlace } from './row-modules.js'

/** What comes first among layouts. */
export type FitRank = NonNullable<FitRequest['rank']>

/** A layout of an array whose rails mounts can hold. */
export interface RankedFit {
  readonly modules: readonly ModulePlacement[]
  readonly pathways: readonly Pathway[]
  /** Most modules that this kind of layout holds, whatever was asked. */
  readonly capacity: number
  /** Modules that there is room for without regard to rafters. */
  readonly room: number
  /** Rows lie one way, or each its own. */
  readonly orientation: 'portrait' | 'landscape' | 'mixed'
  /** Mounts at the longest spans that the rail sheet allows, which is the fewest that there can be. */
  readonly leastMounts: number
  readonly rails: number
  readonly railFt: Feet
}

/** Fields that are looked at for each way to lay the rows, the roomiest first. */
const MOST_FIELDS = 3

/** Layouts of an array that are kept, the chosen one among them. */
const MOST_KEPT = 4

/**
 * Layouts of one array over its rafters, the best first: rows of each orientation, and of both where that holds more.
 *
 * @param wish What comes first, and whether groups are centred.
 */
export function rankedFits(
  places: ArrayPlace,
  grids: readonly OrientedGrid[],
  area: FitArea & { readonly ground: RailGround },
  wish: { readonly rank: FitRank; readonly centered: boolean },
): RankedFit[] {
  const { ground, atMost } = area
  const held = grids.filter((grid) => ground.insetFt(grid.orientation, grid.heightFt) !== undefined)
  const fields = fieldsOf(area)
  const fits: RankedFit[] = []
  let single = 0
  const ways = [...held.map((grid) => [grid]), ...(held.length > 1 ? [held] : [])]
  for (const way of ways) {
    const stacks = bestStacks(fields, way)
    const room = Math.max(0, ...stacks.map((one) => one.room))
    for (const { stack, pathways } of stacks) {
      const score = Math.min(stack.capacity, atMost)
      if (score === 0) continue
      // Rows that lie different ways are worth it only where they hold more.
      if (way.length > 1 && score <= single) continue
      const rows = stack.place(score, wish.centered)
      const modules = rows.flatMap((row, index) => placedModules(places, row, index + 1))
      if (way.length === 1) single = Math.max(single, modules.length)
      if (way.length > 1 && modules.length <= single) continue
      const [first] = way
      const orientation = way.length > 1 ? 'mixed' : (first?.orientation ?? 'portrait')
      const kept = { modules, pathways, capacity: stack.capacity, room, orientation } as const
      fits.push({ ...kept, ...railsUnder(modules, way, ground) })
    }
  }
  return unlike(fits.toSorted((a, b) => compare(a, b, { atMost, rank: wish.rank }))).slice(0, MOST_KEPT)
}

interface FieldChoice {
  readonly field: FieldOnRafters
  readonly pathways: readonly Pathway[]
}

function fieldsOf({ corners, keepOuts, choices, ground }: FitArea & { readonly ground: RailGround }): FieldChoice[] {
  return choices.map((pathways) => {
    const figures = pathways.flatMap((pathway) => pathway.figures)
    const field = new FieldOnRafters({ corners, keepOuts: [...keepOuts, ...ground.overhangs, ...figures] }, ground)
    return { field, pathways }
  })
}

/** Stacks of the fields that may hold the most, best first; fields that cannot hold more than one found are left out. */
function bestStacks(
  fields: readonly FieldChoice[],
  way: readonly OrientedGrid[],
): { stack: StackOnRafters; pathways: readonly Pathway[]; room: number }[] {
  const roomiest = fields
    .map((one) => ({ ...one, room: Math.max(...way.map((grid) => one.field.plainCapacity(grid))) }))
    .toSorted((a, b) => b.room - a.room)
  const found: { stack: StackOnRafters; pathways: readonly Pathway[]; room: number }[] = []
  let most = 0
  for (const { field, pathways, room } of roomiest) {
    if (way.length === 1 && found.length > 0 && room <= most) break
    if (way.length > 1 && found.length >= MOST_FIELDS) break
    const stack = field.stack(way)
    found.push({ stack, pathways, room })
    most = Math.max(most, stack.capacity)
  }
  return found.toSorted((a, b) => b.stack.capacity - a.stack.capacity).slice(0, 2)
}

function placedModules(places: ArrayPlace, row: PlacedRow, number: number): ModulePlacement[] {
  const pitchFt = row.widthFt + row.gapFt
  const lefts = row.groups.flatMap(({ fromFt, count }) => Array.from({ length: count }, (_, i) => fromFt + i * pitchFt))
  return modulesOfRow(places, row, { number, yFt: row.yFt }, lefts)
}

function railsUnder(
  modules: readonly ModulePlacement[],
  grids: readonly OrientedGrid[],
  ground: RailGround,
): Pick<RankedFit, 'leastMounts' | 'rails' | 'railFt'> {
  const endIn = 12 * (grids[0]?.endFt ?? 0)
  const lines = railLines(modules, {
    insetInOf: (module) => 12 * (ground.insetFt(module.orientation, module.heightFt) ?? 0),
    endAllowanceIn: endIn,
    obstructions: ground.obstructions,
    continuousIn: ground.continuousIn,
  })
  return {
    leastMounts: lines.reduce((sum, line) => sum + fewestOnRafters(line, ground.raftersAt(line.yIn), ground.rules), 0),
    rails: lines.length,
    railFt: feetOf(lines.reduce((sum, line) => sum + line.endIn - line.startIn, 0)),
  }
}

/** Which of two layouts is better: less than 0 when it is the first. Where a number is asked for, what comes nearest to it goes first. */
function compare(a: RankedFit, b: RankedFit, { atMost, rank }: { atMost: number; rank: FitRank }): number {
  const energy = b.modules.length - a.modules.length
  if (atMost !== Infinity && energy !== 0) return energy
  const mounts = a.leastMounts / a.modules.length - b.leastMounts / b.modules.length
  const cost = a.railFt / a.modules.length - b.railFt / b.modules.length
  const order = { energy: [energy, mounts, cost], mounts: [mounts, energy, cost], cost: [cost, mounts, energy] }[rank]
  return order.find((difference) => Math.abs(difference) > 1e-9) ?? 0
}

/** Layouts without those that have the same figures as a better one. */
function unlike(fits: readonly RankedFit[]): RankedFit[] {
  const seen = new Set<string>()
  return fits.filter(({ modules, orientation, leastMounts, rails, railFt }) => {
    const key = [orientation, modules.length, leastMounts, rails, railFt.toFixed(3)].join()
    if (seen.has(key)) return false
    seen.add(key)
    return true
  })
}
