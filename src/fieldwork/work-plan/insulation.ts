import { listModuleGroups, type Project } from '../../project/index.js'
import { INSULATION_FACTOR, INSULATION_SOURCE, INSULATION_TESTS } from '../../tables/fieldwork/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { own, type Celsius } from '../../values/index.js'
import type { CurrentReading, InsulationValue } from './plan-values.js'

/**
 * Test voltage and least resistance of every string: the row of 1.25 x Voc, but never above the maximum system voltage
 * of the modules, which stay connected; then the next lower voltage of the table is used, below the standard.
 *
 * @source IEC 62446-1 (see INSULATION_SOURCE); the bound by the system voltage is ours, on the safe side.
 */
export function insulationValues(project: Project, worksheet: Worksheet): InsulationValue[] {
  return listModuleGroups(project).flatMap(({ id, array, module, conversion }) => {
    if (conversion.kind !== 'string') return []
    if (array.optimiser !== undefined) {
      tellConverters(project, id, array.optimiser, worksheet)
      return []
    }
    const maxV = module.max_system_voltage_v
    if (maxV === undefined)
      worksheet.find({
        severity: 'warning',
        id: 'work.insulation-voltage-unknown',
        message: `the insulation test of array ${id} has no test voltage: the maximum system voltage of its modules is not stated`,
        where: `equipment.modules.${array.module}.max_system_voltage_v`,
        source: INSULATION_SOURCE,
        fix: 'Take it from the data sheet of the module; a test above it can hurt the module and who holds the probes',
      })
    return conversion.strings.map((string, index): InsulationValue => {
      const raisedV = INSULATION_FACTOR * string.modules * (module.voc_v ?? 0)
      const row = INSULATION_TESTS.find(({ upToV, including }) => (including ? raisedV <= upToV : raisedV < upToV))
      const tableV = row?.testV ?? 0
      const allowed = INSULATION_TESTS.map(({ testV }) => testV).filter((testV) => testV <= Math.min(tableV, maxV ?? 0))
      return {
        what: `string ${index + 1} of array ${id}`,
        raised_voc_v: raisedV,
        table_test_v: tableV,
        test_v: allowed.at(-1) ?? null,
        max_system_v: maxV ?? null,
        least_mohm: row?.leastMohm ?? 1,
      }
    })
  })
}

/** Strings with converters: what the meter shows is the converters', so no reading follows from the modules. */
function tellConverters(project: Project, arrayId: string, id: string, worksheet: Worksheet): void {
  const leftV = own(project.equipment.optimisers, id)?.shutdown_v
  worksheet.find({
    severity: 'note',
    id: 'work.converter-strings',
    message: `the strings of array ${arrayId} have converters: with the inverter off each unit reads ${leftV === undefined ? 'its shutdown voltage' : `${leftV} V`}, so open voltage, short-circuit current and insulation are tested as their maker says`,
    where: `arrays.${arrayId}.optimiser`,
    source: INSULATION_SOURCE,
    fix: 'Follow the instructions of the converters; measure the modules before they are joined to them',
  })
}

/**
 * Short-circuit current of a string in a light and at a temperature, A; without a coefficient not corrected for temperature.
 *
 * @source Module data sheet: Isc(G, T) = Isc G / 1000 W/m2 (1 + alpha (T - 25 C))
 * @example stringIscA({ isc_a: 10.9, isc_pct_per_c: 0.05 }, 820, 48) // 9.04
 */
export function stringIscA(
  { isc_a: isc, isc_pct_per_c: alpha }: Pick<CurrentReading, 'isc_a' | 'isc_pct_per_c'>,
  irradianceWM2: number,
  cellC: Celsius,
): number | null {
  if (isc === null) return null
  return ((isc * irradianceWM2) / 1000) * (1 + ((alpha ?? 0) / 100) * (cellC - 25))
}

/** Short-circuit and operating current of every string, from the data sheet of its modules. */
export function currentReadings(project: Project): CurrentReading[] {
  return listModuleGroups(project).flatMap(({ id, array, module, conversion }) =>
    conversion.kind === 'string' && array.optimiser === undefined
      ? conversion.strings.map((_, index) => ({
          what: `string ${index + 1} of array ${id}`,
          isc_a: module.isc_a ?? null,
          imp_a: module.imp_a ?? null,
          isc_pct_per_c: module.isc_temp_coeff_pct_per_c ?? null,
        }))
      : [],
  )
}
