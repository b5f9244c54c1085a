import type { Job } from '../system/index.js'
import type { Tree } from './tree.js'

/** Whether the breakers of every panel interrupt what can flow; a cable between two panels is not reckoned with. */
export function findFault(job: Job, tree: Tree): void {
  const availableA = job.electrical.service?.available_fault_current_a
  for (const { interruptingA, where, name, id } of tree.panels) {
    if (availableA === undefined || interruptingA === undefined || interruptingA >= availableA) continue
    job.worksheet.find({
      severity: 'error',
      id: 'wire.interrupting-rating',
      message: `the breakers${id === 'panel' ? '' : ` of the ${name}`} interrupt ${interruptingA} A, ${availableA} A can flow`,
      where: `${where}.interrupting_rating_a`,
      source: job.nec('interruptingRating'),
      fix: 'Use breakers with a higher interrupting rating',
    })
  }
}
