import { governingFaultA, recordRun, type FaultPair } from '../fault/index.js'
import type { Job } from '../system/index.js'
import { PV_SOURCE, type Tree } from './tree.js'

/**
 * Whether the breakers of every panel, and the device of a supply-side connection, interrupt what can flow there.
 *
 * @param service Fault current at the service; undefined when it is not known.
 * @source NEC 110.9, 110.10
 */
export function findFault(job: Job, tree: Tree, service: FaultPair | undefined): void {
  if (service === undefined) return
  const at = faultAtPanels(job, tree, service)
  for (const { interruptingA, where, name, id } of tree.panels) {
    const pair = at.get(id)
    const availableA = pair === undefined ? 0 : Math.round(governingFaultA(pair))
    if (interruptingA === undefined || interruptingA >= availableA) continue
    job.worksheet.find({
      severity: 'error',
      id: 'wire.interrupting-rating',
      message: `the breakers${id === 'panel' ? '' : ` of the ${name}`} interrupt ${interruptingA} A, ${availableA} A can flow`,
      where: `${where}.interrupting_rating_a`,
      source: job.nec('interruptingRating'),
      fix: 'Use breakers with a higher interrupting rating',
    })
  }
  if (tree.sources.some(({ id, at: place }) => id === PV_SOURCE && place === 'supply_side'))
    checkSupplySide(job, service)
}

/** Fault current at each panel; that of the service for those at it, and less behind a feeder. */
function faultAtPanels(job: Job, tree: Tree, service: FaultPair): Map<string, FaultPair> {
  const at = new Map<string, FaultPair>()
  // A panel stands after the one that feeds it.
  for (const panel of tree.panels) {
    const feeder = tree.feeders.find(({ to }) => to === panel.id)
    const before = feeder === undefined ? undefined : at.get(feeder.from)
    if (feeder === undefined || before === undefined) at.set(panel.id, service)
    else {
      const { size, material, sets } = feeder.conductor
      const run = { size, material, sets, lengthFt: feeder.lengthFt }
      at.set(panel.id, recordRun(job, `wire.fault.${panel.id}`, `the ${panel.name}`, before, run))
    }
  }
  return at
}

function checkSupplySide(job: Job, service: FaultPair): void {
  const availableA = Math.round(governingFaultA(service))
  for (const [id, { kind, interrupting_rating_a: ratingA }] of Object.entries(job.electrical.disconnects ?? {})) {
    if (kind !== 'pv_system') continue
    const where = `electrical.disconnects.${id}.interrupting_rating_a`
    if (ratingA === undefined)
      job.worksheet.find({
        severity: 'warning',
        id: 'wire.supply-side-interrupting-unknown',
        message: `the interrupting rating of PV disconnect ${id} ahead of the service disconnect is not stated; ${availableA} A can flow there`,
        where,
        source: job.nec('interruptingRating'),
        fix: 'Read it on breaker or fuses; a breaker of 10,000 A is often not enough near a transformer',
      })
    else if (ratingA < availableA)
      job.worksheet.find({
        severity: 'error',
        id: 'wire.supply-side-interrupting',
        message: `PV disconnect ${id} interrupts ${ratingA} A, ${availableA} A can flow ahead of the service disconnect`,
        where,
        source: job.nec('interruptingRating'),
        fix: 'Use fuses or a breaker with a higher interrupting rating',
      })
  }
}
