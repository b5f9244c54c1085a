import { own } from '../../../values/index.js'
import { APPLICATION_SOURCES } from '../../../tables/utility/index.js'
import { formatSource } from '../../../worksheet/index.js'
import { stated, type FieldRule } from '../field-rule.js'

const SECTION = 'Dates, insurance and fee'

/** What is agreed beside the system itself; signature and date stay blank. */
export const TERMS_FIELDS: readonly FieldRule[] = [
  {
    id: 'production_meter',
    row: 29,
    section: SECTION,
    label: 'Production meter wanted',
    askedBy: 'some',
    who: 'utility and customer',
    key: 'utility_application.production_meter',
    of: (facts) => stated('utility_application.production_meter', facts.stated.production_meter),
  },
  {
    id: 'monitoring',
    row: 29,
    section: SECTION,
    label: 'Monitoring',
    askedBy: 'some',
    who: 'installer',
    key: 'utility_application.monitoring',
    of: (facts) => stated('utility_application.monitoring', facts.stated.monitoring),
  },
  {
    id: 'installation_date',
    row: 30,
    section: SECTION,
    label: 'Estimated installation',
    askedBy: 'federal',
    who: 'installer',
    key: 'utility_application.installation_date',
    of: (facts) => stated('utility_application.installation_date', facts.stated.installation_date),
  },
  {
    id: 'in_service_date',
    row: 30,
    section: SECTION,
    label: 'Estimated day of operation',
    askedBy: 'federal',
    who: 'installer',
    key: 'utility_application.in_service_date',
    of: (facts) => stated('utility_application.in_service_date', facts.stated.in_service_date),
  },
  {
    id: 'insurance_limit_usd',
    row: 31,
    section: SECTION,
    label: 'Liability limit of the insurance',
    unit: 'USD',
    askedBy: 'some',
    who: 'customer',
    key: 'utility_application.insurance_limit_usd',
    of: (facts) => stated('utility_application.insurance_limit_usd', facts.stated.insurance_limit_usd),
    note: ({ stated: { insurance_required_usd: neededUsd } }) =>
      neededUsd === undefined
        ? `what the utility asks is not stated; for scale: ${formatSource(APPLICATION_SOURCES.insurance)}`
        : `the utility asks for ${neededUsd.toLocaleString('en-US')} USD`,
  },
  {
    id: 'application_fee_usd',
    row: 32,
    section: SECTION,
    label: 'Application fee',
    unit: 'USD',
    askedBy: 'most',
    who: 'utility',
    key: 'utility_application.fee',
    of: ({ project, stated: { fee } }) => {
      const found = fee === undefined ? undefined : own(project.materials?.fees, fee)
      return found === undefined ? undefined : { value: found.usd, from: `materials.fees.${fee}.usd` }
    },
    note: formatSource(APPLICATION_SOURCES.fee),
  },
  ...(['signature', 'signature_date'] as const).map((id): FieldRule => ({
    id,
    row: 33,
    section: SECTION,
    label: id === 'signature' ? 'Signature' : 'Date of signature',
    askedBy: 'all',
    who: 'customer',
    key: '',
    of: () => 'blank',
    note: 'left blank for who signs',
  })),
]
