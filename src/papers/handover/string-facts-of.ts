import { listModuleGroups } from '../../project/index.js'
import { own } from '../../values/index.js'
import type { HandoverInput } from './handover-input.js'
import type { StringFacts } from './judge/index.js'

/** The strings of a house that have DC tests, each with its readings; strings with converters are tested as their maker says. */
export function stringFactsOf(input: HandoverInput): StringFacts[] {
  const { project, work, measured, cellC } = input
  let at = 0
  return listModuleGroups(project).flatMap((group): StringFacts[] => {
    const { id: arrayId, array, module, conversion, tiltDeg, azimuthDeg } = group
    if (conversion.kind !== 'string' || array.optimiser !== undefined) return []
    return conversion.strings.map(({ modules }, index) => {
      const id = `${arrayId}_s${index + 1}`
      const reading = own(measured.strings, id) ?? {}
      const facts: StringFacts = {
        id,
        what: `string ${id}`,
        moduleId: array.module,
        module,
        modules,
        alike: [array.module, modules, tiltDeg, azimuthDeg].join(' '),
        current: work.currents[at] ?? { what: id, isc_a: null, imp_a: null, isc_pct_per_c: null },
        insulation: work.insulation[at],
        reading,
        cellC: reading.cell_c ?? measured.cell_c ?? cellC,
        irradianceWM2: reading.irradiance_w_m2 ?? measured.irradiance_w_m2 ?? input.irradianceWM2,
        where: `commissioning.strings.${id}`,
      }
      at += 1
      return facts
    })
  })
}

/** Ids of all strings as size-wire names them. */
export function stringIds(project: HandoverInput['project']): string[] {
  return Object.entries(project.arrays).flatMap(([id, { strings = [] }]) =>
    strings.map((_, index) => `${id}_s${index + 1}`),
  )
}
