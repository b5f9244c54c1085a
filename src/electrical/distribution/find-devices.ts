import { checkRating } from '../circuits/index.js'
import type { Job } from '../system/index.js'
import { flowThroughFeeder } from './flows.js'
import type { BackfedDevice, Tree } from './tree.js'

interface Backfed {
  readonly what: string
  readonly device: BackfedDevice
  readonly onBusbar: boolean
}

/** Breakers that carry current backwards: made for it, and at a known place of the busbar. */
export function findDevices(job: Job, tree: Tree): void {
  const own = tree.sources
    .filter(({ runsInParallel, at }) => runsInParallel && at !== 'supply_side')
    .flatMap(({ name, devices, at }): Backfed[] =>
      devices.slice(0, 1).map((device) => ({
        what: `the breaker of ${name}`,
        device,
        onBusbar: at !== 'supply_side' && 'panel' in at,
      })),
    )
  const feeders = tree.feeders
    .filter((feeder) => flowThroughFeeder(tree, feeder).sources.length > 0 && !feeder.throughLugs)
    .map((feeder): Backfed => ({ what: `the breaker of feeder ${feeder.id}`, device: feeder.device, onBusbar: true }))
  for (const each of [...own, ...feeders]) checkBackfed(job, each)
  for (const source of tree.sources)
    if (source.runsInParallel && source.devices.some(({ ratingA }) => ratingA === undefined))
      job.worksheet.find({
        severity: 'error',
        id: 'wire.source-device-unknown',
        message: `the overcurrent device of ${source.name} is not stated, so it was not checked and the sums that count devices lack it`,
        where: `${source.where}.breaker_a`,
        source: job.nec('acOutputSizing'),
        fix: 'Read it at the panel and state breaker_a',
      })
  findRatings(job, tree)
}

function checkBackfed(job: Job, { what, device, onBusbar }: Backfed): void {
  if (device.markedLineLoad)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.breaker-line-load',
      message:
        device.where === 'electrical.connection'
          ? 'a breaker marked LINE and LOAD must not be backfed'
          : `${what} is marked LINE and LOAD and must not be backfed`,
      where: `${device.where}.breaker_marked_line_load`,
      source: job.nec('backfedBreaker'),
      fix: 'Use a breaker without those marks',
    })
  if (device.type !== 'standard' && !device.markedForBackfeed)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.breaker-gfci-backfed',
      message: `${what} is of the ${device.type.replace('_', '/').toUpperCase()} type and is not stated to be marked for backfeed`,
      where: `${device.where}.breaker_type`,
      source: job.nec('backfedBreaker'),
      fix: 'Use a standard breaker, or one that is marked as suitable for backfeed and state breaker_marked_for_backfeed',
    })
  if (onBusbar && device.oppositeEnd === undefined)
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.breaker-position',
      message:
        device.where === 'electrical.connection'
          ? 'the position of the PV breaker on the busbar is not stated, so the rules that need the opposite end are not used'
          : `the position of ${what} on its busbar is not stated, so the rules that need the opposite end are not used`,
      where: `${device.where}.breaker_position`,
      source: job.nec('loadSideBusbar'),
      fix: 'State opposite_end when it stands at the other end of the busbar than the main',
    })
}

/** Ratings under distribution that no breaker or fuse is made for. */
function findRatings(job: Job, tree: Tree): void {
  const { distribution } = job.electrical
  if (distribution === undefined) return
  const stated = [
    ...tree.panels.map(({ where, mainA }) => ({ ratingA: mainA, where: `${where}.main_a` })),
    ...Object.entries(distribution.panels).flatMap(([id, { breakers_a: breakersA }]) =>
      (breakersA ?? []).map((ratingA, i) => ({
        ratingA,
        where: `electrical.distribution.panels.${id}.breakers_a[${i}]`,
      })),
    ),
    ...tree.feeders.map(({ where, device }) => ({ ratingA: device.ratingA, where: `${where}.breaker_a` })),
    ...Object.entries(distribution.taps ?? {}).map(([id, tap]) => ({
      ratingA: tap.end_device_a,
      where: `electrical.distribution.taps.${id}.end_device_a`,
    })),
    ...Object.entries(distribution.sources ?? {}).map(([id, source]) => ({
      ratingA: source.breaker_a,
      where: `electrical.distribution.sources.${id}.breaker_a`,
    })),
  ]
  for (const { ratingA, where } of stated)
    if (ratingA !== undefined)
      checkRating(job, { ratingA, where, what: where.slice(where.lastIndexOf('distribution.') + 13) })
}
