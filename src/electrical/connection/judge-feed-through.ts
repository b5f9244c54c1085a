import type { Amperes } from '../../values/index.js'

/** Conductors on the feed-through lugs of a panel and the panel that they feed. */
export interface FeedThrough {
  /** Ampacity of the conductors, A. */
  readonly ampacityA: Amperes
  /** Overcurrent device in them, A; undefined when there is none. */
  readonly deviceA: Amperes | undefined
  /** By the lugs, or at the panel that they feed. */
  readonly deviceAt: 'start' | 'end'
  /** Busbar of the panel that they feed, A; undefined when it is not stated. */
  readonly panelBusA: Amperes | undefined
}

/** What the feed-through conductors and the panel at their end take. */
export interface FeedThroughVerdict {
  /** Why they do not take it; undefined when they do. */
  readonly fault: string | undefined
  /** Largest sum of sources, each with its 125 percent, that they take, A; Infinity when a device protects them. */
  readonly sourceLimitA: Amperes
}

/**
 * Main and sources together can feed what hangs on the feed-through lugs: conductors and busbar there carry the sum of
 * both, or a device in the conductors is within their ratings.
 *
 * The next standard size above an ampacity is not used here.
 *
 * @param mainA Device that protects the panel with the lugs, A.
 * @param sourcesA 125 percent of the inverter currents, or the PV breakers where the edition counts them, A.
 * @source NEC 705.12(B)(1) with (B)(3)(6) (2020), 705.12(A) with (B)(6) (2023): secondary; NEC 705.12(B)(2)(1) (2017) of a
 * feeder with a source that is not at its far end: read; 408.36: read
 */
export function judgeFeedThrough(lugs: FeedThrough, mainA: Amperes, sourcesA: Amperes): FeedThroughVerdict {
  const { ampacityA, deviceA, panelBusA } = lugs
  if (panelBusA === undefined)
    return { fault: 'the busbar rating of the panel behind the feed-through lugs is not stated', sourceLimitA: 0 }
  const parts = [
    { name: 'feed-through conductors', takesA: ampacityA },
    { name: 'busbar of the panel behind the feed-through lugs', takesA: panelBusA },
  ].map((part) => {
    const isProtected = deviceA !== undefined && deviceA <= part.takesA
    return { ...part, limitA: isProtected ? Infinity : Math.max(0, part.takesA - mainA) }
  })
  const failing = parts.find(({ takesA, limitA }) => limitA < Infinity && mainA + sourcesA > takesA * (1 + 1e-12))
  return {
    fault:
      failing &&
      `the ${failing.name} can get ${(mainA + sourcesA).toFixed(1)} A and take ${failing.takesA} A, and no device in the conductors is within that`,
    sourceLimitA: Math.min(...parts.map(({ limitA }) => limitA)),
  }
}
