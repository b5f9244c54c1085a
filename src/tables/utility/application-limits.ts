import type { Source } from '../../worksheet/index.js'

/** Figures that applications are held against where the utility's own are not stated. */
export const APPLICATION_LIMITS = {
  /** Yearly energy over yearly use that many utilities allow at most, percent (100 to 120). */
  energyOfUsePct: 120,
  /** Distance of the lockable disconnect from the meter that many utilities ask for, ft. */
  disconnectFromMeterFt: 10,
  /** Usual fault current of an inverter over its rated current, where the data sheet is silent. */
  usualFaultFactor: 1.2,
} as const

/** Where these, and the list of what is asked, come from. */
export const APPLICATION_SOURCES = {
  fields: {
    document: 'application forms of small-generator procedures',
    place:
      'federal Attachment 5 and New York up to 50 kW (fields from memory); form of a North Carolina cooperative read',
    standing: 'from memory',
  },
  energyOfUse: {
    document: 'net-metering rules',
    place: 'yearly energy at most 100 to 120 % of the yearly use, as the utility has it',
    standing: 'from memory',
  },
  faultCurrent: {
    document: 'interconnection practice',
    place: 'fault current of an inverter about 1.2 times its rated current',
    standing: 'from memory',
  },
  disconnect: {
    document: 'utility requirements',
    place:
      'lockable disconnect within 10 ft of the meter; New York not for inverter-based systems up to 25 kW (incentive database, 2013, read)',
    standing: 'from memory',
  },
  settings: {
    document: 'IEEE 1547',
    edition: '2018',
    place: 'settings are those of the utility',
    standing: 'from memory',
  },
  categories: {
    document: 'IEEE 1547',
    edition: '2018',
    place: 'performance categories: B and III are usual for PV',
    standing: 'from memory',
  },
  fee: {
    document: 'application fees',
    place: '100 USD at a city utility, 250 USD at a North Carolina cooperative; elsewhere from 0 USD',
    standing: 'read',
  },
  insurance: {
    document: 'interconnection rules of a North Carolina cooperative',
    place: 'liability limit of 100,000 USD for a residence',
    standing: 'read',
  },
} as const satisfies Readonly<Record<string, Source>>
