import { necSource } from '../../tables/nec/index.js'
import type { Job } from '../system/index.js'
import type { SizedSegment } from './size-segments.js'

/** What a cable or flexible conduit asks besides ampacity and supports, and how its circuits are grounded. */
export function recordMethod(
  job: Job,
  { segment, conditions: { method, currentCarrying }, circuits }: SizedSegment,
): void {
  if (method.unchecked === '') return
  const { stated, where } = segment
  const cable = method.form === 'cable'
  job.worksheet.note({
    id: `wire.${segment.id}.method`,
    says: `${method.name}, ${cable ? 'one for each circuit; ' : ''}equipment ground: ${method.ground}. Not checked: ${method.unchecked}`,
    formula: 'the place by the article of the method',
    inputs: [
      { symbol: 'location', value: stated.location, unit: '', from: `${where}.location` },
      { symbol: 'markings', value: (stated.markings ?? []).join(', ') || 'none stated', unit: '', from: where },
      ...(cable
        ? [
            {
              symbol: 'in insulation',
              value: stated.in_insulation === true ? 'yes' : 'no',
              unit: '',
              from: `${where}.in_insulation`,
            },
            { symbol: 'current-carrying together', value: currentCarrying, unit: 'conductors', from: where },
          ]
        : []),
    ],
    result: { symbol: cable ? 'cables' : 'circuits', value: circuits.length, unit: '' },
    source: necSource(job.edition, method.article, job.nec('listedEquipment').standing),
  })
}
