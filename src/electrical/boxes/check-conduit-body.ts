import { CONDUIT_BODY_FACTOR } from '../../tables/nec/index.js'
import type { Job } from '../system/index.js'
import type { Held } from './box-contents.js'
import type { BoxSite } from './box-sites.js'

/**
 * Cross-section of a conduit body and whether it may hold splices.
 *
 * @returns undefined when it could not be checked.
 * @source NEC 314.16(C), 314.5
 */
export function checkConduitBody(job: Job, site: BoxSite, { spliced, large }: Held): boolean | undefined {
  const { box, where, id } = site
  const tell = (severity: 'error' | 'warning', rule: string, message: string, fix: string): void =>
    job.worksheet.find({ severity, id: rule, message, where, source: job.nec('conduitBody'), fix })
  if (spliced && (box.short_radius === true || box.volume_in3 === undefined)) {
    tell(
      'error',
      'wire.conduit-body',
      `conductors are spliced in ${id}, ${box.short_radius === true ? 'a short-radius body, which holds none' : 'which holds splices only when its volume is marked on it'}`,
      'Use a box, or state the marked volume as volume_in3',
    )
    return false
  }
  // Larger conductors go by the length of the body, or by its marking.
  if (large.length > 0 || box.short_radius === true) return true
  const inside = Math.max(...site.segments.map(({ contents }) => contents.verdict?.insideIn2 ?? 0))
  const required = CONDUIT_BODY_FACTOR * inside
  if (box.area_in2 === undefined || inside === 0) {
    tell(
      'warning',
      'wire.box-not-checked',
      `${id} needs a cross-section of ${inside === 0 ? 'twice that of its largest raceway' : `${required.toFixed(3)} in2`}; ${inside === 0 ? 'that of the raceway' : 'its own'} is not known, so it was not checked`,
      'State area_in2 from the data sheet',
    )
    return undefined
  }
  if (box.area_in2 >= required * (1 - 1e-9)) return true
  tell(
    'error',
    'wire.conduit-body',
    `${id} has a cross-section of ${box.area_in2} in2; twice that of its largest raceway is ${required.toFixed(3)} in2`,
    'Use a larger conduit body, or a box',
  )
  return false
}
