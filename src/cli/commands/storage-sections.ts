import type { StorageValues } from '../../money/index.js'
import type { Fact, Section } from '../../report/index.js'
import { MONTHS } from '../../values/index.js'

/** The battery in the payback: first year, years of the study, and outages. */
export function storageSections(storage: StorageValues): Section[] {
  const { annual, without } = storage
  const row = (label: string, now: number, plain: number): (string | number)[] => [label, plain, now]
  return [
    { kind: 'paragraph', text: 'The battery:' },
    { kind: 'facts', facts: facts(storage) },
    {
      kind: 'table',
      heading: 'Energy of the first year',
      columns: [{ heading: '' }, { heading: 'Modules alone' }, { heading: 'With the battery' }],
      rows: [
        row('Taken from the grid, kWh', annual.import_kwh, without.import_kwh),
        row('Given to the grid, kWh', annual.export_kwh, without.export_kwh),
        row('Own use of the output, %', annual.self_use_pct, without.self_use_pct),
      ],
    },
    {
      kind: 'table',
      heading: `Battery by year (fades ${storage.fade})`,
      columns: [
        { heading: 'Year' },
        { heading: 'Capacity', unit: '%' },
        { heading: 'Discharged', unit: 'kWh' },
        { heading: 'Full cycles', decimals: 0 },
        { heading: 'Lost by fade', unit: 'USD' },
        { heading: 'Bought again' },
      ],
      rows: storage.years.map((year) => [
        year.year,
        year.capacity_pct,
        year.discharged_kwh,
        year.full_cycles,
        year.fade_usd,
        year.replaced ? 'yes' : '',
      ]),
    },
    ...outageSections(storage),
  ]
}

function facts(storage: StorageValues): Fact[] {
  const { annual, without, warranty_end: end, optimum, optimum_share_pct: share } = storage
  return [
    { label: 'Units', value: storage.count },
    { label: 'Usable energy when new', value: storage.usable_kwh, unit: 'kWh', decimals: 1 },
    { label: 'Kept for an outage', value: storage.reserve_kwh, unit: 'kWh', decimals: 1 },
    { label: 'Charged in the first year', value: annual.charged_kwh, unit: 'kWh' },
    { label: 'Discharged in the first year', value: annual.discharged_kwh, unit: 'kWh' },
    { label: 'Lost, standby included', value: annual.losses_kwh, unit: 'kWh' },
    ...(annual.curtailed_kwh > 0 ? [{ label: 'Output thrown away', value: annual.curtailed_kwh, unit: 'kWh' }] : []),
    {
      label: 'Saved by the battery in the first year',
      value: storage.first_year_savings_usd,
      unit: 'USD',
      decimals: 2,
    },
    {
      label: 'Net present value without the battery',
      ...(without.npv_usd === null
        ? { value: 'not known: state storage.cost_usd_per_unit' }
        : { value: without.npv_usd, unit: 'USD' }),
    },
    {
      label: 'Warranty of the battery',
      value:
        end === null
          ? 'not used up within the study'
          : `ends after ${end.after_years.toFixed(1)} years by its ${end.by}`,
    },
    ...(share === undefined
      ? []
      : [
          {
            label: 'Of what perfect foresight would save',
            ...(share === null || optimum === null || optimum === undefined
              ? { value: 'not defined for this tariff' }
              : {
                  value: `${share.toFixed(1)} % (energy costs ${usd(optimum.without_usd)} without, ${usd(optimum.control_usd)} as controlled, ${usd(optimum.least_usd)} USD at best)`,
                }),
          },
        ]),
  ]
}

const usd = (value: number): string => value.toFixed(0)

function outageSections({ outage }: StorageValues): Section[] {
  if (outage === undefined) return []
  return [
    {
      kind: 'table',
      heading: 'Outage: hours that the essential loads last',
      columns: [
        { heading: 'Month' },
        { heading: '9 of 10 starts', unit: 'h', decimals: 1 },
        { heading: 'Half of them', unit: 'h', decimals: 1 },
        { heading: '1 of 10', unit: 'h', decimals: 1 },
      ],
      rows: outage.map(({ month, p90_h: cautious, p50_h: middle, p10_h: best }) => [
        MONTHS[month - 1] ?? String(month),
        cautious,
        middle,
        best,
      ]),
    },
    {
      kind: 'paragraph',
      text: 'By when in the month the grid is lost, with what the ordinary control left in the store; 168 h, a week, is the longest looked at. Not for equipment that keeps a person alive.',
    },
  ]
}
