import type { Disconnect } from '../../project/index.js'
import { CONTINUOUS_FACTOR, lockableDisconnect } from '../../tables/nec/index.js'
import { type ServiceFloor, type Job, nextStandardDeviceA } from '../system/index.js'
import type { Amperes } from '../../values/index.js'

/** The PV disconnects: there, large enough for the output, in reach, lockable, and fit for a service where they are one. */
export function checkDisconnects(job: Job, outputA: Amperes, service: ServiceFloor | undefined): void {
  const { disconnects } = job.electrical
  const source = job.nec('pvDisconnect')
  const pv = Object.entries(disconnects ?? {}).filter(([, disconnect]) => disconnect.kind === 'pv_system')
  const supply = service !== undefined
  if (pv.length === 0)
    job.worksheet.find({
      severity: supply ? 'error' : 'note',
      id: 'wire.pv-disconnect',
      message: supply
        ? 'a supply-side connection needs a PV disconnect that is rated as service equipment, and none is stated'
        : 'no PV disconnect is stated, so the backfed breaker serves as it; it has to be readily accessible and marked',
      where: 'electrical.disconnects',
      source,
      fix: supply
        ? 'Add one under electrical.disconnects'
        : 'Ask utility and authority whether they want a visible switch outside',
    })
  for (const [id, disconnect] of pv) {
    const where = `electrical.disconnects.${id}`
    const fail = (severity: 'error' | 'warning', key: string, message: string, fix: string): void => {
      job.worksheet.find({ severity, id: `wire.${key}`, message: `PV disconnect ${id} ${message}`, where, source, fix })
    }
    if (disconnect.rating_a === undefined) fail('warning', 'disconnect-rating-unknown', 'states no rating', 'State it')
    else if (disconnect.rating_a < CONTINUOUS_FACTOR * outputA)
      fail(
        'error',
        'disconnect-rating',
        `is rated ${disconnect.rating_a} A, ${(CONTINUOUS_FACTOR * outputA).toFixed(1)} A are needed`,
        'Use a larger switch',
      )
    if (disconnect.readily_accessible === false)
      fail('error', 'disconnect-access', 'is not readily accessible', 'Move it')
    if (lockableDisconnect.includes(job.edition) && disconnect.lockable !== true)
      fail(
        disconnect.lockable === false ? 'error' : 'warning',
        'disconnect-lock',
        'is not stated to be lockable open',
        'Use one with a hasp and state lockable: true',
      )
    if (supply && disconnect.service_rated !== true)
      fail(
        'error',
        'disconnect-service-rated',
        'is not stated to be rated as service equipment',
        'Use one marked suitable for use as service equipment',
      )
  }
  if (service !== undefined && pv.length > 0) checkServiceDisconnects(job, pv, service)
}

/** PV disconnects ahead of the main are service disconnects: large enough for a service and holding the overcurrent device. */
function checkServiceDisconnects(
  job: Job,
  pv: readonly (readonly [string, Disconnect])[],
  { endDeviceA, leastA }: ServiceFloor,
): void {
  const own = pv.length === 1 ? endDeviceA : 0
  for (const [id, { rating_a: ratingA = Infinity }] of pv)
    if (ratingA < Math.max(leastA, own))
      job.worksheet.find({
        severity: 'error',
        id: 'wire.supply-side-disconnect-small',
        message: `PV disconnect ${id} is rated ${ratingA} A; on the supply side ${leastA} A is the least${own > leastA ? `, and its overcurrent device is ${own} A` : ''}`,
        where: `electrical.disconnects.${id}.rating_a`,
        source: job.nec('serviceDisconnectRating'),
        fix: `Use one of at least ${nextStandardDeviceA(Math.max(leastA, own), 'electrical.disconnects')} A; a smaller fuse may stand in it, and ask the authority before you count the system as a service of one or two circuits`,
      })
  if (pv.some(([, { fused, breaker }]) => fused === true || breaker === true)) return
  job.worksheet.find({
    severity: 'error',
    id: 'wire.supply-side-unfused',
    message: `no PV disconnect on the supply side is stated to hold the ${endDeviceA} A overcurrent device that belongs in it or right beside it`,
    where: `electrical.disconnects.${pv[0]?.[0] ?? ''}`,
    source: job.nec('serviceOvercurrent'),
    fix: `Use a switch with ${endDeviceA} A fuses and state fused: true, or an enclosed ${endDeviceA} A circuit breaker and state breaker: true`,
  })
}
