/** Where things stand across the one-line diagram, shares of its width. */
export const AT = {
  symbol: 0.2,
  junction: 0.31,
  inverter: 0.385,
  combiner: 0.545,
  disconnect: 0.68,
  panel: 0.775,
  flag: 0.84,
  tap: 0.88,
  meter: 0.92,
} as const
