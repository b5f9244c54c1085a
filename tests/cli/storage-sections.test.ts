import { expect, test } from 'vitest'
import { storageSections } from '../../src/cli/commands/storage-sections.js'
import { storageSizeSections } from '../../src/cli/commands/storage-size-sections.js'
import type { StorageValues } from '../../src/money/index.js'

/** Made-up values, each another number, so that a swapped one shows. */
const VALUES: StorageValues = {
  count: 1,
  usable_kwh: 10,
  reserve_kwh: 2,
  annual: {
    charged_kwh: 2500,
    discharged_kwh: 2200,
    losses_kwh: 430,
    standby_kwh: 175,
    import_kwh: 3000,
    export_kwh: 2400,
    curtailed_kwh: 12,
    self_use_pct: 74,
    full_cycles: 240,
    round_trip_pct: 82,
    left_kwh: 0,
  },
  without: {
    import_kwh: 5400,
    export_kwh: 5000,
    self_use_pct: 46,
    first_year_savings_usd: 1400,
    npv_usd: 7400,
    payback_years: 11,
  },
  first_year_savings_usd: 490,
  fade: 'straight to 70 % at the end of the warranty',
  years: [{ year: 1, capacity_pct: 97, discharged_kwh: 2150, full_cycles: 235, fade_usd: 10, replaced: true }],
  warranty_end: { after_years: 7.51, by: 'throughput' },
  optimum: { without_usd: 1146, control_usd: 655, least_usd: 636 },
  optimum_share_pct: 96.2,
  outage: [{ month: 1, p10_h: 90, p50_h: 30, p90_h: 9 }],
}

test('the battery in the payback: every figure in its place', () => {
  const sections = storageSections(VALUES)
  const facts = sections.flatMap((section) => (section.kind === 'facts' ? section.facts : []))
  const factOf = (label: string) => facts.find((fact) => fact.label === label)?.value
  expect(factOf('Charged in the first year')).toBe(2500)
  expect(factOf('Discharged in the first year')).toBe(2200)
  expect(factOf('Lost, standby included')).toBe(430)
  expect(factOf('Output thrown away')).toBe(12)
  expect(factOf('Saved by the battery in the first year')).toBe(490)
  expect(factOf('Net present value without the battery')).toBe(7400)
  expect(factOf('Warranty of the battery')).toBe('ends after 7.5 years by its throughput')
  expect(factOf('Of what perfect foresight would save')).toBe(
    '96.2 % (energy costs 1146 without, 655 as controlled, 636 USD at best)',
  )
  const tables = sections.flatMap((section) => (section.kind === 'table' ? [section] : []))
  expect(tables.map(({ rows }) => rows)).toEqual([
    [
      ['Taken from the grid, kWh', 5400, 3000],
      ['Given to the grid, kWh', 5000, 2400],
      ['Own use of the output, %', 46, 74],
    ],
    [[1, 97, 2150, 235, 10, 'yes']],
    [['Jan', 9, 30, 90]],
  ])
  expect(tables.map(({ columns }) => columns.map(({ heading }) => heading))).toEqual([
    ['', 'Modules alone', 'With the battery'],
    ['Year', 'Capacity', 'Discharged', 'Full cycles', 'Lost by fade', 'Bought again'],
    ['Month', '9 of 10 starts', 'Half of them', '1 of 10'],
  ])
  expect(JSON.stringify(sections)).toContain('Not for equipment that keeps a person alive')
})

test('what is not known is said', () => {
  const sections = storageSections({
    ...VALUES,
    without: { ...VALUES.without, npv_usd: null },
    warranty_end: null,
    optimum: null,
    optimum_share_pct: null,
  })
  const text = JSON.stringify(sections)
  expect(text).toContain('not known: state storage.cost_usd_per_unit')
  expect(text).toContain('not used up within the study')
  expect(text).toContain('not defined for this tariff')
})

test('modules and units together', () => {
  const row = (modules: number, units: number, npv: number, years: number | null) => ({
    modules,
    units,
    net_cost_usd: 0,
    first_year_savings_usd: 0,
    npv_usd: npv,
    payback_years: years,
  })
  const sections = storageSizeSections({
    rows: [row(4, 0, 100, 9), row(4, 1, -50, null), row(8, 0, 200, 10), row(8, 1, 250, 12)],
    best: { modules: 8, units: 1 },
  })
  expect(sections.flatMap((section) => (section.kind === 'table' ? [section.rows] : []))).toEqual([
    [
      [4, 100, -50],
      [8, 200, 250],
    ],
    [
      [4, 9, 'none'],
      [8, 10, 12],
    ],
  ])
  expect(JSON.stringify(sections)).toContain('8 modules with 1 unit')
})
