import type { KilowattHours } from '../../values/index.js'

/** An array with its modules in the order in which they are bought. */
export interface ModuleLot {
  readonly arrayId: string
  /** Energy of the first n modules, kWh a year; entry 0 is 0. */
  readonly kwhOfFirst: readonly number[]
  /** Modules of the project as it stands. */
  readonly own: number
  /** Whether the inverter takes this number of modules. */
  readonly takes: (modules: number) => boolean
}

/** Number of modules of each lot, in the order of the lots. */
export type Share = readonly number[]

interface Best {
  readonly kwh: KilowattHours
  readonly share: Share
}

/**
 * Shares every total number of modules out over the arrays, so that they yield most: up to the project as it stands from
 * its own modules, above it on top of them.
 *
 * @returns By total number of modules; a total that no sharing reaches is left out.
 */
export function shareModules(lots: readonly ModuleLot[]): Map<number, Share> {
  const own = lots.reduce((sum, lot) => sum + lot.own, 0)
  const smaller = best(lots, (lot, count) => count <= lot.own)
  const larger = best(lots, (lot, count) => count >= lot.own)
  const shares = new Map<number, Share>()
  const most = lots.reduce((sum, lot) => sum + lot.kwhOfFirst.length - 1, 0)
  for (let total = 1; total <= most; total++) {
    const share = total === own ? lots.map((lot) => lot.own) : (total < own ? smaller : larger).get(total)?.share
    if (share !== undefined) shares.set(total, share)
  }
  return shares
}

/** The largest energy for each total, one lot after the other. */
function best(lots: readonly ModuleLot[], allows: (lot: ModuleLot, count: number) => boolean): Map<number, Best> {
  let reached = new Map<number, Best>([[0, { kwh: 0, share: [] }]])
  for (const lot of lots) {
    const next = new Map<number, Best>()
    for (const [count, own] of lot.kwhOfFirst.entries()) {
      if (!allows(lot, count) || !(count === lot.own || lot.takes(count))) continue
      for (const [total, before] of reached) {
        const kwh = before.kwh + own
        const known = next.get(total + count)
        if (known === undefined || kwh > known.kwh + 1e-9) {
          next.set(total + count, { kwh, share: [...before.share, count] })
        }
      }
    }
    reached = next
  }
  return reached
}
