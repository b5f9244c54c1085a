import type { Explanations } from './explanation.js'

const STORAGE = { document: 'NEC 2017', place: '706', standing: 'read' } as const
const LATER = { document: 'NEC 2020, 2023, 2026', place: '706', standing: 'secondary' } as const
const PLACES = {
  document: 'IRC 2021 and 2024, IFC 2021, NFPA 855',
  place: 'R328, R330, 1207.11',
  standing: 'secondary',
} as const

/** Findings of storage in wiring, place and backup. */
export const STORAGE_WIRING: Explanations = {
  'wire.storage-not-installed': {
    means: 'The project has a storage, and nothing says where and how it is installed.',
    rule: 'Storage is a source: it counts on every busbar between it and the utility, has a circuit and a disconnect of its own, and may not stand everywhere.',
    sources: [STORAGE, PLACES],
    fix: 'State storage.installation, and a run under electrical.runs that carries storage.',
  },
  'wire.storage-not-stated': {
    means: 'A check of the storage was not made, because a fact for it is not stated.',
    rule: 'Facts that safety depends on are not guessed: each check that could not be made is told by itself, with the key that it needs.',
    sources: [STORAGE, LATER, PLACES],
    fix: 'Measure or read the fact, and state it under the key of the finding.',
  },
  'wire.storage-not-ruled': {
    means: 'The code that is stated has no rule for this.',
    rule: 'IRC 2018 asks for listing, place, ventilation and commissioning, and has no limits of energy or distance; a fire code that is adopted beside it may have them.',
    sources: [PLACES],
    fix: 'Ask building and fire department which codes are in force.',
  },
  'wire.storage-unit': {
    means: 'The storage unit does not have a property that its rules ask for: listing, DC devices, voltage.',
    rule: 'Storage is a listed system; devices on its DC side are listed for DC and stand behind a current-limiting device.',
    sources: [STORAGE, LATER],
    fix: 'Use a unit that has it, or read its data sheet again.',
  },
  'wire.storage-place': {
    means: 'Units stand where they may not, hold too much energy, or their place lacks something.',
    rule: 'At most 20 kWh a unit; 40 kWh in utility spaces, 80 kWh each in garages, on outside walls and on the ground, held to 80 kWh in all unless the authority says otherwise; 3 ft between units and from doors and windows; alarm, gypsum board, posts where cars drive; working space.',
    sources: [PLACES],
    fix: 'Move the units, use fewer, or add what is missing; the message says which.',
  },
  'wire.storage-disconnect': {
    means: 'The disconnect of the storage is not where its edition wants it, is too small, or nothing stands outside.',
    rule: 'Readily accessible; in the unit, or within sight (since 2020 and 10 ft), or elsewhere and lockable open. Houses of one and two families: since 2020 a disconnect outside, since 2023 an emergency shutdown function that is started outside.',
    sources: [STORAGE, LATER],
    fix: 'Move it, choose one that can be locked, or add the device outside.',
  },
  'wire.storage-backup': {
    means: 'Without the grid the storage cannot carry what it should, or the house is not cut off as it must be.',
    rule: 'A listed device cuts the house off; an automatic transfer needs a source for the whole load, or load management; at least the largest appliance in any case; devices of all sources within the busbar; PV within what the units can take; a neutral for loads of 120 V; a rapid shutdown that works without the grid.',
    sources: [
      { document: 'NEC 2017', place: '702.4(B), 702.5, 705.170, 710.15', standing: 'read' },
      { document: 'NEC 2020 and later', place: '702, 705, 710', standing: 'from memory' },
    ],
    fix: 'The message says what is too small or missing. None of this is for life support.',
  },
  'wire.storage-power-control': {
    means:
      'The power control system does not count as one, or its setting is too high for a busbar that it does not watch.',
    rule: 'A listed system with a locked setting may stand in for the busbar sums where its sensors watch; elsewhere the sums hold, and the setting is within the device that protects the busbar. Editions before 2020 know none.',
    sources: [{ document: 'NEC 2020, 2023, 2026', place: '705.13, 750.30, article 130', standing: 'secondary' }],
    fix: 'Show its listing and its setting, lower the setting, or put sensors there.',
  },
}
