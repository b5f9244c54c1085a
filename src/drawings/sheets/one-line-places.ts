import type { WiringValues } from '../../electrical/index.js'

/** Where things stand across the one-line diagram, shares of its width. */
export interface Places {
  /** Modules; on the wide diagram the words of a row end before them. */
  readonly symbol: number
  /** Junction box of strings, and of branches. */
  readonly dcJunction: number
  readonly acJunction: number
  readonly inverter: number
  readonly combiner: number
  readonly disconnect: number
  readonly panel: number
  readonly flag: number
  readonly tap: number
  readonly meter: number
  /** Whether the words of a row stand above its wire, and those of the panel below the diagram. */
  readonly stacked: boolean
}

/** Below this width the words of a row do not fit beside its wire, points. */
const NARROW_PT = 600

const WIDE: Places = {
  symbol: 0.2,
  dcJunction: 0.31,
  acJunction: 0.31,
  inverter: 0.385,
  combiner: 0.545,
  disconnect: 0.68,
  panel: 0.775,
  flag: 0.84,
  tap: 0.88,
  meter: 0.92,
  stacked: false,
}

const NARROW: Places = {
  symbol: 0.023,
  dcJunction: 0.19,
  acJunction: 0.275,
  inverter: 0.301,
  combiner: 0.51,
  disconnect: 0.667,
  panel: 0.755,
  flag: 0.8,
  tap: 0.888,
  meter: 0.918,
  stacked: true,
}

/** Places for a diagram of this width; without an AC combiner the inverters have its room. */
export function placesFor(widthPt: number, wiring: WiringValues): Places {
  if (widthPt >= NARROW_PT) return WIDE
  return wiring.combiner === null ? { ...NARROW, dcJunction: 0.26, inverter: 0.38 } : NARROW
}
