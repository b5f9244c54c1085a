import type { StartingHouse } from './starting-house.js'

const UNIT: readonly string[] = [
  'equipment:',
  '  storage_units:  # from the data sheet of the storage',
  '    store10: !made_up  # the whole sheet; take the marker away once it is that of your unit',
  '      name: Invented Store 10',
  '      coupling: ac',
  '      chemistry: lfp',
  '      usable_kwh: 10',
  '      nameplate_kwh: 10.5',
  '      charge_kw: 3',
  '      discharge_kw: 3',
  '      surge_a: 80  # largest locked-rotor current of a motor that it starts',
  '      round_trip_pct: 90',
  '      standby_w: 20  # drawn all day',
  '      rated_output_a: 12.5',
  '      ac_voltage_v: 240',
  '      max_ocpd_a: 40',
  '      max_pv_ac_kw: 7.6  # most PV output that it holds when the grid is away',
  '      neutral_forming: true',
  '      warranty: { years: 10, capacity_pct: 70 }',
  '      listed: { ul_9540: true, ul_1741: true, ul_9540a_spacing_in: 6 }',
]

/**
 * A storage on the house: its unit, where it stands and what protects it, the way of its circuit. All of it is about safety,
 * so that each value has a marker of its own. What the file has of it already stays.
 */
export function storageLines(house: StartingHouse): string[] {
  const { storage: { unit, count = 1 } = {}, storageRun = false, firstPanel, panel } = house
  const mainA = house.firstMainA ?? panel?.mainA.value ?? 200
  return [
    ...(unit === undefined ? UNIT : []),
    'storage:',
    `  unit: ${unit ?? 'store10'}`,
    '  count: !made_up 1',
    '  reserve_pct: !made_up 20',
    '  backup:  # what it carries when the grid is away',
    '    kind: !made_up whole_house',
    '    essential: !made_up { avg_w: 400, peak_w: 2000, surge_w: 3500, locked_rotor_a: 30 }  # what must run when the grid is away',
    ...(firstPanel === undefined ? [] : [`    panel: ${firstPanel}`]),
    '    transfer: !made_up automatic',
    '    isolating_device_listed: !made_up true',
    `    isolating_device_a: !made_up ${mainA}`,
    '    isolating_device_service_rated: !made_up true',
    '    load_managed: !made_up true  # a system that keeps the load within what the storage gives',
    '    shutdown_works_islanded: !made_up true',
    '    switched_neutral: !made_up false',
    '    largest_load_w: !made_up 1500',
    '  installation:',
    ...(firstPanel === undefined ? [] : [`    at: ${firstPanel}`]),
    '    place_code: !made_up IRC 2021  # ask the building department',
    '    breaker_position: !made_up opposite_end',
    '    outside_initiator: !made_up true',
    '    disconnect_at: !made_up within_10_ft',
    '    disconnect: !made_up { rating_a: 60, distance_ft: 4, visible: true, readily_accessible: true, lockable: true, opens_all_units: true, through_wall: false, outside: true }',
    '    places:  # where the units stand; measure it',
    `      garage: !made_up { location: attached_garage, units: ${count}, in_vehicle_path: true, vehicle_protection: height, bottom_above_floor_in: 48, alarm: heat, alarm_interconnected: true, gypsum_type_x_in: 0.625, clear_depth_in: 40, clear_width_in: 36, clear_height_in: 90 }`,
    ...(storageRun
      ? []
      : [
          'electrical:',
          '  runs:',
          '    storage:',
          '      carries: [storage]',
          '      segments:',
          '        garage: !made_up { location: indoors, length_ft: 15, raceway: EMT }',
        ]),
  ]
}
