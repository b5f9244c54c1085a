import { practice, shownDocument, type Job } from '../system/index.js'
import { flowOnSupplySide } from './flows.js'
import type { Tree } from './tree.js'

/** The meter: its socket against the service, and a collar adapter as the place of a supply-side connection. */
export function findMeter(job: Job, tree: Tree): void {
  const { service, connection } = job.electrical
  const meter = service?.meter
  if (meter === undefined) return
  const where = 'electrical.service.meter'
  if (meter.rating_a !== undefined && tree.service.ratingA !== undefined && meter.rating_a < tree.service.ratingA)
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.meter-socket-small',
      message: `the meter socket is rated ${meter.rating_a} A, the service ${tree.service.ratingA} A`,
      where: `${where}.rating_a`,
      source: practice('rating of the meter socket'),
      fix: 'Read both ratings again; sockets are often rated for what flows without end, ask the utility',
    })
  if (meter.kind !== 'collar_adapter') return
  if (connection?.kind !== 'supply_side') {
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.meter-adapter-unused',
      message: 'a collar adapter at the meter is a supply-side connection, and the PV system is connected elsewhere',
      where: `${where}.kind`,
      source: job.nec('supplySide'),
      fix: 'State connection.kind: supply_side, or the kind of meter socket that is there',
    })
    return
  }
  checkAdapter(job, tree, where)
}

function checkAdapter(job: Job, tree: Tree, where: string): void {
  const meter = job.electrical.service?.meter
  const deviceA = flowOnSupplySide(tree)
    .sources.flatMap(({ devices }) => devices)
    .reduce((sum, { ratingA }) => sum + (ratingA ?? 0), 0)
  const source = job.nec('listedEquipment')
  if (meter?.adapter_rating_a === undefined || meter.adapter_rating_a < deviceA)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.meter-adapter-rating',
      message:
        meter?.adapter_rating_a === undefined
          ? 'the largest source device that the collar adapter is listed for is not stated'
          : `the collar adapter is listed for ${meter.adapter_rating_a} A, the source devices are ${deviceA} A`,
      where: `${where}.adapter_rating_a`,
      source,
      fix: 'Read it in the instructions of the adapter',
    })
  if (shownDocument(job, meter?.acceptance_document) === undefined)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.meter-adapter-acceptance',
      message:
        'a collar adapter needs the written acceptance of the utility, and no dated document under documents shows it',
      where: `${where}.acceptance_document`,
      source: practice('rules of the utility'),
      fix: 'Ask the utility, add its letter under documents and name it here',
    })
}
