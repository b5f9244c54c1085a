import { flowBlocks, type Block } from '../layout/index.js'
import type { Box, Primitive } from '../model/index.js'

/** What stands below the one-line diagram. */
export interface Sections {
  readonly legend: readonly Block[]
  readonly conductors: readonly Block[]
  readonly ratings: readonly Block[]
}

interface Placed {
  /** What stands below each diagram. */
  readonly below: readonly (readonly Primitive[])[]
  /** Sheets that follow. */
  readonly more: readonly (readonly Primitive[])[]
  /** Ratings that would need a sheet of their own, and stand with the schedules instead. */
  readonly left: readonly Block[]
}

/** Room in which a table may begin: its heading, head and two rows of some lines. */
const LEAST_TABLE_PT = 90

/** Orders of the sections, the usual one first. */
const ORDERS = [
  ['legend', 'conductors', 'ratings'],
  ['legend', 'ratings', 'conductors'],
  ['ratings', 'legend', 'conductors'],
  ['conductors', 'legend', 'ratings'],
  ['conductors', 'ratings', 'legend'],
  ['ratings', 'conductors', 'legend'],
] as const

/**
 * Puts the sections below the diagrams and on sheets that follow, in the order that needs the fewest sheets. The ratings are
 * left to the schedules where that saves one more.
 *
 * @param rooms What is left of the sheets with a diagram, from the first.
 * @param body Room of a sheet that follows.
 */
export function placeSections(sections: Sections, rooms: readonly Box[], body: Box): Placed {
  const usable = [...rooms.entries()].filter(([, { height }]) => height >= LEAST_TABLE_PT)
  const areas = [...usable.map(([, room]) => room), body]
  const flowOf = (order: readonly (keyof Sections)[]): Primitive[][] => {
    const [first = body, ...later] = areas
    return flowBlocks(
      order.flatMap((each) => sections[each]),
      first,
      1,
      later.length === 0 ? body : later,
    )
  }
  const tries = [
    ...ORDERS.map((order) => ({ pages: flowOf(order), left: [] as readonly Block[] })),
    ...[0, 3].map((index) => ({
      pages: flowOf((ORDERS[index] ?? ORDERS[0]).filter((each) => each !== 'ratings')),
      left: sections.ratings,
    })),
  ]
  const least = Math.min(...tries.map(({ pages }) => pages.length))
  const best = tries.find(({ pages }) => pages.length <= Math.max(least, usable.length))
  const { pages, left } = best ?? { pages: [], left: [] }
  return {
    below: rooms.map((_, index) => {
      const at = usable.findIndex(([room]) => room === index)
      return at === -1 ? [] : (pages[at] ?? [])
    }),
    more: pages.slice(usable.length),
    left,
  }
}
