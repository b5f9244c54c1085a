/** Projects that the cases start from. */
export type Base = 'micro' | 'tree' | 'string' | 'supply' | 'house'

/** A key of `electrical` with a value that has to move something. */
export interface Case {
  readonly base: Base
  /** Values of other keys that stand on both sides, by their way under `electrical`. */
  readonly given: Readonly<Record<string, unknown>>
  /** Value on the one side; as the base has it when left out. */
  readonly before: unknown
  /** Value on the other side; undefined takes the key away. */
  readonly after: unknown
  /** The key with ids in place of the stars, where they are not the usual ones. */
  readonly path: string | undefined
}

type More = Partial<Pick<Case, 'given' | 'before' | 'path'>>

const on =
  (base: Base) =>
  (after: unknown, more: More = {}): Case => ({ base, given: {}, before: undefined, path: undefined, ...more, after })

const micro = on('micro')
const tree = on('tree')
const string = on('string')
const supply = on('supply')
const house = on('house')

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
}

const gfci = (path: string) => ({ [path]: 'gfci' })
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
const onTap = {
  'connection.kind': 'feeder_tap',
  'connection.at': 't',
  'distribution.taps.t.end_device_a': undefined,
}

/** For each key of `electrical` a change that has to move something. */
export const CASES: Readonly<Record<string, Case>> = {
  'service.rating_a': micro(100),
  'service.voltage_v': micro(undefined, { before: 240 }),
  'service.conductor_size': tree('4/0', { given: wires }),
  'service.conductor_material': tree('aluminum', { given: wires }),
  'service.conductor_ampacity_a': tree(100),
  'service.available_fault_current_a': micro(9000),
  'service.conductor_insulation': tree('TW', { given: wires }),
  'service.conductor_sets': tree(2, { given: wires }),
  'service.conductor_ambient_c': tree(50, { given: wires }),
  'service.meter.kind': micro('collar_adapter', { before: 'socket' }),
  'service.meter.rating_a': micro(100),
  'service.meter.adapter_rating_a': supply(20, { given: { 'service.meter.kind': 'collar_adapter' }, before: 60 }),
  'service.meter.acceptance_document': supply('letter', { given: meter }),
  'service.bonding.electrodes': supply(['water_pipe'], { before: ['rod', 'rod'] }),
  'service.bonding.electrode_conductor_awg': supply('8'),
  'service.bonding.metal_service_raceway': supply(true),
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
  'connection.tap.location': supply('attic', { given: tapWay }),
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
  'distribution.panels.*.name': tree('Garage'),
  'distribution.panels.*.bus_a': tree(125),
  'distribution.panels.*.main_a': tree(50),
  'distribution.panels.*.main_position': tree('centre'),
  'distribution.panels.*.breakers_a': tree([50]),
  'distribution.panels.*.breaker_sum_a': tree(70, { given: { 'distribution.panels.sub.breakers_a': undefined } }),
  'distribution.panels.*.load_a': tree(58),
  'distribution.panels.*.spaces_total': tree(2),
  'distribution.panels.*.spaces_free': tree(0),
  'distribution.panels.*.terminal_temperature_c': tree(60),
  'distribution.panels.*.terminal_torque_lb_in': tree(45),
  'distribution.panels.*.interrupting_rating_a': tree(10000, { given: { 'service.available_fault_current_a': 22000 } }),
  'distribution.panels.*.location': tree('outdoors'),
  'distribution.feeders.*.from': tree('far', { given: { 'distribution.panels.far': { bus_a: 100, main_a: 100 } } }),
  'distribution.feeders.*.to': tree('far', { given: { 'distribution.panels.far': { bus_a: 100, main_a: 100 } } }),
  'distribution.feeders.*.breaker_a': tree(70),
  'distribution.feeders.*.through_lugs': tree(true),
  'distribution.feeders.*.breaker_position': tree('other'),
  'distribution.feeders.*.breaker_type': tree('afci'),
  'distribution.feeders.*.breaker_marked_for_backfeed': tree(true, {
    given: gfci('distribution.feeders.f.breaker_type'),
  }),
  'distribution.feeders.*.breaker_marked_line_load': tree(true),
  'distribution.feeders.*.material': tree('aluminum'),
  'distribution.feeders.*.size_awg': tree('6'),
  'distribution.feeders.*.insulation': tree('TW'),
  'distribution.feeders.*.conductor_sets': tree(2, { given: { 'distribution.feeders.f.size_awg': '1/0' } }),
  'distribution.feeders.*.ambient_c': tree(60),
  'distribution.feeders.*.current_carrying': tree(12),
  'distribution.feeders.*.ground_size_awg': tree('14'),
  'distribution.feeders.*.method': tree('NM'),
  'distribution.feeders.*.length_ft': tree(200),
  'distribution.taps.*.feeder': tree('g', {
    given: {
      'distribution.panels.far': { bus_a: 100, main_a: 60 },
      'distribution.feeders.g': {
        from: 'main',
        to: 'far',
        breaker_a: 100,
        breaker_position: 'opposite_end',
        material: 'copper',
        size_awg: '1',
        insulation: 'THWN-2',
        ambient_c: 30,
        length_ft: 20,
      },
    },
  }),
  'distribution.taps.*.position': tree('far_end', { given: onTap }),
  'distribution.taps.*.material': tree('aluminum'),
  'distribution.taps.*.size_awg': tree('6'),
  'distribution.taps.*.insulation': tree('TW'),
  'distribution.taps.*.ambient_c': tree(60),
  'distribution.taps.*.current_carrying': tree(12),
  'distribution.taps.*.length_ft': tree(18),
  'distribution.taps.*.end_device_a': tree(45),
  'distribution.taps.*.end_devices': tree(2),
  'distribution.taps.*.load_a': tree(45),
  'distribution.taps.*.leaves_enclosure': tree(false, {
    given: { 'distribution.feeders.f.breaker_a': 400, 'distribution.taps.t.end_device_a': 15 },
  }),
  'distribution.taps.*.outdoors': tree(true, { before: false }),
  'distribution.taps.*.method': tree('SE'),
  'distribution.sources.*.name': tree('PV of 2015'),
  'distribution.sources.*.kind': tree('storage'),
  'distribution.sources.*.on': tree('sub'),
  'distribution.sources.*.supply_side': tree(true, {
    given: { 'distribution.sources.old.on': undefined },
    before: false,
  }),
  'distribution.sources.*.current_a': tree(8),
  'distribution.sources.*.breaker_a': tree(20),
  'distribution.sources.*.breaker_position': tree('other'),
  'distribution.sources.*.breaker_type': tree('gfci'),
  'distribution.sources.*.breaker_marked_for_backfeed': tree(true, {
    given: gfci('distribution.sources.old.breaker_type'),
  }),
  'distribution.sources.*.breaker_marked_line_load': tree(true),
  'distribution.sources.*.runs_in_parallel': tree(false),
  'power_control.setting_a': tree(80),
  'power_control.panels': tree(['sub']),
  'power_control.uncontrolled': tree([]),
  'power_control.document': tree('another'),
  'power_control.locked_setting': tree(false),
  'remedy_costs_usd.move_breaker': tree(300),
  'remedy_costs_usd.fewer_inverters': tree(300),
  'remedy_costs_usd.smaller_main': tree(300),
  'remedy_costs_usd.fewer_breakers': tree(300),
  'remedy_costs_usd.power_control': tree(300),
  'remedy_costs_usd.supply_side': tree(300),
  'remedy_costs_usd.other_panel': tree(300),
  'remedy_costs_usd.engineering_study': tree(300),
  'remedy_costs_usd.new_panel': tree(300),
  'combiner.name': house('Roof combiner'),
  'combiner.bus_a': micro(30),
  'combiner.other_breakers_a': micro([15]),
  'combiner.spaces_total': micro(2),
  'combiner.terminal_temperature_c': micro(60),
  'combiner.location': house('indoors'),
  trunk: micro('other'),
  'branches.*.modules.*': micro(11, { given: split }),
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
  voltage_rise_limit_pct: micro(0.1),
  dc_voltage_drop_limit_pct: string(0.1),
  use_10ft_rule: micro(true, { given: hotRoof }),
  drop_fractions: micro(true),
  hot_cell_rise_c: string(50),
  array_bonding_conductor_awg: micro('10'),
  array_electrode: micro('rod'),
  array_electrode_run_ft: micro(40, { given: { array_electrode: 'rod' } }),
  'rapid_shutdown.inside_boundary': string(undefined),
  'rapid_shutdown.initiator': micro('service_disconnect'),
  'rapid_shutdown.initiator_outdoors': micro(false),
  'disconnects.*.kind': micro('equipment'),
  'disconnects.*.rating_a': micro(30),
  'disconnects.*.readily_accessible': micro(false),
  'disconnects.*.lockable': micro(false),
  'disconnects.*.service_rated': supply(true, { before: false }),
  'disconnects.*.fused': supply(true, { before: false }),
  'disconnects.*.breaker': supply(true, { before: false }),
  'disconnects.*.location': house('indoors'),
}

/** Keys that move nothing, each with the reason. Strike out what moves by now; it is an error to leave it. */
export const SILENT: Readonly<Record<string, string>> = {
  'service.voltage_v': 'only 240 V may be stated; another value is refused',
  'service.bonding.electrodes': 'grounding of the service is not judged yet',
  'service.bonding.electrode_conductor_awg': 'grounding of the service is not judged yet',
  'service.bonding.metal_service_raceway': 'grounding of the service is not judged yet',
  'distribution.panels.*.terminal_torque_lb_in': 'papers know the short form alone yet',
  'distribution.panels.*.location': 'papers know the short form alone yet',
  'distribution.feeders.*.length_ft': 'voltage and fault current along feeders are not worked out yet',
  'distribution.sources.*.kind': 'nothing tells kinds of existing sources apart yet',
  'remedy_costs_usd.move_breaker': 'ways out are not listed yet',
  'remedy_costs_usd.fewer_inverters': 'ways out are not listed yet',
  'remedy_costs_usd.smaller_main': 'ways out are not listed yet',
  'remedy_costs_usd.fewer_breakers': 'ways out are not listed yet',
  'remedy_costs_usd.power_control': 'ways out are not listed yet',
  'remedy_costs_usd.supply_side': 'ways out are not listed yet',
  'remedy_costs_usd.other_panel': 'ways out are not listed yet',
  'remedy_costs_usd.engineering_study': 'ways out are not listed yet',
  'remedy_costs_usd.new_panel': 'ways out are not listed yet',
  'combiner.location': 'no paper says where the combiner hangs yet',
}
