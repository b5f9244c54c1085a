import { on, type Case } from './every-key-case.js'

const boxes = on('boxes')
const shutdown = on('shutdown')
const billString = on('bill_string')

const onePole = { 'dc_combiners.box.poles_fused': 'one' }
const fewUnits = { 'rapid_shutdown.equipment.units_per_transmitter': 11 }

/** Keys of DC combiners and shutdown equipment. */
export const DC_CASES: Readonly<Record<string, Case>> = {
  'dc_combiners.*.inputs': boxes(['south_s1', 'south_s2']),
  'dc_combiners.*.poles_fused': boxes('none'),
  'dc_combiners.*.fused_pole': boxes('positive', { given: onePole }),
  'dc_combiners.*.fuse_a': boxes(30),
  'dc_combiners.*.fuses_listed_for_pv': boxes(false),
  'dc_combiners.*.max_voltage_v': boxes(300),
  'dc_combiners.*.max_current_a': boxes(20),
  'dc_combiners.*.listed_for_dc': boxes(false),
  'dc_combiners.*.disconnect': boxes(false),
  'rapid_shutdown.inside_boundary': on('string')(undefined),
  'rapid_shutdown.equipment.name': billString('Invented cutoff 2'),
  'rapid_shutdown.equipment.modules_per_unit': shutdown(2),
  'rapid_shutdown.equipment.input_max_v': shutdown(30),
  'rapid_shutdown.equipment.input_max_a': shutdown(10),
  'rapid_shutdown.equipment.max_system_voltage_v': shutdown(300),
  'rapid_shutdown.equipment.output_shutdown_v': shutdown(1),
  'rapid_shutdown.equipment.listed': shutdown(false),
  'rapid_shutdown.equipment.transmitters': shutdown(2, { given: fewUnits, before: 1 }),
  'rapid_shutdown.equipment.strings_per_transmitter': shutdown(undefined),
  'rapid_shutdown.equipment.units_per_transmitter': shutdown(11),
  'rapid_shutdown.equipment.transmitter_on_initiator_supply': shutdown(false),
}
