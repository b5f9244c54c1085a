import { describe, expect, test } from 'vitest'
import { run as runParts } from '../../src/cli/commands/compare-parts.js'
import { run as runPayback } from '../../src/cli/commands/payback.js'
import { makeContext } from '../../src/cli/context.js'
import { renderText } from '../../src/cli/output/text.js'
import { runHouse } from '../../src/house/index.js'
import type { PaybackValues } from '../../src/money/index.js'
import { prepareProposal } from '../../src/papers/index.js'
import { speakerOf } from '../../src/papers/words/index.js'
import { loadProject } from '../../src/project/index.js'
import {
  csvTable,
  renderCsv,
  renderJson,
  reportInCurrency,
  textInCurrency,
  type Report,
} from '../../src/report/index.js'
import { StageError } from '../../src/worksheet/index.js'

const EXAMPLES = new URL('../../examples/', import.meta.url).pathname
const LARK = `${EXAMPLES}lark-hollow.yaml`
/** A lease in the place of price and incentives. */
const LEASE = [
  'finance.installed_cost_usd=null',
  'incentives=null',
  'finance.lease.usd_per_month=95',
  'finance.lease.rise_pct_per_year=2.9',
  'finance.lease.term_years=25',
]

async function payback(set: readonly string[], versus: string[] = []): Promise<Report> {
  const context = makeContext([LARK], 'gablewatt 9.9.9', { color: false, set: [...set] })
  const outcome = await runPayback(context, { set: [...set], versus })
  if (!('report' in outcome)) throw new Error('a report was expected')
  return outcome.report
}
const textOf = (report: Report, width = 80): Promise<string> =>
  renderText(
    report,
    { tool: 'gablewatt 9.9.9', project: undefined, locate: () => undefined, showWork: true },
    { width, paint: (_, text) => text, lines: false },
  )

describe('a lease in the terminal', async () => {
  const report = await payback(LEASE)
  const values = report.result.values as PaybackValues
  const text = await textOf(report)

  test('tells what is defined, and no payback', () => {
    expect(text).toContain('The system belongs to                     a lessor')
    expect(text).toContain('First year that costs more than it saves')
    expect(text).toContain('Payback: not defined, as nothing is invested')
    expect(text).not.toContain('Simple payback')
    expect(text).toContain('Year by year (USD of the purchase year)')
    expect(values.simple_payback.lasting_years).toBe(null)
  })

  test('stands in the cash flow, which adds up', () => {
    const table = csvTable(report)
    const at = (key: string): number => table?.columns.findIndex((column) => column.key === key) ?? -1
    expect(at('contract_usd')).toBeGreaterThan(0)
    for (const row of table?.rows ?? []) {
      const [saved, paid, upkeep, net] = [
        'bill_savings_usd',
        'contract_usd',
        'maintenance_and_insurance_usd',
        'net_usd',
      ].map((key) => Number(row[at(key)]))
      expect(saved! + paid! + upkeep!).toBeCloseTo(net!, 1)
    }
  })

  test('stands beside a purchase with --versus', async () => {
    const beside = await payback([], [LEASE.join(';')])
    const shown = await textOf(beside, 160)
    expect(shown).toContain('Contract: first year that costs more')
    const [other] = (
      beside.result.values as { versus: { contract?: { kind: string }; first_year_savings_usd: number }[] }
    ).versus
    expect(other?.contract?.kind).toBe('lease')
    expect(other?.first_year_savings_usd).toBe(values.contract?.first_year_saving_usd)
  })

  test('is no written offer, with the reason', async () => {
    const loaded = loadProject({ path: LARK, overrides: LEASE })
    await expect(prepareProposal(loaded, runHouse(loaded), { language: 'en', options: [] })).rejects.toThrow(StageError)
    await expect(prepareProposal(loaded, runHouse(loaded), { language: 'en', options: [] })).rejects.toThrow(
      /tells a purchase/u,
    )
  })
})

describe('years that differ in the terminal', () => {
  test('are told with their prices, and fit 80 columns', async () => {
    const text = await textOf(await payback(['usage.growth_pct_per_year=1', 'finance.base_year=2026']))
    expect(text).toContain('What changes from year to year (prices in money of each year)')
    expect(text).toContain('25 (2051)')
  })

  test('leave a project without the new keys as it was: no table, no values', async () => {
    const report = await payback([])
    const values = report.result.values as PaybackValues
    expect([values.years_ahead, values.contract]).toEqual([undefined, undefined])
    expect(Object.keys(values.cash_flow[1] ?? {})).not.toContain('one_off_usd')
    expect(csvTable(report)?.columns.map(({ key }) => key)).not.toContain('contract_usd')
  })
})

describe('another currency', async () => {
  const plain = await payback(LEASE)
  const euro = reportInCurrency(plain, 'EUR')

  test('stands wherever money is printed, and nothing is converted', async () => {
    const [before, after] = [await textOf(plain, 100), await textOf(euro, 100)]
    expect(after).not.toMatch(/\bUSD\b|\bdollars\b/u)
    expect(after).toMatch(/\bEUR\b/u)
    expect(after.match(/\d[\d,.]*/gu)).toEqual(before.match(/\d[\d,.]*/gu))
  })

  test('stands in the headings of CSV, and keys of JSON keep their names', () => {
    const csv = renderCsv(csvTable(euro)!)
    expect(csv.split('\r\n')[0]).toContain('bill_savings_eur')
    expect(csv.split('\r\n')[0]).not.toContain('usd')
    expect(csv.split('\r\n').slice(1)).toEqual(renderCsv(csvTable(plain)!).split('\r\n').slice(1))
    const json = JSON.parse(
      renderJson(euro, { tool: 't', project: undefined, locate: () => undefined, showWork: false }),
    ) as {
      values: { currency?: string; npv_usd: number }
      worksheet: { result: { unit: string } }[]
      findings: { message: string }[]
    }
    expect(json.values.currency).toBe('EUR')
    expect(json.values.npv_usd).toBe((plain.result.values as PaybackValues).npv_usd)
    expect(json.worksheet.filter(({ result }) => /\bUSD\b/u.test(result.unit))).toEqual([])
    expect(json.findings.filter(({ message }) => /\bUSD\b/u.test(message))).toEqual([])
  })

  test('changes nothing where the project states none, or dollars', () => {
    expect(reportInCurrency(plain, undefined)).toBe(plain)
    expect(textInCurrency('12 USD', undefined)).toBe('12 USD')
    expect(textInCurrency('12 USD of USDA', 'EUR')).toBe('12 EUR of USDA')
  })

  test('stands in papers of both languages', () => {
    for (const language of ['en', 'es'] as const) {
      const say = speakerOf(language, 'EUR')
      expect(say.usd(1234)).toMatch(/EUR$/u)
      expect(say.text('savings_saved')).toContain('(EUR)')
      expect(say.text('savings_nominal')).not.toMatch(/dollars|dólares/u)
    }
    expect(speakerOf('en').text('savings_nominal')).toBe('In the dollars of each year.')
  })
})

describe('compare-parts in the terminal', async () => {
  const context = makeContext([LARK], 'gablewatt 9.9.9', { color: false, set: [] })
  const outcome = await runParts(context, { modules: ['m410'], prices: `${EXAMPLES}prices.yaml`, by: 'npv' })
  const report = 'report' in outcome ? outcome.report : undefined

  test('marks what the project has, and fits 80 columns', async () => {
    const text = await textOf(report!)
    expect(text).toMatch(/1 {2}m410\* +own +20/u)
    const table = text.slice(text.indexOf('What holds'), text.indexOf('The price is'))
    expect(Math.max(...table.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80)
  })

  test('writes a table for a script', () => {
    const [head, row] = renderCsv(csvTable(report!)!).split('\r\n')
    expect(head).toBe(
      'place,module,inverter,storage,storage_units,modules,power_w,price_usd,output_kwh,saved_in_year_1_usd,payback_years,npv_usd,warnings',
    )
    expect(row).toMatch(/^1,m410,,,,20,8200,/u)
  })

  test('wants a price list', async () => {
    const bare = makeContext([`${EXAMPLES}fleet/springfield-whole-job.yaml`], 'gablewatt 9.9.9', {
      color: false,
      set: [],
    })
    await expect(runParts(bare, { by: 'npv' })).rejects.toThrow(/no price list/u)
  })
})
