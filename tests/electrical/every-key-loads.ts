import { on, type Case } from './every-key-case.js'

const micro = on('micro')

const LOAD = 'load_calculation'
const list = {
  method: 'optional_new',
  floor_area_ft2: 2000,
  small_appliance_circuits: 2,
  laundry_circuits: 1,
  appliances: { range: { kind: 'range', rating_w: 10_000 } },
  new_loads: { tub: { kind: 'fixed', rating_w: 6000 } },
  cooling: { ac: { rating_va: 3600 } },
  heating: { rooms: { kind: 'resistance', rating_w: 9000, separately_controlled_units: 2 } },
}
const measured = {
  method: 'measured',
  measured: { peak_a: 40, period: 'year', pv_on_service: false, document: 'letter' },
}

const load = (more: Readonly<Record<string, unknown>> = {}) => ({ given: { [LOAD]: list, ...more } })
const record = (more: Readonly<Record<string, unknown>> = {}) => ({ given: { [LOAD]: measured, ...more } })
const plate = (path: string, rating: Readonly<Record<string, unknown>>) => load({ [`${LOAD}.${path}`]: rating })

/** A nameplate by its current. */
const byCurrent = { kind: 'motor', current_a: 8, voltage_v: 240 }
const pump = { kind: 'heat_pump', rating_va: 4000, supplement_va: 0 }

/** Keys of the load calculation. */
export const LOAD_CASES: Readonly<Record<string, Case>> = {
  'load_calculation.method': micro('standard', load()),
  'load_calculation.floor_area_ft2': micro(2500, load()),
  'load_calculation.small_appliance_circuits': micro(3, load()),
  'load_calculation.laundry_circuits': micro(2, load()),
  'load_calculation.appliances.*.kind': micro('fixed', load({ [`${LOAD}.method`]: 'standard' })),
  'load_calculation.appliances.*.rating_va': micro(8000, {
    ...plate('appliances.range', { kind: 'range', rating_va: 9000 }),
    before: 9000,
  }),
  'load_calculation.appliances.*.rating_w': micro(9000, load()),
  'load_calculation.appliances.*.current_a': micro(9, { ...plate('appliances.range', byCurrent), before: 8 }),
  'load_calculation.appliances.*.voltage_v': micro(208, { ...plate('appliances.range', byCurrent), before: 240 }),
  'load_calculation.new_loads.*.kind': micro('ev_supply', load()),
  'load_calculation.new_loads.*.rating_va': micro(8000, {
    ...plate('new_loads.tub', { kind: 'fixed', rating_va: 9000 }),
    before: 9000,
  }),
  'load_calculation.new_loads.*.rating_w': micro(7000, load()),
  'load_calculation.new_loads.*.current_a': micro(9, { ...plate('new_loads.tub', byCurrent), before: 8 }),
  'load_calculation.new_loads.*.voltage_v': micro(208, { ...plate('new_loads.tub', byCurrent), before: 240 }),
  'load_calculation.cooling.*.rating_va': micro(12_000, load()),
  'load_calculation.cooling.*.current_a': micro(30, {
    ...plate('cooling.ac', { current_a: 20, voltage_v: 240 }),
    before: 20,
  }),
  'load_calculation.cooling.*.voltage_v': micro(208, {
    ...plate('cooling.ac', { current_a: 20, voltage_v: 240 }),
    before: 240,
  }),
  'load_calculation.heating.*.kind': micro(
    'thermal_storage',
    plate('heating.rooms', { kind: 'resistance', rating_w: 9000 }),
  ),
  'load_calculation.heating.*.rating_va': micro(5000, { ...plate('heating.rooms', pump), before: 4000 }),
  'load_calculation.heating.*.rating_w': micro(6000, load()),
  'load_calculation.heating.*.current_a': micro(30, {
    ...plate('heating.rooms', { kind: 'resistance', current_a: 20, voltage_v: 240 }),
    before: 20,
  }),
  'load_calculation.heating.*.voltage_v': micro(208, {
    ...plate('heating.rooms', { kind: 'resistance', current_a: 20, voltage_v: 240 }),
    before: 240,
  }),
  'load_calculation.heating.*.supplement_va': micro(5000, { ...plate('heating.rooms', pump), before: 0 }),
  'load_calculation.heating.*.separately_controlled_units': micro(5, load()),
  'load_calculation.existing_ac_or_heat_added': micro(true, {
    ...load({ [`${LOAD}.method`]: 'optional_existing' }),
    before: false,
  }),
  'load_calculation.measured.peak_kva': micro(12, {
    ...record({ [`${LOAD}.measured.peak_a`]: undefined }),
    before: 9.6,
  }),
  'load_calculation.measured.peak_a': micro(50, record()),
  'load_calculation.measured.period': micro('30_days', record()),
  'load_calculation.measured.pv_on_service': micro(true, record()),
  'load_calculation.measured.pv_added_back': micro(true, {
    ...record({ [`${LOAD}.measured.pv_on_service`]: true }),
    before: false,
  }),
  'load_calculation.measured.document': micro('control_sheet', record()),
}
