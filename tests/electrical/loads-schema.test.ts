import { stringify } from 'yaml'
import { describe, expect, it } from 'vitest'
import { loadText, problemsOf, STARTER } from '../project/support.js'
import type { LoadCalculation, ServiceTransformer } from '../../src/project/index.js'

const full: LoadCalculation = {
  method: 'optional_new',
  floor_area_ft2: 1500,
  small_appliance_circuits: 2,
  laundry_circuits: 1,
  appliances: { range: { kind: 'range', rating_w: 12_000 }, pump: { kind: 'motor', current_a: 8, voltage_v: 240 } },
  new_loads: { car: { kind: 'ev_supply' } },
  cooling: { ac: { rating_va: 3600 } },
  heating: {
    pump: { kind: 'heat_pump', rating_va: 4000, supplement_va: 0 },
    rooms: { kind: 'resistance', rating_w: 3000, separately_controlled_units: 2 },
  },
  existing_ac_or_heat_added: false,
  measured: { peak_a: 40, period: '30_days', pv_on_service: false, pv_added_back: false, document: 'record' },
}
const transformer: ServiceTransformer = {
  rating_kva: 37.5,
  impedance_pct: 1.6,
  run_ft: 0,
  size: '4/0',
  material: 'aluminum',
  sets: 1,
}

const textOf = (load: object, more: object = transformer) =>
  `${STARTER}\n${stringify({ documents: [{ id: 'record', file: 'record.pdf', title: 'Record', date: '2026-02-01' }], electrical: { service: { rating_a: 200, transformer: more }, load_calculation: load } })}`

describe('keys of load calculation and transformer', () => {
  it('are taken as they are stated', () => {
    const { project } = loadText(textOf(full))
    expect(project.electrical?.load_calculation).toEqual(full)
    expect(project.electrical?.service?.transformer).toEqual(transformer)
  })

  it.each([
    ['one small-appliance circuit', { ...full, small_appliance_circuits: 1 }],
    ['no laundry circuit', { ...full, laundry_circuits: 0 }],
    ['no floor', { ...full, floor_area_ft2: 0 }],
    ['an unknown method', { ...full, method: 'feeling' }],
    ['no method', { floor_area_ft2: 1500 }],
    ['a measured demand without document', { ...full, measured: { peak_a: 40, period: 'year' } }],
    ['an appliance of no kind', { ...full, appliances: { range: { rating_w: 5 } } }],
    ['cooling in W, whose VA are more', { ...full, cooling: { ac: { rating_w: 3000 } } }],
    ['a key of no meaning', { ...full, diversity_pct: 50 }],
  ])('%s is refused', (_, load) => {
    expect(problemsOf(textOf(load)).join('\n')).toContain('electrical.load_calculation')
  })

  it.each([
    ['no impedance', { rating_kva: 25 }],
    ['an impedance of 0', { ...transformer, impedance_pct: 0 }],
    ['half a set', { ...transformer, sets: 0.5 }],
    ['a negative run', { ...transformer, run_ft: -1 }],
  ])('a transformer with %s is refused', (_, more) => {
    expect(problemsOf(textOf(full, more)).join('\n')).toContain('electrical.service.transformer')
  })
})
