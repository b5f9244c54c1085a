import { APPLICATION_LIMITS, SIZE_LEVELS } from '../../../tables/utility/index.js'
import { listModuleGroups } from '../../../project/index.js'
import { TOTALS } from '../../totals.js'
import { digits, type ApplicationFacts } from '../application-facts.js'
import { stated, type Answer, type FieldRule } from '../field-rule.js'

const SECTION = 'Generating system'
const ALL = 'all'

/** What is built: modules, their ratings, storage, and what the system will make. */
export const GENERATOR_FIELDS: readonly FieldRule[] = [
  {
    id: 'stage',
    row: 8,
    section: SECTION,
    label: 'New or addition',
    askedBy: ALL,
    who: 'customer',
    key: 'utility_application.stage',
    of: (facts) => stated('utility_application.stage', facts.stated.stage),
  },
  {
    id: 'existing_generation_kw',
    row: 8,
    section: SECTION,
    label: 'Existing generation',
    unit: 'kW ac',
    askedBy: ALL,
    who: 'customer',
    key: 'utility_application.existing_generation_kw',
    of: (facts) => stated('utility_application.existing_generation_kw', facts.stated.existing_generation_kw),
  },
  {
    id: 'generator_type',
    row: 9,
    section: SECTION,
    label: 'Type of generator',
    askedBy: ALL,
    who: 'installer',
    key: 'arrays',
    of: (facts) => ({
      value: `photovoltaic, inverter-based${hasStorage(facts) ? ', with storage' : ''}`,
      from: hasStorage(facts) ? 'arrays, storage as stated' : 'arrays',
    }),
  },
  {
    id: 'modules',
    row: 10,
    section: SECTION,
    label: 'Modules, maker and model',
    askedBy: ALL,
    who: 'installer',
    key: 'equipment.modules',
    of: ({ project }) => stated('arrays, equipment.modules.*.name', TOTALS.module_list.of(project)),
  },
  {
    id: 'module_stc_w',
    row: 10,
    section: SECTION,
    label: 'Rated power of a module (STC)',
    unit: 'W dc',
    askedBy: ALL,
    who: 'maker',
    key: 'equipment.modules.*.pmax_w',
    of: ({ project }) => {
      const ratings = [...new Set(listModuleGroups(project).map(({ module }) => module.pmax_w))]
      const [only] = ratings
      return ratings.length === 1 && only !== undefined
        ? { value: only, from: 'equipment.modules.*.pmax_w' }
        : { value: ratings.map((watts) => `${watts} W dc`).join(', '), from: 'equipment.modules.*.pmax_w' }
    },
  },
  {
    id: 'module_count',
    row: 10,
    section: SECTION,
    label: 'Number of modules',
    askedBy: ALL,
    who: 'installer',
    key: 'arrays',
    of: ({ project }) => ({ value: TOTALS.module_count.of(project), from: 'arrays' }),
  },
  {
    id: 'total_dc_kw',
    row: 13,
    section: SECTION,
    label: 'Total DC rating (STC)',
    unit: 'kW dc',
    askedBy: ALL,
    who: 'installer',
    key: 'arrays',
    of: ({ dcKw }) => ({ value: digits(dcKw, 3), from: 'sum of modules x equipment.modules.*.pmax_w' }),
  },
  {
    id: 'total_ac_kw',
    row: 13,
    section: SECTION,
    label: 'Total AC nameplate rating',
    unit: 'kW ac',
    askedBy: ALL,
    who: 'installer',
    key: 'equipment.inverters.*.ac_power_w',
    of: ({ acKw }) => ({ value: digits(acKw, 3), from: 'sum of inverters x equipment.inverters.*.ac_power_w' }),
    note: ({ acKw }) =>
      SIZE_LEVELS.filter(({ upToKw }) => acKw > upToKw)
        .map(({ name, upToKw }) => `above the ${upToKw} kW of the ${name}`)
        .join('; '),
  },
  {
    id: 'ptc_kw',
    row: 14,
    section: SECTION,
    label: 'AC rating at PTC',
    unit: 'kW ac',
    askedBy: 'California',
    who: 'maker, from the list of eligible equipment',
    key: 'equipment.modules.*.ptc_w',
    of: ptcRating,
  },
  {
    id: 'annual_kwh',
    row: 21,
    section: SECTION,
    label: 'Expected yearly energy',
    unit: 'kWh',
    askedBy: 'many',
    who: 'installer',
    key: 'site',
    of: ({ yearKwh }) =>
      yearKwh === undefined
        ? undefined
        : { value: Math.round(yearKwh), from: 'estimate-yield, mean of the first year' },
  },
  {
    id: 'annual_use_kwh',
    row: 22,
    section: SECTION,
    label: 'Use of 12 months',
    unit: 'kWh',
    askedBy: 'many',
    who: 'customer, from the bills',
    key: 'usage',
    of: ({ use }) => (use === undefined ? undefined : { value: Math.round(use.kwh), from: use.from }),
  },
  {
    id: 'energy_of_use_pct',
    row: 22,
    section: SECTION,
    label: 'Yearly energy as share of yearly use',
    unit: '%',
    askedBy: 'many',
    who: 'installer',
    key: 'usage',
    of: ({ yearKwh, use }) =>
      yearKwh === undefined || use === undefined
        ? undefined
        : { value: digits((yearKwh / use.kwh) * 100, 1), from: 'estimate-yield over usage' },
    note: ({ stated: { size_limit_pct: limit } }) =>
      limit === undefined
        ? `limit of the utility not stated (utility_application.size_limit_pct); often 100 to ${APPLICATION_LIMITS.energyOfUsePct} %`
        : `the utility allows ${limit} % (utility_application.size_limit_pct)`,
  },
  ...storageFields(),
]

/** Module power at PTC times the weighted efficiency of the inverter behind it. */
function ptcRating({ project, inverters }: ApplicationFacts): Answer | undefined {
  const groups = listModuleGroups(project)
  const [first] = inverters
  const efficiencyPct = first?.inverter.weighted_efficiency_pct
  if (inverters.length !== 1 || efficiencyPct === undefined) return undefined
  let watts = 0
  for (const { module, modules } of groups) {
    if (module.ptc_w === undefined) return undefined
    watts += module.ptc_w * modules
  }
  return {
    value: digits((watts * efficiencyPct) / 100 / 1000, 3),
    from: 'modules x equipment.modules.*.ptc_w x equipment.inverters.*.weighted_efficiency_pct',
  }
}

export function hasStorage({ project, stated: { storage } }: ApplicationFacts): boolean {
  const sources = Object.values(project.electrical?.distribution?.sources ?? {})
  return storage !== undefined || sources.some(({ kind }) => kind === 'storage')
}

/** Storage: one field that says there is none, or all that is asked of it. */
function storageFields(): FieldRule[] {
  const rows = [
    ['storage', 'Storage, maker and model', 'name', ''],
    ['storage_kw', 'Storage, rated output', 'power_kw', 'kW'],
    ['storage_kwh', 'Storage, usable energy', 'usable_kwh', 'kWh'],
    ['storage_coupling', 'Storage, coupled on', 'coupling', ''],
    ['storage_charges_from_grid', 'Storage may charge from the grid', 'charges_from_grid', ''],
    ['storage_may_export', 'Storage may send energy to the grid', 'may_export', ''],
  ] as const
  return rows.map(([id, label, key, unit]) => ({
    id,
    row: 23,
    section: SECTION,
    label,
    unit,
    askedBy: 'all with storage',
    who: 'installer',
    key: `utility_application.storage.${key}`,
    when: (facts) => id === 'storage' || hasStorage(facts),
    of: (facts) =>
      hasStorage(facts)
        ? stated(`utility_application.storage.${key}`, facts.stated.storage?.[key])
        : {
            value: 'none',
            from: 'no storage under utility_application or electrical.distribution.sources',
            none: true,
          },
  }))
}
