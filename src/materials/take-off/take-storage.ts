import type { WiringValues } from '../../electrical/index.js'
import type { Need } from './need.js'
import type { TakeOffJob } from './take-off-job.js'

/** Storage units with their breakers, disconnect, isolating device and current-limiting devices. */
export function takeStorage(job: TakeOffJob, { storage }: WiringValues): Need[] {
  if (storage === undefined) return []
  const { unit, name, count, circuits, disconnect, backup } = storage
  const each = (item: string, what: string, quantity: number, why: string): Need => ({
    item,
    name: what,
    group: 'connection',
    unit: 'each',
    quantity,
    why,
  })
  const rating = disconnect.rating_a
  // Where it is not stated, it is as large as the device ahead of it.
  const isolatingA = backup?.isolating_device_a ?? backup?.main_a ?? null
  return [
    {
      ...each(`storage.${unit}`, name, count, `${count} as stated (storage.count)`),
      group: 'inverters',
      noSpares: true,
    },
    ...circuits.flatMap(({ id, kind, breaker_a: deviceA }) =>
      deviceA === null
        ? []
        : [
            kind === 'ac_storage'
              ? each(
                  `breaker.2p.${deviceA}a`,
                  `Breaker, two poles, ${deviceA} A`,
                  1,
                  `1 for circuit ${id} (wire: values.storage)`,
                )
              : each(
                  `dc-device.${deviceA}a`,
                  `Overcurrent device listed for DC, two poles, ${deviceA} A`,
                  1,
                  `1 for circuit ${id} (wire: values.storage)`,
                ),
          ],
    ),
    ...(disconnect.at === null || disconnect.at === 'in_unit'
      ? []
      : [
          {
            ...each(
              `disconnect.storage${rating === null ? '' : `.${rating}a`}`,
              `Disconnect (storage)${rating === null ? '' : `, ${rating} A`}${disconnect.at === 'lockable_elsewhere' ? ', lockable open' : ''}`,
              1,
              'the disconnect of the storage (storage.installation.disconnect)',
            ),
            general: 'disconnect.storage',
          },
        ]),
    ...(backup === null
      ? []
      : [
          {
            ...each(
              `isolating-device${isolatingA === null ? '' : `.${isolatingA}a`}`,
              `Isolating device (microgrid interconnect device or transfer switch), listed${isolatingA === null ? '' : `, ${isolatingA} A${backup.isolating_device_a === null ? ' at least' : ''}`}`,
              1,
              'cuts the backed-up panel from the grid (storage.backup)',
            ),
            general: 'isolating-device',
          },
        ]),
    ...protection(job),
  ]
}

/** What the places of the units ask for: alarms that are stated, and posts. */
function protection({ project }: TakeOffJob): Need[] {
  return Object.entries(project.storage?.installation?.places ?? {}).flatMap(([id, { alarm }]): Need[] => {
    const place = `storage.installation.places.${id}`
    if (alarm !== 'heat' && alarm !== 'smoke') return []
    return [
      {
        item: `alarm.${alarm}`,
        name: `Listed ${alarm} alarm, interconnected with the smoke alarms of the house`,
        group: 'connection',
        unit: 'each',
        quantity: 1,
        why: `the alarm of ${id} (${place})`,
        noSpares: true,
      },
    ]
  })
}
