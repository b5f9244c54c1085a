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
  const into = values.fastener.into
  const fastener =
    screw === undefined || into !== 'rafter'
      ? otherFastener(values)
      : {
          item: `lag.${screw.size}x${screw.length_in}`,
          name: `Lag screw ${screw.size} in x ${screw.length_in} in with washer`,
        }
  const flashing = {
    ...each(`flashing.${mountId}`, `Flashing of mount ${mountId}`, 'roof', count, `one ${at}`),
    general: 'flashing',
  }
  const sealant = each(
    'sealant',
    'Roof sealant, tube',
    'roof',
    count / perTube,
    `a tube for ${perTube} mounts, ${count} mounts (mounts: values.mounts)`,
  )
  return [
    each(`mount.${mountId}`, product?.name ?? `Mount ${mountId}`, 'roof', count, `one ${at}`),
    // A clamp on a seam makes no hole, and comes with its setscrews.
    ...(into === 'seam'
      ? []
      : [
          flashing,
          each(
            fastener.item,
            fastener.name,
            'roof',
            values.fastener.count,
            `${values.fastener.each} ${at.replace('values.mounts', 'values.fastener.count')}`,
          ),
          sealant,
        ]),
    {
      ...each(`rail-bolt.${mountId}`, 'Bolt and nut from mount to rail', 'racking', count, `one ${at}`),
      general: 'rail-bolt',
    },
  ]
}

/** What fixes a mount that has no lag screws, as its sheet names it. */
function otherFastener({ fastener, mount_kind: kind }: MountValues): { item: string; name: string } {
  if (kind === 'rafter_screw' && fastener.name === 'lag screw') return { item: 'lag', name: 'Lag screw' }
  const item = fastener.name.toLowerCase().replaceAll(/[^a-z0-9]+/gu, '-')
  return { item: `screw.${item}`, name: `${fastener.name.charAt(0).toUpperCase()}${fastener.name.slice(1)}` }
}
