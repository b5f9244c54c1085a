import { wiringMethodRows, type WiringMethod, type WiringMethodRow } from '../../tables/nec/index.js'

/** What the code says of a wiring method. */
export function methodRow(method: WiringMethod): WiringMethodRow {
  const row = wiringMethodRows.find((candidate) => candidate.method === method)
  if (row === undefined) throw new Error(`no wiring method ${method}`)
  return row
}

/** Whether it is a cable, of which each circuit has its own. */
export const isCable = (method: WiringMethod): boolean => methodRow(method).form === 'cable'

/** Whether metal lies round the conductors. */
export const isMetal = (method: WiringMethod): boolean => methodRow(method).metal
