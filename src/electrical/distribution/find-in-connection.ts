import type { Circuit, Job } from '../system/index.js'

/** What there is to say of the breakers that the PV system lands on. */
export function findInConnection(job: Job, output: Circuit | undefined, first: readonly Circuit[]): void {
  const { connection } = job.electrical
  if (output !== undefined || first.length <= 1) return
  job.worksheet.find({
    severity: 'note',
    id: 'wire.several-breakers',
    message: `${first.length} circuits land on breakers of their own in the panel; a combiner panel would need one`,
    where: 'electrical.combiner',
    source: job.nec('loadSideBusbar'),
  })
  if (connection?.breaker_a === undefined) return
  job.worksheet.find({
    severity: 'warning',
    id: 'wire.connection-breaker-unused',
    message: `breaker_a of ${connection.breaker_a} A was not used: ${first.length} circuits land on devices of their own`,
    where: 'electrical.connection.breaker_a',
    source: job.nec('standardDevice'),
    fix: 'State the breakers in electrical.branches, or a combiner panel with one device',
  })
}
