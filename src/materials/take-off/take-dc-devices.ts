import type { WiringValues } from '../../electrical/index.js'
import { own } from '../../values/index.js'
import type { Need } from './need.js'
import type { TakeOffJob } from './take-off-job.js'

/** Converters, shutdown units with their transmitters, and DC combiners with their fuses. */
export function takeDcDevices(job: TakeOffJob, wiring: WiringValues): Need[] {
  return [...converters(job, wiring), ...shutdownUnits(job, wiring), ...combiners(wiring)]
}

const each = (item: string, name: string, quantity: number, why: string): Need => ({
  item,
  name,
  group: 'connection',
  unit: 'each',
  quantity,
  why,
})

function converters(job: TakeOffJob, { strings }: WiringValues): Need[] {
  return strings.flatMap(({ id, optimiser }): Need[] =>
    optimiser === undefined
      ? []
      : [
          {
            ...each(
              `optimiser.${optimiser.id}`,
              own(job.project.equipment.optimisers, optimiser.id)?.name ?? `DC converter ${optimiser.id}`,
              optimiser.units,
              `${optimiser.units} behind the modules of string ${id} (wire: values.strings.optimiser)`,
            ),
            group: 'inverters',
          },
        ],
  )
}

function shutdownUnits(job: TakeOffJob, { strings, circuits }: WiringValues): Need[] {
  const equipment = job.project.electrical?.rapid_shutdown?.equipment
  if (equipment === undefined) return []
  const plain = new Set(circuits.filter(({ kind }) => kind === 'dc_string').map(({ id }) => id))
  const units = strings
    .filter(({ id, optimiser }) => plain.has(id) && optimiser === undefined)
    .reduce((sum, { modules }) => sum + Math.ceil(modules / equipment.modules_per_unit), 0)
  const place = 'electrical.rapid_shutdown.equipment'
  const transmitters = units === 0 ? 0 : (equipment.transmitters ?? 1)
  return [
    each(
      'shutdown-unit',
      equipment.name ?? `Rapid-shutdown unit for ${equipment.modules_per_unit} module(s)`,
      units,
      `one for ${equipment.modules_per_unit} module(s) of each string (${place})`,
    ),
    each(
      'shutdown-transmitter',
      'Transmitter of the rapid-shutdown units',
      transmitters,
      `stated (${place}.transmitters)`,
    ),
  ]
}

function combiners({ dc_combiners: boxes }: WiringValues): Need[] {
  return (boxes ?? []).flatMap(({ id, strings, poles_fused: poles, fuse_a: fuseA }): Need[] => {
    const perString = poles === 'both' ? 2 : 1
    return [
      each(
        'dc-combiner',
        `DC combiner for ${strings.length} strings`,
        1,
        `DC combiner ${id} (wire: values.dc_combiners)`,
      ),
      ...(fuseA === null
        ? []
        : [
            {
              ...each(
                `fuse.pv.${fuseA}a`,
                `Fuse for PV DC, ${fuseA} A`,
                perString * strings.length,
                `${perString} for each of ${strings.length} strings of DC combiner ${id} (wire: values.dc_combiners)`,
              ),
              general: 'fuse',
            },
          ]),
    ]
  })
}
