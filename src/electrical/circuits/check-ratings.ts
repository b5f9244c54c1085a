import { COMBINED_OUTPUT, type Circuit, type Job, standardNeighbours } from '../system/index.js'
import type { Amperes } from '../../values/index.js'

/** A rating of a breaker or fuse as the project states it. */
interface StatedRating {
  readonly ratingA: Amperes
  readonly what: string
  readonly where: string
}

/** Whether every stated overcurrent device is one that is made, and whether the device of a panel protects its busbar. */
export function checkRatings(job: Job, circuits: readonly Circuit[]): void {
  for (const rating of statedRatings(job)) checkRating(job, rating)
  const { panel, combiner } = job.electrical
  checkBusbar(job, 'the panel', panel?.main_a, panel?.bus_a, 'electrical.panel.main_a')
  const output = circuits.find(({ id }) => id === COMBINED_OUTPUT)
  checkBusbar(job, 'the combiner panel', output?.deviceA ?? undefined, combiner?.bus_a, 'electrical.combiner.bus_a')
}

/** Whether a stated overcurrent device is one that is made. */
export function checkRating(job: Job, { ratingA, what, where }: StatedRating): void {
  const neighbours = standardNeighbours(job.edition, ratingA)
  if (neighbours === undefined) return
  const { below, above } = neighbours
  job.worksheet.find({
    severity: 'error',
    id: 'wire.rating-not-standard',
    message: `${ratingA} A of ${what} is no standard rating of a breaker or fuse; ${below === undefined ? `the smallest is ${above} A` : above === undefined ? `the largest here is ${below} A` : `${below} A and ${above} A are the ones beside it`}`,
    where,
    source: job.nec('standardDevice'),
    fix: `Read the rating on the device${below === undefined || above === undefined ? '' : `, or use one of ${below} or ${above} A that the circuit allows`}; adjustable devices are not covered`,
  })
}

/** Every place of the project file where the rating of an overcurrent device is stated. */
function statedRatings(job: Job): StatedRating[] {
  const { panel, connection, branches, combiner, disconnects } = job.electrical
  const one = (ratingA: Amperes | undefined, what: string, where: string): StatedRating[] =>
    ratingA === undefined ? [] : [{ ratingA, what, where }]
  const list = (ratings: readonly number[] | undefined, what: string, where: string): StatedRating[] =>
    (ratings ?? []).map((ratingA, i) => ({ ratingA, what, where: `${where}[${i}]` }))
  return [
    ...one(panel?.main_a, 'the device that protects the panel', 'electrical.panel.main_a'),
    ...list(panel?.breakers_a, 'a breaker in the panel', 'electrical.panel.breakers_a'),
    ...one(
      panel?.feed_through?.overcurrent_device_a,
      'the device in the feed-through conductors',
      'electrical.panel.feed_through.overcurrent_device_a',
    ),
    ...one(connection?.breaker_a, 'the device of the connection', 'electrical.connection.breaker_a'),
    ...Object.entries(branches ?? {}).flatMap(([id, branch]) =>
      one(branch.breaker_a, `the breaker of branch ${id}`, `electrical.branches.${id}.breaker_a`),
    ),
    ...list(combiner?.other_breakers_a, 'a breaker in the combiner panel', 'electrical.combiner.other_breakers_a'),
    // A switch without fuses is no overcurrent device; fuses and breakers are bought by this rating.
    ...Object.entries(disconnects ?? {}).flatMap(([id, { rating_a: ratingA, fused, breaker }]) =>
      fused === true || breaker === true
        ? one(ratingA, `disconnect ${id}`, `electrical.disconnects.${id}.rating_a`)
        : [],
    ),
  ]
}

function checkBusbar(
  job: Job,
  name: string,
  deviceA: Amperes | undefined,
  busA: Amperes | undefined,
  where: string,
): void {
  if (deviceA === undefined || busA === undefined || deviceA <= busA) return
  job.worksheet.find({
    severity: 'error',
    id: 'wire.main-above-busbar',
    message: `the ${deviceA} A device that protects ${name} is above the ${busA} A of its busbar`,
    where,
    source: job.nec('panelProtection'),
    fix: `Use a device of at most ${busA} A, a panel with a larger busbar, or read both ratings again on the labels`,
  })
}
