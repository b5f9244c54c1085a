import type { MainPanel } from '../../project/index.js'
import type { FeedThrough } from '../connection/index.js'
import { practice, type Job } from '../system/index.js'

/** What hangs on the feed-through lugs of the only panel; what is not stated there is asked for. */
export function statedLugs(job: Job, stated: MainPanel['feed_through']): FeedThrough | undefined {
  if (stated === undefined) return undefined
  const where = 'electrical.panel.feed_through'
  if (stated.panel_bus_a === undefined)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.feed-through-panel',
      message:
        'the busbar rating of the panel behind the feed-through lugs is not stated; main and inverters together can feed it',
      where: `${where}.panel_bus_a`,
      source: job.nec('feederConnection'),
      fix: 'Read it on the label of that panel and state it; without it no connection rule holds',
    })
  const { overcurrent_device_a: deviceA } = stated
  return {
    ampacityA: stated.conductor_ampacity_a,
    deviceA,
    deviceAt:
      stated.overcurrent_device_at ??
      (deviceA === undefined
        ? 'end'
        : job.worksheet.assume({
            path: `${where}.overcurrent_device_at`,
            value: 'end' as const,
            unit: '',
            why: 'At the end of the feed-through conductors, where it allows fewer methods',
            source: practice(''),
          })),
    panelBusA: stated.panel_bus_a,
  }
}
