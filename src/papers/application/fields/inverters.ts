import type { Inverter } from '../../../project/index.js'
import { inverterPath } from '../../../project/index.js'
import { APPLICATION_LIMITS, APPLICATION_SOURCES } from '../../../tables/utility/index.js'
import { formatSource } from '../../../worksheet/index.js'
import { digits, ofInverters, type ApplicationFacts } from '../application-facts.js'
import { stated, type FieldRule } from '../field-rule.js'

const SECTION = 'Inverters'

/** The key of the first kind of inverter that is silent about something. */
const keyOf =
  (key: keyof Inverter) =>
  ({ inverters }: ApplicationFacts): string => {
    const silent = inverters.find(({ inverter }) => inverter[key] === undefined)
    return `${silent === undefined ? 'equipment.inverters.*' : inverterPath(silent.id)}.${key}`
  }

/** The same question to each kind of inverter. */
function asked(
  rule: Pick<FieldRule, 'id' | 'row' | 'label' | 'askedBy' | 'note'> & {
    readonly key: keyof Inverter
    readonly says?: (inverter: Inverter, facts: ApplicationFacts) => string | undefined
  },
): FieldRule {
  const { key, says, ...rest } = rule
  return {
    ...rest,
    section: SECTION,
    who: 'maker, from data sheet or certificate',
    key: keyOf(key),
    of: (facts) =>
      stated(
        `equipment.inverters.*.${key}`,
        ofInverters(facts, (inverter) => {
          if (says !== undefined) return says(inverter, facts)
          const value = inverter[key]
          return typeof value === 'string' || typeof value === 'number' ? String(value) : undefined
        }),
      ),
  }
}

/** Each kind of inverter: ratings, listing, categories. */
export const INVERTER_FIELDS: readonly FieldRule[] = [
  {
    id: 'inverters',
    row: 11,
    section: SECTION,
    label: 'Inverters, maker and model',
    askedBy: 'all',
    who: 'installer',
    key: 'equipment.inverters',
    of: ({ inverters }) => ({
      value: inverters.map(({ id, inverter, count }) => `${count} x ${inverter.name ?? id}`).join(', '),
      from: 'arrays, inverter_units, equipment.inverters.*.name',
    }),
  },
  {
    id: 'inverter_count',
    row: 11,
    section: SECTION,
    label: 'Number of inverters',
    askedBy: 'all',
    who: 'installer',
    key: 'equipment.inverters',
    of: ({ inverters }) => ({
      value: inverters.reduce((sum, { count }) => sum + count, 0),
      from: 'arrays, inverter_units',
    }),
  },
  asked({
    id: 'inverter_kw',
    row: 12,
    label: 'Nameplate of each inverter, real power',
    askedBy: 'federal; all',
    key: 'ac_power_w',
    says: ({ ac_power_w: watts }) => `${digits(watts / 1000, 3)} kW ac`,
  }),
  {
    id: 'inverter_kva',
    row: 12,
    section: SECTION,
    label: 'Nameplate of each inverter, apparent power',
    askedBy: 'federal; all',
    who: 'maker',
    key: 'electrical.power_factor',
    of: (facts) =>
      facts.powerFactor === undefined
        ? undefined
        : stated(
            'equipment.inverters.*.ac_power_w over electrical.power_factor',
            ofInverters(
              facts,
              ({ ac_power_w: watts }) => `${digits(watts / 1000 / (facts.powerFactor ?? 1), 3)} kVA ac`,
            ),
          ),
  },
  asked({
    id: 'output_voltage',
    row: 15,
    label: 'Output voltage',
    askedBy: 'all',
    key: 'ac_voltage_v',
    says: ({ ac_voltage_v: volts }) => (volts === undefined ? undefined : `${volts} V ac`),
  }),
  {
    id: 'output_phases',
    row: 15,
    section: SECTION,
    label: 'Output phases',
    askedBy: 'all',
    who: 'maker, from data sheet or certificate',
    key: keyOf('phases'),
    of: (facts) =>
      stated(
        'equipment.inverters.*.phases',
        ofInverters(facts, ({ phases }) => (phases === undefined ? undefined : String(phases))),
      ) ??
      (facts.project.electrical === undefined || facts.project.electrical.service?.voltage_v === 208
        ? undefined
        : { value: '1', from: 'service of 120/240 V, which is single-phase' }),
  },
  {
    id: 'power_factor',
    row: 16,
    section: SECTION,
    label: 'Power factor at full output',
    askedBy: 'many',
    who: 'installer',
    key: 'electrical.power_factor',
    of: ({ powerFactor }) => stated('electrical.power_factor', powerFactor),
    note: 'its range is that of the performance category below',
  },
  asked({
    id: 'max_fault_current',
    row: 17,
    label: 'Largest fault current of each inverter',
    askedBy: 'some',
    key: 'max_fault_current_a',
    says: ({ max_fault_current_a: faultA, ac_current_a: ratedA }) => {
      if (faultA === undefined) return undefined
      return `${faultA} A${ratedA === undefined ? '' : ` (${digits(faultA / ratedA, 2)} x rated)`}`
    },
    note: (facts) => {
      if (facts.inverters.every(({ inverter }) => inverter.max_fault_current_a !== undefined)) return ''
      const usual = ofInverters(facts, ({ ac_current_a: ratedA }) =>
        ratedA === undefined ? undefined : `${digits(ratedA * APPLICATION_LIMITS.usualFaultFactor, 2)} A`,
      )
      return `not to be guessed; ${APPLICATION_LIMITS.usualFaultFactor} x rated is usual${usual === undefined ? '' : `, here ${usual}`} (${formatSource(APPLICATION_SOURCES.faultCurrent)})`
    },
  }),
  asked({ id: 'listing', row: 18, label: 'Listing', askedBy: 'all', key: 'listing' }),
  asked({
    id: 'certificate',
    row: 18,
    label: 'File or certificate of the listing',
    askedBy: 'all',
    key: 'certificate',
  }),
  asked({
    id: 'normal_category',
    row: 19,
    label: 'IEEE 1547-2018 normal performance category',
    askedBy: 'newer forms',
    key: 'ieee1547_normal',
    note: 'B is usual (from memory)',
  }),
  asked({
    id: 'abnormal_category',
    row: 19,
    label: 'IEEE 1547-2018 abnormal performance category',
    askedBy: 'newer forms',
    key: 'ieee1547_abnormal',
    note: 'III is usual for PV (from memory)',
  }),
  {
    id: 'settings_profile',
    row: 20,
    section: SECTION,
    label: 'Setting profile of the utility',
    askedBy: 'newer forms',
    who: 'utility',
    key: 'utility_application.settings_profile',
    of: (facts) => stated('utility_application.settings_profile', facts.stated.settings_profile),
    note: 'its name alone; settings are never written here',
  },
]
