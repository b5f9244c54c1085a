import { put } from './given.js'
import type { StartingHouse } from './starting-house.js'

/** Bill, rates and prices. */
export function moneyLines({ bill }: StartingHouse): string[] {
  return [
    ...(bill === undefined
      ? [
          'usage:',
          '  monthly_kwh: !made_up [900, 800, 750, 700, 720, 900, 1100, 1080, 850, 720, 760, 880]  # twelve bills, January first',
        ]
      : ['usage:', `  annual_kwh: ${put(bill.yearKwh)}`]),
    ...tariffLines(bill),
    'finance:  # from quotes',
    '  installed_cost_usd: !made_up 15000',
    '  cost_fixed_usd: !made_up 6000  # permit, panel work, coming at all',
    '  cost_usd_per_module: !made_up 750',
    '  maintenance_usd_per_year: !made_up 0',
    '  replacements: !made_up []  # such as { name: inverter, year: 13, usd: 1500 }',
  ]
}

/** Rates of a bill: one price all year where the bill was answered, seasons where all of it is made up. */
export function tariffLines(bill: StartingHouse['bill']): string[] {
  const head = ['tariff:  # copy it from the rate sheet of the power company']
  const solar = [
    '  rounding: line',
    '  solar: !made_up { net_metering: { settle: monthly, surplus_usd_per_kwh: 0.03 } }  # what is paid for kWh that go back',
  ]
  if (bill !== undefined)
    return [
      ...head,
      '  name: Flat rate',
      `  fixed: { customer: { usd_per_month: ${put(bill.fixedUsd)} } }`,
      `  energy: { all_year: { usd_per_kwh: ${put(bill.usdPerKwh)} } }`,
      ...solar,
    ]
  return [
    ...head,
    '  name: !made_up Residential rate (invented)',
    "  checked: !made_up '2026-01-01'  # day on which you read the rate sheet",
    '  seasons: !made_up',
    "    summer: { from: '06-01', to: '09-30' }",
    "    winter: { from: '10-01', to: '05-31' }",
    '  fixed: { customer: { usd_per_month: !made_up 12 } }',
    '  energy:',
    '    summer: { usd_per_kwh: !made_up 0.17 }',
    '    winter: { usd_per_kwh: !made_up 0.14 }',
    ...solar,
  ]
}
