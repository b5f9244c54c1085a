import type { WherePairs } from './pattern.js'

/** How storage is wired, where it stands, what it backs up. */
export const STORAGE_WIRING_WHERE: WherePairs = [
  ['equipment.storage_units.*.max_ocpd_a', 'the installation manual of the unit: largest breaker in its AC circuit'],
  [
    'equipment.storage_units.*.battery_side.*',
    'the data sheets of battery and inverter: DC current, voltages, devices; nothing where both are one listed unit',
  ],
  ['storage.backup.outlets_240_v', 'the breakers of that panel: a double one is 240 V'],
  [
    'storage.backup.multiwire_circuits',
    'the wires behind that panel: two hot ones to one white one; ask an electrician',
  ],
  ['storage.backup.neutral_bus_a', 'the label of that panel'],
  ['storage.backup.panel', 'your own id of the panel that stays on without the grid'],
  ['storage.backup.isolating_device_*', 'the nameplate and the certificate of the gateway or transfer switch'],
  ['storage.backup.load_managed', 'your design: a listed load-management system, or none'],
  ['storage.backup.largest_load_w', 'the nameplate of the largest appliance on that panel'],
  ['storage.backup.switched_neutral', 'the manual of the gateway or transfer switch'],
  ['storage.installation.at', 'your own id of the panel that takes the breaker of the storage'],
  ['storage.installation.units_per_circuit', 'your design, within what the installation manual allows'],
  ['storage.installation.breaker_*', 'leave it out for the smallest that fits; the print on the breaker'],
  ['storage.installation.battery_breaker_a', 'leave it out for the smallest that fits; the print on the device'],
  ['storage.installation.disconnect_at', 'your design: in the unit, beside the units, or elsewhere and lockable'],
  [
    'storage.installation.disconnect.*',
    'look at the place and the switch; a tape for the distance, the rating on its door',
  ],
  ['storage.installation.outside_initiator', 'the manual of the storage, and the place that you plan outside'],
  ['storage.installation.place_code', 'ask building and fire department which codes are in force'],
  ['storage.installation.authority_total_kwh', 'a letter of the authority'],
  [
    'storage.installation.places.*.*',
    'look at the place: a tape, the alarm, the boards on the walls, the way of the cars',
  ],
  ['storage.installation.places.*.posts.*', 'a tape, or the drawing of who sets the posts'],
  ['storage.installation.power_control.*', 'the certificate, the manual and the setting screen of the storage'],
]
