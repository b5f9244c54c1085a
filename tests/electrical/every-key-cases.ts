import { METHOD_CASES } from './every-key-boxes.js'
import { gfci, on, type Case } from './every-key-case.js'
import { DC_CASES } from './every-key-dc.js'
import { LOAD_CASES } from './every-key-loads.js'
import { TREE_CASES } from './every-key-tree.js'

const micro = on('micro')
const tree = on('tree')
const string = on('string')
const supply = on('supply')
const house = on('house')
const bill = on('bill')
const wye = on('wye')

/** Ids that stand for the star after these keys. */
export const USUAL_IDS: Readonly<Record<string, string>> = {
  panels: 'sub',
  feeders: 'f',
  taps: 't',
  sources: 'old',
  runs: 'home',
  segments: 'wall',
  branches: 'b1',
  modules: 'south',
  disconnects: 'outside',
  appliances: 'range',
  new_loads: 'tub',
  cooling: 'ac',
  heating: 'rooms',
  dc_combiners: 'box',
}

const behind = {
  given: {
    'service.transformer': {
      rating_kva: 37.5,
      impedance_pct: 1.6,
      run_ft: 50,
      size: '4/0',
      material: 'aluminum',
      sets: 1,
    },
  },
}
const meter = { 'service.meter.kind': 'collar_adapter', 'service.meter.adapter_rating_a': 60 }
const lugs = { 'panel.feed_through': { conductor_ampacity_a: 255, panel_bus_a: 400 } }
const tapWay = { 'connection.tap': { location: 'outdoor_wall', raceway: 'EMT' } }
const split = { branches: { b1: { modules: { south: 12 } }, b2: { modules: { south: 12 } } } }
const pvc = { 'runs.home.segments.wall.length_ft': 60 }
const wires = {
  'service.conductor_ampacity_a': undefined,
  'service.conductor_size': '2/0',
  'service.conductor_material': 'copper',
  'service.conductor_insulation': 'THWN-2',
}
const hotRoof = {
  'runs.home.segments.roof.length_ft': 5,
  'runs.home.segments.wall.length_ft': 100,
  'runs.home.segments.roof.height_above_roof_in': 0.2,
}

/** For each key of `electrical` a change that has to move something. */
export const CASES: Readonly<Record<string, Case>> = {
  ...LOAD_CASES,
  ...DC_CASES,
  ...METHOD_CASES,
  ...TREE_CASES,
  'service.rating_a': micro(100),
  'service.voltage_v': wye(240),
  'service.phases': wye(1),
  'service.system': wye('high_leg_delta'),
  'service.conductor_size': tree('4/0', { given: wires }),
  'service.conductor_material': tree('aluminum', { given: wires }),
  'service.conductor_ampacity_a': tree(100),
  'service.available_fault_current_a': micro(9000),
  'service.transformer.rating_kva': micro(50, behind),
  'service.transformer.impedance_pct': micro(2, behind),
  'service.transformer.run_ft': micro(80, behind),
  'service.transformer.size': micro('2/0', behind),
  'service.transformer.material': micro('copper', behind),
  'service.transformer.sets': micro(2, behind),
  'service.conductor_insulation': tree('TW', { given: wires }),
  'service.conductor_sets': tree(2, { given: wires }),
  'service.conductor_ambient_c': tree(50, { given: wires }),
  'service.meter.kind': micro('collar_adapter', { before: 'socket' }),
  'service.meter.rating_a': micro(100),
  'service.meter.adapter_rating_a': supply(20, { given: { 'service.meter.kind': 'collar_adapter' }, before: 60 }),
  'service.meter.acceptance_document': supply('letter', { given: meter }),
  'service.bonding.electrodes': tree(['water_pipe'], { given: wires, before: ['rod', 'rod'] }),
  'service.bonding.electrode_conductor_awg': tree('8', { given: wires, before: '4' }),
  'service.bonding.metal_service_raceway': tree(true, { given: wires }),
  'connection.kind': micro('supply_side'),
  'connection.at': tree('main'),
  'connection.breaker_type': micro('gfci'),
  'connection.breaker_marked_for_backfeed': micro(true, { given: gfci('connection.breaker_type') }),
  'connection.breaker_position': micro('other'),
  'connection.breaker_a': micro(50),
  'connection.breaker_marked_line_load': micro(true),
  'connection.overcurrent_device_distance_ft': supply(30),
  'connection.conductor_size': supply('4'),
  'connection.conductor_material': supply('aluminum'),
  'connection.tap.location': supply('indoors', { given: tapWay }),
  'connection.tap.raceway': supply('PVC 80', { given: tapWay }),
  'connection.tap.trade_size': supply('2', { given: tapWay }),
  'connection.tap.insulation': supply('XHHW-2', { given: tapWay }),
  'connection.tap.ambient_c': supply(50, { given: tapWay }),
  'panel.name': micro('House panel'),
  'panel.bus_a': micro(225),
  'panel.main_a': micro(150),
  'panel.main_position': micro('centre'),
  'panel.breakers_a': micro([20, 20]),
  'panel.breaker_sum_a': micro(60),
  'panel.load_a': micro(90),
  'panel.spaces_total': micro(1),
  'panel.spaces_free': micro(1),
  'panel.feed_through.conductor_ampacity_a': micro(100, { given: lugs }),
  'panel.feed_through.overcurrent_device_a': micro(100, { given: lugs }),
  'panel.feed_through.overcurrent_device_at': micro('start', {
    given: { 'panel.feed_through': { conductor_ampacity_a: 255, panel_bus_a: 400, overcurrent_device_a: 100 } },
  }),
  'panel.feed_through.panel_bus_a': micro(100, { given: lugs }),
  'panel.terminal_temperature_c': micro(60),
  'panel.terminal_torque_lb_in': house(45),
  'panel.interrupting_rating_a': micro(10000, { given: { 'service.available_fault_current_a': 22000 } }),
  'panel.location': house('indoors'),
  'combiner.name': house('Roof combiner'),
  'combiner.bus_a': micro(30),
  'combiner.other_breakers_a': micro([15]),
  'combiner.spaces_total': micro(2),
  'combiner.terminal_temperature_c': micro(60),
  'combiner.location': bill('indoors'),
  trunk: micro('other'),
  'branches.*.modules.*': micro(11, { given: split }),
  'branches.*.phases': wye('AB'),
  'branches.*.trunk': micro('other', { given: split }),
  'branches.*.feed': micro('centre', { given: split }),
  'branches.*.trunk_length_ft': micro(120, { given: split }),
  'branches.*.breaker_a': micro(15, { given: split }),
  'runs.*.carries': micro(['b1'], { given: split }),
  'runs.*.neutral': micro(true),
  'runs.*.segments.*.location': micro('indoors'),
  'runs.*.segments.*.sun': micro(false, { path: 'runs.home.segments.roof.sun' }),
  'runs.*.segments.*.height_above_roof_in': micro(0.2, { path: 'runs.home.segments.roof.height_above_roof_in' }),
  'runs.*.segments.*.length_ft': micro(40),
  'runs.*.segments.*.raceway': micro('RMC'),
  'runs.*.segments.*.trade_size': micro('2'),
  'runs.*.segments.*.nipple': micro(true, { given: { 'runs.home.segments.wall.length_ft': 1 } }),
  'runs.*.segments.*.insulation': micro('XHHW-2'),
  'runs.*.segments.*.material': micro('aluminum'),
  'runs.*.segments.*.size_awg': micro('8'),
  'runs.*.segments.*.conductor_diameter_in': micro(0.3, {
    given: { 'runs.home.segments.wall.insulation': 'PV wire' },
    before: 0.25,
  }),
  'runs.*.segments.*.ambient_c': micro(55),
  'runs.*.segments.*.other_conductors.current_carrying': micro(6, {
    given: { 'runs.home.segments.wall.other_conductors': { current_carrying: 2, area_in2: 0.1 } },
  }),
  'runs.*.segments.*.other_conductors.total': micro(6, {
    given: { 'runs.home.segments.wall.other_conductors': { current_carrying: 2, area_in2: 0.1 } },
  }),
  'runs.*.segments.*.other_conductors.area_in2': micro(0.4, {
    given: { 'runs.home.segments.wall.other_conductors': { current_carrying: 2, area_in2: 0.1 } },
  }),
  'runs.*.segments.*.expansion_range_f': micro(130, { given: pvc }),
  terminal_temperature_c: micro(60),
  power_factor: micro(0.9),
  voltage_rise_limit_pct: micro(1),
  dc_voltage_drop_limit_pct: string(0.1),
  use_10ft_rule: micro(true, { given: hotRoof }),
  drop_fractions: micro(true),
  hot_cell_rise_c: string(50),
  array_bonding_conductor_awg: micro('10'),
  array_electrode: micro('rod'),
  array_electrode_run_ft: micro(40, { given: { array_electrode: 'rod' } }),
  'rapid_shutdown.initiator': micro('service_disconnect'),
  'rapid_shutdown.initiator_outdoors': micro(false),
  'disconnects.*.kind': micro('equipment'),
  'disconnects.*.rating_a': micro(30),
  'disconnects.*.readily_accessible': micro(false),
  'disconnects.*.lockable': micro(false),
  'disconnects.*.service_rated': supply(true, { before: false }),
  'disconnects.*.fused': supply(true, { before: false }),
  'disconnects.*.breaker': supply(true, { before: false }),
  'disconnects.*.interrupting_rating_a': supply(65_000, { given: { 'service.available_fault_current_a': 22_000 } }),
  'disconnects.*.location': house('indoors'),
}
