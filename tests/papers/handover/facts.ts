import type { StringFacts } from '../../../src/papers/handover/judge/index.js'

/** The worked example of the record: 11 modules of 49.5 V and 10.9 A, -0.25 and 0.05 %/K, cells at 48 C, 820 W/m2. */
export function example(reading: StringFacts['reading'] = {}, more: Partial<StringFacts> = {}): StringFacts {
  return {
    id: 'south_s1',
    what: 'string south_s1',
    moduleId: 'm',
    module: {
      pmax_w: 400,
      pmax_temp_coeff_pct_per_c: -0.3,
      voc_v: 49.5,
      voc_temp_coeff_pct_per_c: -0.25,
      isc_a: 10.9,
      isc_temp_coeff_pct_per_c: 0.05,
      max_system_voltage_v: 1000,
    },
    modules: 11,
    alike: 'm 11 20 180',
    current: { what: 'string 1 of array south', isc_a: 10.9, imp_a: 10.3, isc_pct_per_c: 0.05 },
    insulation: insulation(11 * 49.5, 1000),
    reading,
    cellC: 48,
    irradianceWM2: 820,
    where: 'commissioning.strings.south_s1',
    ...more,
  }
}

/** As the work plan gives it, for a string of that open voltage. */
export function insulation(vocV: number, maxV: number | null): StringFacts['insulation'] {
  const raisedV = 1.25 * vocV
  const table =
    raisedV < 120
      ? { testV: 250, leastMohm: 0.5 }
      : { testV: raisedV <= 500 ? 500 : raisedV <= 1000 ? 1000 : 1500, leastMohm: 1 }
  const allowed = [250, 500, 1000, 1500].filter((volts) => volts <= Math.min(table.testV, maxV ?? 0))
  return {
    what: 'string 1 of array south',
    raised_voc_v: raisedV,
    table_test_v: table.testV,
    test_v: allowed.at(-1) ?? null,
    max_system_v: maxV,
    least_mohm: table.leastMohm,
  }
}
