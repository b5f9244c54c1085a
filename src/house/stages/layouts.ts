import { priceBom, type PriceList } from '../../materials/index.js'
import type { Project } from '../../project/index.js'
import { fitRankOf, type Arrangement, type FitAlternative, type FitRank } from '../../roof/index.js'
import type { MountValues, MountWishes } from '../../structure/index.js'
import { StageError, Worksheet, type Result } from '../../worksheet/index.js'
import type { HouseInput } from '../house-input.js'
import { mountsUnder } from './mounts.js'

/** One layout of a fitted array with its mounts worked out, with the names that the JSON has. */
export interface LayoutValue {
  readonly array: string
  /** Whether this is the layout that the other stages take. */
  readonly chosen: boolean
  /** How the modules of the array lie: each row its own way when mixed. */
  readonly orientation: 'portrait' | 'landscape' | 'mixed'
  /** Modules of the array. */
  readonly modules: number
  /** Rated power of the array over that of the chosen layout, percent: its share of the energy of equal modules on one plane. */
  readonly energy_pct: number
  /** Mounts, rails and their length under all arrays, as laid out and checked; null when they cannot be. */
  readonly mounts: number | null
  readonly rails: number | null
  readonly rail_ft: number | null
  /** Highest demand over capacity; null when mounts cannot be laid. */
  readonly highest_ratio: number | null
  /** Goods, freight and the other costs of the project without wiring, at the low end of price ranges, USD; null when not priced. */
  readonly cost_usd: number | null
  /** Why mounts cannot be laid; null when they can. */
  readonly refused: string | null
}

/** Further layouts of each array that are worked out. */
const MOST_OTHERS = 3

/**
 * The layouts of fitted arrays beside each other, the chosen one first, each with its mounts worked out.
 *
 * @limits Energy counts modules and their power alone; that modules of one layout get more shade than those of another is not.
 */
export function layoutsOf(
  input: HouseInput,
  arrangement: Result<Arrangement>,
  mounts: Result<MountValues>,
  wishes: {
    readonly mounts?: MountWishes | undefined
    readonly rank?: FitRank | undefined
    readonly prices: PriceList | undefined
  },
): LayoutValue[] {
  const { modules, alternatives = {} } = arrangement.values
  return Object.entries(alternatives).flatMap(([array, others]) => {
    const own = modules.filter((module) => module.array === array)
    const layout = (
      one: Result<Arrangement>,
      orientation: LayoutValue['orientation'],
      chosen: boolean,
    ): LayoutValue => {
      const count = one.values.modules.filter((module) => module.array === array).length
      const under = chosen ? mounts : mountsOrReason(input, one.values, wishes.mounts)
      return {
        array,
        chosen,
        orientation,
        modules: count,
        energy_pct: (100 * count) / own.length,
        ...figuresOf(under),
        cost_usd: under instanceof StageError ? null : costOf(input.project, one, under, wishes.prices),
        refused: under instanceof StageError ? under.message : null,
      }
    }
    const ways = new Set(own.map((module) => module.orientation))
    const way = ways.size > 1 ? 'mixed' : (own[0]?.orientation ?? 'portrait')
    const next = others
      .slice(0, MOST_OTHERS)
      .map((other) => layout(replaced(arrangement, array, other), other.orientation, false))
    const rank = wishes.rank ?? fitRankOf(input.project, array)
    return [layout(arrangement, way, true), ...next.toSorted((a, b) => compareLayouts(a, b, rank))]
  })
}

/** Which of two layouts is better by their mounts and cost as worked out: less than 0 when it is the first. */
export function compareLayouts(a: LayoutValue, b: LayoutValue, rank: FitRank): number {
  const perModule = (figureOf: (layout: LayoutValue) => number | null): number => {
    const [one, other] = [figureOf(a), figureOf(b)].map((figure) => figure ?? Infinity)
    return one === other ? 0 : (one ?? Infinity) / a.modules - (other ?? Infinity) / b.modules
  }
  const energy = b.modules - a.modules
  const mounts = perModule((layout) => layout.mounts)
  const priced = a.cost_usd !== null && b.cost_usd !== null
  const cost = perModule((layout) => (priced ? layout.cost_usd : layout.rail_ft))
  const order = { energy: [energy, mounts, cost], mounts: [mounts, energy, cost], cost: [cost, mounts, energy] }[rank]
  return order.find((difference) => Math.abs(difference) > 1e-9) ?? 0
}

/** The arrangement with the modules of one array laid another way. */
function replaced(arrangement: Result<Arrangement>, array: string, other: FitAlternative): Result<Arrangement> {
  const kept = arrangement.values.modules.filter((module) => module.array !== array)
  return new Worksheet().result({ ...arrangement.values, modules: [...kept, ...other.modules] })
}

function mountsOrReason(
  input: HouseInput,
  arrangement: Arrangement,
  wishes: MountWishes | undefined,
): Result<MountValues> | StageError {
  try {
    return mountsUnder(input, arrangement, wishes)
  } catch (error) {
    if (error instanceof StageError) return error
    throw error
  }
}

function figuresOf(
  mounts: Result<MountValues> | StageError,
): Pick<LayoutValue, 'mounts' | 'rails' | 'rail_ft' | 'highest_ratio'> {
  if (mounts instanceof StageError) return { mounts: null, rails: null, rail_ft: null, highest_ratio: null }
  const { counts, rails, weakest_link: weakest } = mounts.values
  const railIn = rails.reduce((sum, rail) => sum + rail.length_in, 0)
  return { mounts: counts.mounts, rails: counts.rails, rail_ft: railIn / 12, highest_ratio: weakest.ratio }
}

/** What modules and mounting of a layout cost by the price list; null without one, or when a price is missing. */
function costOf(
  project: Project,
  arrangement: Result<Arrangement>,
  mounts: Result<MountValues>,
  prices: PriceList | undefined,
): number | null {
  if (prices === undefined) return null
  const arrays = Object.entries(project.arrays).map(([id, array]) => {
    const count = arrangement.values.modules.filter((module) => module.array === id).length
    return [id, count === 0 ? array : { ...array, modules: count }] as const
  })
  const counted = { ...project, arrays: Object.fromEntries(arrays) }
  try {
    const { lines, totals_at_least: totals } = priceBom({ project: counted, arrangement, mounts, prices }).values
    // Wiring is not counted, so that the bill has no total but a least one; its own lines must all be priced.
    return lines.some((line) => line.cost_usd === null) ? null : totals.gross_usd
  } catch (error) {
    if (error instanceof StageError) return null
    throw error
  }
}
