import { stated, type FieldRule } from '../field-rule.js'

const SECTION = 'Customer and installer'
const ALL = 'all'

/** Who applies, for which house, and who does the work. */
export const PEOPLE_FIELDS: readonly FieldRule[] = [
  ...(
    [
      ['customer_name', 'Customer of record', 'name'],
      ['customer_address', 'Mailing address', 'address'],
      ['customer_phone', 'Telephone of the customer', 'phone'],
      ['customer_email', 'Mail address of the customer', 'email'],
    ] as const
  ).map(
    ([id, label, key]): FieldRule => ({
      id,
      row: 1,
      section: SECTION,
      label,
      askedBy: ALL,
      who: 'customer',
      key: `parties.owner.${key}`,
      of: ({ project }) => stated(`parties.owner.${key}`, project.parties?.owner?.[key]),
    }),
  ),
  {
    id: 'service_address',
    row: 2,
    section: SECTION,
    label: 'Service address',
    askedBy: ALL,
    who: 'customer',
    key: 'site.address',
    of: ({ project }) => stated('site.address', project.site.address),
  },
  {
    id: 'county',
    row: 2,
    section: SECTION,
    label: 'County',
    askedBy: ALL,
    who: 'customer',
    key: 'utility_application.county',
    of: (facts) => stated('utility_application.county', facts.stated.county),
  },
  {
    id: 'parcel',
    row: 2,
    section: SECTION,
    label: 'Parcel number',
    askedBy: ALL,
    who: 'customer, from the records of the county',
    key: 'site.parcel',
    of: ({ project }) => stated('site.parcel', project.site.parcel),
  },
  {
    id: 'account_number',
    row: 3,
    section: SECTION,
    label: 'Utility account number',
    askedBy: ALL,
    who: 'customer, from the bill',
    key: 'utility_application.account_number',
    of: (facts) => stated('utility_application.account_number', facts.stated.account_number),
  },
  {
    id: 'meter_number',
    row: 3,
    section: SECTION,
    label: 'Utility meter number',
    askedBy: ALL,
    who: 'customer, from the bill or the meter',
    key: 'utility_application.meter_number',
    of: (facts) => stated('utility_application.meter_number', facts.stated.meter_number),
  },
  {
    id: 'rate_now',
    row: 4,
    section: SECTION,
    label: 'Rate schedule now',
    askedBy: 'many',
    who: 'customer, from the bill',
    key: 'tariff.name',
    of: ({ project }) => stated('tariff.name', project.tariff?.name),
  },
  {
    id: 'rate_after',
    row: 4,
    section: SECTION,
    label: 'Rate schedule after connection',
    askedBy: 'many',
    who: 'customer, from the rates of the utility',
    key: 'utility_application.rate_after',
    of: (facts) => stated('utility_application.rate_after', facts.stated.rate_after),
  },
  {
    id: 'ownership',
    row: 5,
    section: SECTION,
    label: 'System is',
    askedBy: 'many',
    who: 'customer',
    key: 'utility_application.ownership',
    of: ({ stated: { ownership } }) =>
      stated('utility_application.ownership', ownership === undefined ? undefined : OWNERSHIP[ownership]),
  },
  {
    id: 'third_party_owner',
    row: 5,
    section: SECTION,
    label: 'Third-party owner',
    askedBy: 'many',
    who: 'installer',
    when: ({ stated: { ownership, third_party_owner: owner } }) =>
      owner !== undefined || (ownership !== undefined && ownership !== 'owned'),
    key: 'utility_application.third_party_owner',
    of: (facts) => stated('utility_application.third_party_owner.name', facts.stated.third_party_owner?.name),
  },
  ...(['installer', 'electrician'] as const).flatMap((party): FieldRule[] => [
    {
      id: party,
      row: 6,
      section: SECTION,
      label: party === 'installer' ? 'Contractor' : 'Electrician',
      askedBy: ALL,
      who: 'installer',
      key: `parties.${party}.name`,
      of: ({ project }) => stated(`parties.${party}.name`, project.parties?.[party]?.name),
    },
    {
      id: `${party}_license`,
      row: 6,
      section: SECTION,
      label: party === 'installer' ? 'Licence of the contractor' : 'Licence of the electrician',
      askedBy: ALL,
      who: 'installer',
      key: `parties.${party}.license`,
      of: ({ project }) => stated(`parties.${party}.license`, project.parties?.[party]?.license),
    },
  ]),
  {
    id: 'agent_authorised',
    row: 7,
    section: SECTION,
    label: 'Installer authorised by letter',
    askedBy: 'New York',
    who: 'customer',
    key: 'utility_application.agent_authorised',
    of: (facts) => stated('utility_application.agent_authorised', facts.stated.agent_authorised),
  },
]

const OWNERSHIP = {
  owned: 'owned by the customer',
  leased: 'leased',
  power_purchase: 'under a power purchase agreement',
} as const
