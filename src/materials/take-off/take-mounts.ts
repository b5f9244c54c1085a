import type { MountValues } from '../../structure/index.js'
import { own } from '../../values/index.js'
import type { Need } from './need.js'
import { practiceValue } from './practice.js'
import type { TakeOffJob } from './take-off-job.js'

/** Mounts with flashing, screws and sealant, and the bolts that hold the rails on them. */
export function takeMounts(job: TakeOffJob, values: MountValues): Need[] {
  const mountId = job.project.structure?.mount ?? ''
  const product = own(job.project.equipment.mounts, mountId)
  const count = values.mounts.length
  const at = `at each of ${count} mounts (mounts: values.mounts)`
  const screw = product?.lag
  const perTube = practiceValue(job, 'mounts_per_sealant_tube')
  const each = (item: string, name: string, group: 'roof' | 'racking', quantity: number, why: string): Need => ({
    item,
    name,
    group,
    unit: 'each',
    quantity,
    why,
  })
  return [
    each(`mount.${mountId}`, product?.name ?? `Mount ${mountId}`, 'roof', count, `one ${at}`),
    {
      ...each(`flashing.${mountId}`, `Flashing of mount ${mountId}`, 'roof', count, `one ${at}`),
      general: 'flashing',
    },
    each(
      screw === undefined ? 'lag' : `lag.${screw.size}x${screw.length_in}`,
      screw === undefined ? 'Lag screw' : `Lag screw ${screw.size} in x ${screw.length_in} in with washer`,
      'roof',
      values.counts.lag_screws,
      `${count > 0 ? values.counts.lag_screws / count : 0} ${at.replace('values.mounts', 'values.counts.lag_screws')}`,
    ),
    each(
      'sealant',
      'Roof sealant, tube',
      'roof',
      count / perTube,
      `a tube for ${perTube} mounts, ${count} mounts (mounts: values.mounts)`,
    ),
    {
      ...each(`rail-bolt.${mountId}`, 'Bolt and nut from mount to rail', 'racking', count, `one ${at}`),
      general: 'rail-bolt',
    },
  ]
}
