import type { ProjectSizeValues } from '../../money/index.js'
import { storageSizeSections } from './storage-size-sections.js'
import type { Cell, Fact, Section, TableData } from '../../report/index.js'

type Row = ProjectSizeValues['sizes'][number]

export function sizeSections(values: ProjectSizeValues): Section[] {
  return [
    { kind: 'facts', facts: pickFacts(values) },
    { kind: 'list', heading: 'What limits the number', items: limitItems(values) },
    {
      kind: 'paragraph',
      text: 'Sizes up to the project as it stands keep its best modules; larger ones add modules where the roof has room, best first. Every size runs the same inverters at its own load.',
    },
    { kind: 'paragraph', text: `Payback: ${values.payback_means}.` },
    { kind: 'table', heading: 'What each size is worth', ...worthTable(values) },
    ...(values.with_storage === undefined ? [] : storageSizeSections(values.with_storage)),
    { kind: 'table', heading: 'What the last module of each size adds', ...marginalTable(values) },
    {
      kind: 'plot',
      heading: 'Worth against size',
      x: { label: 'Modules' },
      y: { label: 'Net present value', unit: 'USD' },
      series: [{ name: 'NPV', points: values.sizes.map((row) => [row.modules, row.npv_usd] as const) }],
    },
  ]
}

function pickFacts({
  picks,
  sizes,
  wished_share_pct: wished,
  modules_in_project: inProject,
}: ProjectSizeValues): Fact[] {
  const modules = (pick: number | null, none: string): Pick<Fact, 'value'> => {
    const row = sizes.find((one) => one.modules === pick)
    if (row === undefined) return { value: none }
    const payback = row.payback_years === null ? 'not paid back' : `payback ${row.payback_years.toFixed(1)} years`
    return { value: `${String(row.modules)} modules (NPV ${row.npv_usd.toFixed(0)} USD, ${payback})` }
  }
  return [
    { label: 'Modules in the project', value: inProject },
    { label: 'Best net present value', ...modules(picks.best_npv, 'none: no size is worth its cost') },
    { label: 'Shortest payback', ...modules(picks.shortest_payback, 'none is paid back within the study') },
    { label: 'Displaces only the dearest kWh', ...modules(picks.only_expensive_kwh, 'none') },
    ...(wished === null
      ? []
      : [
          {
            label: `Makes ${String(wished)} % of the use`,
            ...modules(picks.covers_wished_share, 'no size that fits'),
          },
        ]),
  ]
}

function limitItems({ limits, stopped_by: stops }: ProjectSizeValues): string[] {
  return limits.map(({ limit, modules, or_more: more }) => {
    const most = `${String(modules)} modules${more ? ' or more' : ''}`
    return `${most}: ${limit}${limit === stops ? ' (stops it)' : ''}`
  })
}

/** The row of the project as it stands carries a mark, so that nothing hangs on colour. */
function named(row: Row, values: ProjectSizeValues): Cell {
  if (row.modules === values.picks.best_npv) return { value: `${String(row.modules)} best NPV`, tone: 'good' }
  if (row.modules === values.modules_in_project) return { value: `${String(row.modules)} project`, tone: 'strong' }
  return String(row.modules)
}

function worthTable(values: ProjectSizeValues): TableData {
  const hasBranches = values.sizes.some((row) => row.branches !== null)
  return {
    columns: [
      { heading: 'Modules' },
      ...(hasBranches ? [{ heading: 'Branches' }] : []),
      { heading: 'Output', unit: 'kWh' },
      { heading: 'Of use', unit: '%' },
      { heading: 'Net cost', unit: 'USD' },
      { heading: 'Saved in year 1', unit: 'USD' },
      { heading: 'Payback', unit: 'years', decimals: 1 },
      { heading: 'NPV', unit: 'USD' },
    ],
    rows: values.sizes.map((row) => [
      named(row, values),
      ...(hasBranches ? [row.branches] : []),
      row.annual_kwh,
      row.share_of_use_pct,
      row.net_cost_usd,
      row.first_year_savings_usd,
      row.payback_years,
      row.npv_usd,
    ]),
  }
}

function marginalTable({ sizes }: ProjectSizeValues): TableData {
  return {
    columns: [
      { heading: 'Modules' },
      { heading: 'More', unit: 'kWh' },
      { heading: 'Cost', unit: 'USD' },
      { heading: 'Saves', unit: 'USD/kWh', decimals: 3 },
      { heading: 'NPV', unit: 'USD' },
      { heading: 'Its kWh a year replace or become' },
    ],
    rows: sizes.map((row) => [
      row.modules,
      row.marginal.kwh,
      row.marginal.cost_usd,
      row.marginal.usd_per_kwh,
      row.marginal.npv_usd,
      replaced(row),
    ]),
  }
}

/** Lines of the bill that tell where a kWh goes; riders and taxes follow every kWh. */
const WHERE_KWH_GO = /^(?:energy|export|surplus|sell)/u

/** `234 summer tier 2, 225 winter tier 2`: kWh by bill line, lines below half a kWh left out. */
function replaced(row: Row): string {
  return row.marginal.replaces
    .filter(({ id, unit, quantity }) => unit === 'kWh' && WHERE_KWH_GO.test(id) && Math.abs(quantity) >= 0.5)
    .map(({ says, quantity }) => `${Math.abs(quantity).toFixed(0)} ${shortName(says)}`)
    .join(', ')
}

/** `energy summer, tier 2` is `summer tier 2`; a price for all the year is `energy`, or just its period. */
function shortName(says: string): string {
  const name = says
    .replace(/^energy /u, '')
    .replace(/^all_year(?:, )?/u, '')
    .replace(', ', ' ')
  return name === '' ? 'energy' : name
}

/** All of it in one table for a spreadsheet. */
export function sizeTable({ sizes }: ProjectSizeValues): TableData {
  return {
    columns: [
      { heading: 'Modules' },
      { heading: 'Branches' },
      { heading: 'Output', unit: 'kWh', key: 'annual_kwh', decimals: 1 },
      { heading: 'Share of use', unit: '%', key: 'share_of_use_pct', decimals: 1 },
      { heading: 'Net cost', unit: 'USD', key: 'net_cost_usd', decimals: 2 },
      { heading: 'Saved in year 1', unit: 'USD', key: 'first_year_savings_usd', decimals: 2 },
      { heading: 'Payback', unit: 'years', key: 'payback_years', decimals: 2 },
      { heading: 'NPV', unit: 'USD', key: 'npv_usd', decimals: 2 },
      { heading: 'Further', unit: 'kWh', key: 'marginal_kwh', decimals: 1 },
      { heading: 'Further cost', unit: 'USD', key: 'marginal_cost_usd', decimals: 2 },
      { heading: 'Further savings', unit: 'USD', key: 'marginal_savings_usd', decimals: 2 },
      { heading: 'Further savings', unit: 'USD/kWh', key: 'marginal_usd_per_kwh', decimals: 4 },
      { heading: 'Further NPV', unit: 'USD', key: 'marginal_npv_usd', decimals: 2 },
      { heading: 'Replaces', key: 'replaces' },
    ],
    rows: sizes.map((row) => [
      row.modules,
      row.branches,
      row.annual_kwh,
      row.share_of_use_pct,
      row.net_cost_usd,
      row.first_year_savings_usd,
      row.payback_years,
      row.npv_usd,
      row.marginal.kwh,
      row.marginal.cost_usd,
      row.marginal.savings_usd,
      row.marginal.usd_per_kwh,
      row.marginal.npv_usd,
      replaced(row),
    ]),
  }
}
