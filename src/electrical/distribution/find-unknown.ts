import type { FaultPair } from '../fault/index.js'
import type { Job } from '../system/index.js'
import type { Tree } from './tree.js'
import type { NodeVerdict } from './verdict.js'

/** Checks that could not be made, each told once with what is missing. */
export function findUnknown(
  job: Job,
  tree: Tree,
  verdicts: readonly NodeVerdict[],
  fault: FaultPair | undefined,
): void {
  for (const verdict of verdicts) {
    const panel = tree.panels.find(({ id }) => verdict.kind === 'panel' && id === verdict.id)
    const by120 = verdict.governs?.needed === 'one_of' && verdict.complies && verdict.governs.formula.includes('1.2')
    if (panel !== undefined && by120 && panel.loadA === undefined)
      job.worksheet.find({
        severity: 'note',
        id: 'wire.busbar-load-unknown',
        message: `the ${verdict.governs?.rule ?? ''} rule also wants the busbar of the ${panel.name} to be large enough for its loads; no load calculation is stated, so that was not checked`,
        where: `${panel.where}.load_a`,
        source: job.nec('loadOnBusbar'),
        fix: 'Make a load calculation (electrical.load_calculation), or state load_a of this panel',
      })
  }
  findFaultUnknown(job, tree, fault !== undefined)
  const { ratingA, ampacityA } = tree.service
  const asked = job.electrical.distribution !== undefined || tree.service.bare !== undefined
  if (asked && (ratingA === undefined || ampacityA === undefined))
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.service-unknown',
      message: `the ${ratingA === undefined ? 'rating of the service' : 'ampacity of the service conductors'} is not known, so the service was not judged`,
      where: 'electrical.service',
      source: job.nec('dwellingService'),
      fix: 'State rating_a, and conductor_size, conductor_material and conductor_insulation, or conductor_ampacity_a',
    })
}

function findFaultUnknown(job: Job, tree: Tree, known: boolean): void {
  const unread = tree.panels.filter(({ interruptingA }) => interruptingA === undefined)
  if (known && unread.length === 0) return
  job.worksheet.find({
    severity: 'note',
    id: 'wire.fault-current-unknown',
    message: `whether the breakers interrupt the fault current was not checked: ${[
      ...(known ? [] : ['the available fault current of the service is not known']),
      ...(unread.length === 0
        ? []
        : [`no interrupting rating is stated for ${unread.map(({ name }) => name).join(', ')}`]),
    ].join('; ')}`,
    where: known
      ? `${unread[0]?.where ?? 'electrical.panel'}.interrupting_rating_a`
      : 'electrical.service.available_fault_current_a',
    source: job.nec('interruptingRating'),
    fix: 'Ask the utility for the fault current, and read the rating on the breakers',
  })
}
