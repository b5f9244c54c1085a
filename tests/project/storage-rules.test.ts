import { expect, test } from 'vitest'
import { loadText, problemsOf, STARTER } from './support.js'

/** The starter with a battery; `unit` and `storage` replace pieces of it. */
function withStorage(pieces: readonly (readonly [from: string, to: string])[] = []): string {
  const text = `${STARTER}
storage:
  unit: battery
  count: 1
  control: { charge_from: any, grid_charge_windows: [{ days: [every_day], from_hour: 0, to_hour: 6 }], discharge_windows: [{ days: [weekdays], from_hour: 16, to_hour: 21 }] }
  backup: { kind: critical_loads_panel, essential: { avg_w: 400, peak_w: 2000, surge_w: 4000 } }
`.replace(
    'equipment:  # from',
    'equipment:\n  storage_units:\n    battery: { coupling: ac, usable_kwh: 10, nameplate_kwh: 10.5, charge_kw: 5, discharge_kw: 5, surge_kw: 7, round_trip_pct: 90, warranty: { years: 10, capacity_pct: 70 } }\n  # from',
  )
  return pieces.reduce((all, [from, to]) => {
    if (!all.includes(from)) throw new Error(`there is no ${from}`)
    return all.replace(from, () => to)
  }, text)
}

/** The one problem, without its line. */
const problem = (...pieces: (readonly [string, string])[]): string => {
  const found = problemsOf(withStorage(pieces)).filter((line) => /^\d+:\d+ {2}/u.test(line))
  expect(found).toHaveLength(1)
  return (found[0] ?? '').replace(/^\d+:\d+ {2}/u, '')
}
const UNIT = 'equipment.storage_units.battery'

test('a battery that fits together is taken', () => {
  expect(loadText(withStorage()).project.storage?.count).toBe(1)
})

const CASES: readonly (readonly [string, readonly (readonly [string, string])[], string])[] = [
  ['power without energy', [['usable_kwh: 10, ', '']], `${UNIT}.usable_kwh  missing`],
  [
    'unknown unit',
    [['unit: battery', 'unit: batery']],
    "storage.unit  no 'batery' under equipment.storage_units; did you mean battery?",
  ],
  ['reserve above usable', [['count: 1', 'count: 1\n  reserve_pct: 120']], 'storage.reserve_pct  120'],
  [
    'start below the reserve',
    [['count: 1', 'count: 1\n  reserve_pct: 30\n  start_pct: 10']],
    'storage.start_pct  10 % is below reserve_pct 30 %',
  ],
  [
    'round trip and both ways',
    [['round_trip_pct: 90', 'round_trip_pct: 90, charge_efficiency_pct: 95, discharge_efficiency_pct: 95']],
    `${UNIT}.round_trip_pct  charge_efficiency_pct or discharge_efficiency_pct stands beside it`,
  ],
  ['one way only', [['round_trip_pct: 90', 'charge_efficiency_pct: 95']], `${UNIT}.discharge_efficiency_pct  missing`],
  [
    'nameplate below usable',
    [['nameplate_kwh: 10.5', 'nameplate_kwh: 9']],
    `${UNIT}.nameplate_kwh  9 kWh is less than usable_kwh 10 kWh`,
  ],
  ['surge below power', [['surge_kw: 7', 'surge_kw: 4']], `${UNIT}.surge_kw  4 kW is less than discharge_kw 5 kW`],
  [
    'throughput without what it counts',
    [['capacity_pct: 70', 'capacity_pct: 70, throughput_mwh: 37']],
    `${UNIT}.warranty.counts  missing`,
  ],
  [
    'DC coupling without its inverter',
    [
      ['coupling: ac', 'coupling: dc, inverter_efficiency_pct: 97'],
      ['round_trip_pct: 90', 'charge_efficiency_pct: 96, discharge_efficiency_pct: 96'],
    ],
    `${UNIT}.inverter_ac_kw  missing`,
  ],
  [
    'overlapping windows',
    [['to_hour: 6', 'to_hour: 17']],
    'storage.control.grid_charge_windows.0  overlaps discharge_windows.0: both hold 16:00 on weekdays of month 1',
  ],
  [
    'grid charging from surplus',
    [['charge_from: any, ', '']],
    'storage.control.grid_charge_windows  charge_from is surplus',
  ],
  [
    'battery export without a window',
    [[', discharge_windows: [{ days: [weekdays], from_hour: 16, to_hour: 21 }]', ', battery_export: true']],
    'storage.control.battery_export  needs discharge_windows',
  ],
  [
    'an event over midnight',
    [['charge_from: any', "charge_from: any, events: [{ date: '07-14', from_hour: 20, to_hour: 4 }]"]],
    'storage.control.events.0.to_hour  4 is not after from_hour 20',
  ],
  [
    'replacement without a price',
    [['count: 1', 'count: 1\n  replacement: { floor_pct: 60 }']],
    'storage.replacement.usd  missing',
  ],
  [
    'replacement without a reason',
    [['count: 1', 'count: 1\n  replacement: { usd: 6000 }']],
    'storage.replacement  says not when',
  ],
  [
    'stated fade without percents',
    [['count: 1', 'count: 1\n  fade: stated']],
    "storage.fade  'stated' needs equipment.storage_units.battery.fade",
  ],
  [
    'cell model of other cells',
    [['count: 1', 'count: 1\n  fade: cell_model\n  cell_temperature_c: 25']],
    'storage.fade  the model is one of lfp cells',
  ],
  [
    'backup of nothing',
    [[', essential: { avg_w: 400, peak_w: 2000, surge_w: 4000 }', '']],
    'storage.backup.essential  missing',
  ],
  [
    'mean above the peak',
    [['avg_w: 400', 'avg_w: 2500']],
    'storage.backup.essential.avg_w  2500 W is more than peak_w 2000 W',
  ],
  [
    'start below the peak',
    [['surge_w: 4000', 'surge_w: 1000']],
    'storage.backup.essential.surge_w  1000 W is less than peak_w 2000 W',
  ],
]
test.each(CASES)('%s', (_, pieces, said) => {
  expect(problem(...pieces)).toContain(said)
})

test('what is asked of a unit of 120 V is refused of another', () => {
  const kind = 'backup: { kind: critical_loads_panel,'
  expect(problem([kind, `${kind} multiwire_circuits: false,`])).toBe(
    `storage.backup.multiwire_circuits  is for a unit of 120 V; ${UNIT}.ac_voltage_v is not stated`,
  )
  expect(
    problem(
      [kind, `${kind} neutral_bus_a: 125,`],
      ['battery: { coupling: ac,', 'battery: { coupling: ac, ac_voltage_v: 240,'],
    ),
  ).toBe(`storage.backup.neutral_bus_a  is for a unit of 120 V; ${UNIT}.ac_voltage_v is 240`)
  const single = withStorage([
    [kind, `${kind} outlets_240_v: false,`],
    ['battery: { coupling: ac,', 'battery: { coupling: ac, ac_voltage_v: 120,'],
  ])
  expect(loadText(single).project.storage?.backup?.outlets_240_v).toBe(false)
})
