import { faultDown, governingFaultA, type FaultPair } from '../fault/index.js'
import type { Amperes } from '../../values/index.js'
import { SERVICE, type Tree } from './tree.js'

/** Fault current that the breakers of each panel, and the service, have to interrupt, by id; empty while it is not known. */
export function faultAtPanels(tree: Tree, service: FaultPair | undefined): Map<string, Amperes> {
  if (service === undefined) return new Map()
  const pairs = new Map<string, FaultPair>([[SERVICE, service]])
  // A panel stands after the one that feeds it.
  for (const { id } of tree.panels) {
    const feeder = tree.feeders.find(({ to }) => to === id)
    const before = feeder === undefined ? undefined : pairs.get(feeder.from)
    if (feeder === undefined || before === undefined) pairs.set(id, service)
    else {
      const { size, material, sets } = feeder.conductor
      pairs.set(id, faultDown(before, { size, material, sets, lengthFt: feeder.lengthFt }))
    }
  }
  return new Map([...pairs].map(([id, pair]) => [id, governingFaultA(pair)]))
}
