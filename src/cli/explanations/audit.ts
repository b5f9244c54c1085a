import { LISTS } from '../../tables/permit/index.js'
import { CARBON_MONOXIDE_ALARMS, SMOKE_ALARMS } from '../../tables/irc/index.js'
import { nec, PRACTICE, type Explanations } from './explanation.js'

const PUBLISHED = {
  document: 'Published lists of building departments',
  place: Object.values(LISTS).join('; '),
  standing: 'read',
} as const

const electrodes = { document: 'NEC', place: '250.50, 250.53(A)(2)', standing: 'from memory' } as const
const emergency = { document: 'NEC', edition: '2020', place: '230.85', standing: 'read' } as const

/** Findings of the audit of a packet, and of the house that the permit finds. */
export const AUDIT: Explanations = {
  'audit.point-missing': {
    means: 'A reviewer will ask for something that is on no sheet and in no document of the packet.',
    rule: 'A packet that lacks a point of the list is sent back. Each point is looked up in the drawn sheets and in the project, and the message says what was not found and who supplies it.',
    sources: [PUBLISHED],
    fix: 'Supply it; or, where your authority does not ask for it, name the point in the file of the authority among those that are not asked for.',
  },
  'audit.no-authority': {
    means: 'The project names no file of what its authority asks.',
    rule: 'Lists differ. Without the list of your own authority the packet is held against everything that published lists ask, and nothing that is missing counts as a failure.',
    sources: [PUBLISHED],
    fix: 'Ask the building department for its list, write it into a file of the shape of schemas/authority.schema.json, and name that under permit.authority.',
  },
  'audit.other-authority': {
    means: 'The authority of the project and the one of the file have different names.',
    rule: 'A list of another authority asks for other things.',
    sources: [PRACTICE],
    fix: 'Correct parties.authority.name, or name the right file under permit.authority.',
  },
  'audit.other-paper': {
    means: 'The sheets are drawn on another paper than the authority asks for.',
    rule: 'Authorities take sets of one size, and many take 11 x 17 in only.',
    sources: [PUBLISHED],
    fix: 'Leave --size out, so that the paper of the file is taken.',
  },
  'audit.not-expedited': {
    means: 'The project is above a limit of the short review, or does not state what the limit is compared with.',
    rule: 'Short reviews are for small systems of one kind. A packet that is handed in there and does not fit is sent back.',
    sources: [PUBLISHED],
    fix: 'Hand the packet in for the normal review, or state what is missing.',
  },
  'audit.old-limit': {
    means: 'A limit of the short review comes from a time of other products.',
    rule: 'Lists live longer than products: a limit of 9.6 A for the short-circuit current of a module shuts out most modules that are sold now.',
    sources: [PUBLISHED],
    fix: 'Ask the authority whether the list is in force.',
  },
  'house.smoke-alarms': {
    means: 'Smoke alarms are not at all places, or nobody says where they are.',
    rule: 'A permit for work in a dwelling asks for alarms as in a new one; work on the outside alone is excepted. Many authorities look for them at the final inspection.',
    sources: [SMOKE_ALARMS],
    fix: 'Look, add what is missing, and state existing_house.smoke_alarms.',
  },
  'house.carbon-monoxide-alarms': {
    means: 'Carbon monoxide alarms are not at all places, or nobody says whether they are needed.',
    rule: 'They are asked for where fuel is burnt in the house or a garage opens into it.',
    sources: [CARBON_MONOXIDE_ALARMS],
    fix: 'Look, add what is missing, and state existing_house.carbon_monoxide_source and carbon_monoxide_alarms.',
  },
  'house.electrodes': {
    means: 'The grounding electrodes of the house are not shown to be one system.',
    rule: 'All electrodes that are there are bonded together, and a single rod needs another electrode unless it was measured at 25 ohm or less. The PV system is grounded through them.',
    sources: [electrodes],
    fix: 'Look at the service, have bonded what is missing, and state electrical.service.bonding.electrodes and existing_house.electrodes_bonded.',
  },
  'house.working-space': {
    means: 'The clear space in front of the panel is too small or not stated.',
    rule: 'Somebody works at the live panel with room to step back: 30 in wide, 3 ft deep, 6 ft 6 in high, kept clear.',
    sources: nec('workingSpace'),
    fix: 'Measure it and state existing_house.panel_space.',
  },
  'house.emergency-disconnect': {
    means: 'It is not shown whether the house needs an outdoor emergency disconnect.',
    rule: 'Since 2020 dwellings of one and two families have one; it is due where the service is new or replaced.',
    sources: [emergency],
    fix: 'State existing_house.service_replaced and emergency_disconnect.',
  },
}
