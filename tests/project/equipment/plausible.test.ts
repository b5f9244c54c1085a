import { describe, expect, test } from 'vitest'
import { addEquipment, entryOfSettings, readSettings, type EquipmentKind } from '../../../src/project/index.js'

const MODULE =
  'pmax_w=410 voc_v=37.4 isc_a=13.87 vmp_v=31.5 imp_a=13.02 pmax_temp_coeff_pct_per_c=-0.34 voc_temp_coeff_pct_per_c=-0.27 isc_temp_coeff_pct_per_c=0.05 noct_c=45 max_series_fuse_a=25 max_system_voltage_v=1000 length_in=67.8 width_in=44.6 weight_lb=47.4 sheet=x'
const STRING =
  'kind=string ac_power_w=6000 ac_current_a=25 ac_voltage_v=240 weighted_efficiency_pct=97 max_dc_power_w=9000 max_dc_voltage_v=600 mppt_min_v=120 mppt_max_v=500 start_v=150 max_input_current_a=15 max_input_isc_a=20 max_branch_ocpd_a=40 weight_lb=42 sheet=x'
const MICRO =
  'kind=module_level ac_power_w=366 ac_current_a=1.53 ac_voltage_v=240 weighted_efficiency_pct=97 max_dc_voltage_v=60 mppt_min_v=16 mppt_max_v=58 start_v=22 max_branch_ocpd_a=20 max_per_branch=10 weight_lb=2.4 sheet=x'
const OPTIMISER =
  'input_max_v=60 max_isc_a=15 output_max_a=15 output_max_v=60 max_input_power_w=450 shutdown_v=1 max_per_string=25 rapid_shutdown=true sheet=x'
const TRUNK = 'size_awg=12 ampacity_a=20 max_ocpd_a=20'
const RAIL =
  'section_modulus_x_in3=0.36 moment_of_inertia_x_in4=0.45 shear_area_in2=0.3 weight_lb_per_ft=0.75 max_span_in=72 max_cantilever_in=20 max_cantilever_of_span=0.33 sheet=x'
const MOUNT = 'lag.size=5/16 lag.length_in=5 lag.count=1 lag.lead_hole_in=0.1875 weight_lb=1.2 sheet=x'

/** Findings of the values with some changed: `error equipment.noct`. */
function found(kind: EquipmentKind, base: string, changes = ''): string[] {
  const keys = (changes === '' ? [] : changes.split(' ')).map((text) => text.split('=')[0] ?? '')
  const kept = base.split(' ').filter((text) => !keys.includes(text.split('=')[0] ?? ''))
  const { stated } = readSettings([
    ...kept,
    ...changes.split(' ').filter((text) => text.includes('=') && !text.endsWith('=')),
  ])
  const { entry, problems } = entryOfSettings({ kind, id: 'one' }, stated, { file: 'one' })
  const { findings, text } = addEquipment({ file: 'e.yaml', text: '', entries: [entry], problems })
  expect(text === undefined).toBe(findings.some(({ severity }) => severity === 'error'))
  for (const finding of findings) expect(finding.source).toBeDefined()
  return findings.map(({ severity, id }) => `${severity} ${id}`)
}

describe('a data sheet that fits together is taken', () => {
  test.each([
    ['module', MODULE],
    ['inverter', STRING],
    ['inverter', MICRO],
    ['optimiser', OPTIMISER],
    ['trunk-cable', TRUNK],
    ['rail', RAIL],
    ['mount', MOUNT],
  ] as const)('%s', (kind, base) => expect(found(kind, base)).toEqual([]))
})

describe('limits are where they are said to be', () => {
  test.each([
    // 31.5 V x 13.02 A = 410.13 W: 414 W is 0.93 % off, 415 W 1.17 %, 431 W 4.84 %, 433 W 5.28 %.
    ['pmax_w=414', []],
    ['pmax_w=415', ['warning equipment.power-product']],
    ['pmax_w=431', ['warning equipment.power-product']],
    ['pmax_w=433', ['error equipment.power-product']],
    ['pmax_w=388', ['error equipment.power-product']],
    // Vmp / Voc 0.92 of 34.24 V; Imp / Isc 0.84 of 15.5 A.
    ['voc_v=34.2', ['warning equipment.curve-shape']],
    ['isc_a=15.4 max_series_fuse_a=30', []],
    ['isc_a=15.6 max_series_fuse_a=30', ['warning equipment.curve-shape']],
    ['pmax_temp_coeff_pct_per_c=-0.51', ['warning equipment.temperature-coefficient']],
    ['pmax_temp_coeff_pct_per_c=-0.26', ['warning equipment.temperature-coefficient']],
    ['voc_temp_coeff_pct_per_c=-0.19', ['warning equipment.temperature-coefficient']],
    ['isc_temp_coeff_pct_per_c=-0.05', ['warning equipment.temperature-coefficient']],
    // -0.27 % of 37.4 V is -0.101 V.
    ['voc_temp_coeff_pct_per_c= voc_temp_coeff_v_per_c=-0.101', []],
    ['voc_temp_coeff_v_per_c=-0.101', []],
    ['voc_temp_coeff_v_per_c=-0.12', ['error equipment.temperature-coefficient']],
    ['noct_c=25', ['warning equipment.noct']],
    ['noct_c=50', []],
    ['noct_c=50.1', ['warning equipment.noct']],
    // 410 W on 67.8 x 44.6 in = 1.951 m2 is 21.0 %; on 47.2 in of length 30.2 %, on 57 in 25.0 %.
    ['length_in=57 weight_lb=', ['warning equipment.power-per-area']],
    ['length_in=47.2 weight_lb=', ['error equipment.power-per-area']],
    // Pounds for kilograms: 21.5 lb on 21.0 sq ft is 1.02 psf.
    ['weight_lb=21.5', ['warning equipment.weight-per-area']],
    ['thickness_in=30', undefined],
    // 1.25 x 1.25 x 13.87 A = 21.67 A (NEC 690.8(A)(1), 690.9(B)).
    ['max_series_fuse_a=22', []],
    ['max_series_fuse_a=21', ['warning equipment.series-fuse']],
    ['max_series_fuse_a=13', ['error equipment.series-fuse']],
    ['max_system_voltage_v=100', ['warning equipment.system-voltage']],
    ['sheet=', ['note equipment.no-sheet']],
  ])('module %s', (changes, expected) => {
    if (expected === undefined) expect(() => found('module', MODULE, changes)).toThrow(/too high/u)
    else expect(found('module', MODULE, changes)).toEqual(expected)
  })

  test.each([
    ['ac_current_a=24.3', []],
    ['ac_current_a=24.2', ['error equipment.ac-current']],
    ['ac_current_a=28.7', []],
    ['ac_current_a=28.8', ['warning equipment.ac-current']],
    // 6000 W on three phases of 208 V are 16.65 A.
    ['phases=3 ac_voltage_v=208 ac_current_a=16.7', []],
    ['ac_voltage_v=230 ac_current_a=26.1', ['warning equipment.ac-current']],
    ['start_v=650 mppt_max_v=', ['error equipment.voltage-window']],
    ['mppt_max_v=610', ['error equipment.voltage-window']],
    ['max_input_isc_a=14', ['error equipment.input-current']],
    // 1.25 x 25 A = 31.25 A (NEC 690.9(B)).
    ['max_branch_ocpd_a=32', []],
    ['max_branch_ocpd_a=31', ['error equipment.output-device']],
    ['weighted_efficiency_pct=99.5', ['warning equipment.efficiency']],
    ['max_dc_power_w=15001', ['warning equipment.inverter-size']],
    ['weight_lb=4.2', ['warning equipment.inverter-size']],
    ['kind=module_level', ['warning equipment.inverter-size']],
  ])('string inverter %s', (changes, expected) => expect(found('inverter', STRING, changes)).toEqual(expected))

  test.each([
    // 1.25 x 11 x 1.53 A = 21.04 A on a device of 20 A.
    ['max_per_branch=11', ['warning equipment.output-device']],
    ['kind=string', ['warning equipment.inverter-size']],
  ])('module-level inverter %s', (changes, expected) => expect(found('inverter', MICRO, changes)).toEqual(expected))

  test.each([
    ['optimiser', OPTIMISER, 'max_input_power_w=901', ['warning equipment.converter', 'warning equipment.converter']],
    ['optimiser', OPTIMISER, 'output_max_v=29', ['warning equipment.converter']],
    // 31 units of 1 V are above the 30 V of NEC 690.12(B)(1).
    ['optimiser', OPTIMISER, 'max_per_string=30', []],
    ['optimiser', OPTIMISER, 'max_per_string=31', ['warning equipment.converter']],
    ['trunk-cable', TRUNK, 'max_ocpd_a=25', ['warning equipment.trunk-cable']],
    ['rail', RAIL, 'moment_of_inertia_x_in4=0.1', ['warning equipment.rail-section']],
    // 0.75 lb per ft over 1.176 lb per ft and in2 is 0.638 in2.
    ['rail', RAIL, 'shear_area_in2=0.63', []],
    ['rail', RAIL, 'shear_area_in2=0.64', ['error equipment.rail-section']],
    ['rail', RAIL, 'max_cantilever_in=40', ['warning equipment.rail-overhang']],
    ['rail', RAIL, 'max_cantilever_of_span=0.55', ['warning equipment.rail-overhang']],
    ['mount', MOUNT, 'lag.lead_hole_in=0.3125', ['error equipment.screw-hole']],
    ['mount', MOUNT, 'lag.thread_length_in=6', ['error equipment.screw-hole']],
    ['mount', MOUNT, 'capacity_basis=ultimate', ['warning equipment.mount-capacity']],
    ['mount', MOUNT, 'weight_lb=20', ['warning equipment.mount-capacity']],
  ] as const)('%s %s %s', (kind, base, changes, expected) => expect(found(kind, base, changes)).toEqual(expected))
})
