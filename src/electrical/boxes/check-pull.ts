import type { Job } from '../system/index.js'
import type { Held } from './box-contents.js'
import type { BoxSite } from './box-sites.js'
import { judgePull, type PullVerdict } from './judge-pull.js'

/** Length of a box for conductors of 4 AWG and larger, with what it says. */
export function checkPull(job: Job, site: BoxSite, held: Held): Partial<Pick<PullVerdict, 'passes' | 'requiredIn'>> {
  const { box, where, id } = site
  if (box.marked_for_conductors === true) return { passes: true }
  const verdict = judgePull(site, held)
  if (verdict === undefined || verdict.passes === undefined) {
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.box-not-checked',
      message: `${id} holds conductors of 4 AWG or larger; its length was not checked because ${verdict === undefined ? 'the trade size of its raceway' : verdict.missing.join(', ')} is not stated`,
      where,
      source: job.nec('pullBox'),
      fix: 'State pull, length_in and, for angles and splices, entry_distance_in; or marked_for_conductors where it is marked for them',
    })
    return {}
  }
  const { requiredIn, requiredEntryIn, requiredCoverIn, largest, passes } = verdict
  job.worksheet.note({
    id: `wire.${id}.pull`,
    says: `Inside length for conductors of 4 AWG and larger, ${box.pull ?? ''} pull, raceway of ${largest} in`,
    formula: 'straight 8 x largest; angle or splice 6 x largest + the others of the row',
    inputs: [
      { symbol: 'largest', value: largest, unit: 'in', from: 'raceways of the box' },
      { symbol: 'others', value: (box.other_trade_sizes ?? []).join(', ') || 'none', unit: 'in', from: where },
    ],
    result: { symbol: 'least', value: requiredIn, unit: 'in' },
    check: { relation: '<=', limit: box.length_in ?? 0, pass: requiredIn <= (box.length_in ?? 0) * (1 + 1e-9) },
    source: job.nec('pullBox'),
  })
  if (!passes)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.box-pull',
      message: [
        `${id} is ${box.length_in ?? 0} in long; a ${box.pull ?? ''} pull with a raceway of ${largest} in needs ${requiredIn} in`,
        ...(requiredEntryIn === undefined
          ? []
          : [`between the entries ${requiredEntryIn} in, it has ${box.entry_distance_in ?? 0} in`]),
        ...(requiredCoverIn === undefined
          ? []
          : [`to the cover opposite an entry ${requiredCoverIn} in, it has ${box.cover_distance_in ?? 0} in`]),
      ].join('; '),
      where: `${where}.length_in`,
      source: job.nec('pullBox'),
      fix: 'Use a longer box, or one that is marked for these conductors',
    })
  return { passes, requiredIn }
}
