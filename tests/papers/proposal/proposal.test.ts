import { beforeAll, describe, expect, test } from 'vitest'
import { monthRanges } from '../../../src/fieldwork/index.js'
import { runHouse } from '../../../src/house/index.js'
import { PAGE_SIZES, type PreparedProposal } from '../../../src/papers/index.js'
import { allOf, readStructure } from '../../drawings/read-structure.js'
import { loadSample, prepare } from './offers.js'
import { readOffer, type ReadOffer } from './read-offer.js'

const CASES = [
  ['demo house, letter, English', 'lark-hollow', 'en', 'letter'],
  ['demo house, A4, Spanish', 'lark-hollow', 'es', 'a4'],
  ['Harbor Point with all that is stated, letter, English', 'harbor-point', 'en', 'letter'],
  ['Harbor Point, A4, Spanish', 'harbor-point', 'es', 'a4'],
  ['a house with a loan, letter, Spanish', 'fleet/hartford-loan', 'es', 'letter'],
] as const

describe.each(CASES)('the offer of the %s', (_, house, language, size) => {
  let offer: PreparedProposal
  let bytes: Uint8Array
  let read: ReadOffer
  beforeAll(async () => {
    offer = await prepare(loadSample(house), { language, size })
    bytes = await offer.pdf()
    read = await readOffer(bytes)
  })

  test('has three to five pages inside their margins, and no letters below 10 pt', () => {
    const { widthPt, heightPt } = PAGE_SIZES[size]
    expect(read.pages).toBeGreaterThanOrEqual(3)
    expect(read.pages).toBeLessThanOrEqual(5)
    expect(read.size[0]).toBeCloseTo(widthPt, 1)
    for (const { text, sizePt, left, right, base } of read.texts) {
      // Source: rules of Nevada and Utah ask for 10 pt and 12 pt at the least (read).
      expect([text, sizePt >= 9.999]).toEqual([text, true])
      expect([text, left > 51 && right < widthPt - 51 && base > 24 && base < heightPt - 40]).toEqual([text, true])
    }
    expect(read.words).not.toMatch(/NaN|undefined|Infinity|null|\{\w+\}/u)
  })

  test('has no sheet of which a tenth is left over for what could stand before', () => {
    const counts = Array.from(
      { length: read.pages },
      (__, index) => read.texts.filter(({ page }) => page === index + 1).length,
    )
    expect(Math.min(...counts)).toBeGreaterThan(6)
  })

  test('is tagged, each figure with words, the same bytes each time', async () => {
    const { root, pages, strays } = await readStructure(bytes)
    const all = allOf(root)
    expect(strays).toEqual([])
    expect(pages.flatMap(({ loose }) => loose)).toEqual([])
    expect(all.filter(({ kind }) => kind === 'H1').length).toBe(1)
    const figures = all.filter(({ kind }) => kind === 'Figure')
    expect(figures.length).toBeGreaterThanOrEqual(3)
    for (const { alt } of figures) expect(alt?.length).toBeGreaterThan(30)
    expect(await offer.pdf()).toEqual(bytes)
  })

  test('never tells more energy, savings and worth, nor less cost and time, than the stages', async () => {
    const loaded = loadSample(house)
    const stages = runHouse(loaded, { wishes: { payTheBom: true } })
    const [{ values: payback }, run] = [await stages.payback(), await stages.estimate()]
    const { annual, exceedance, monthly } = run.result.values
    const { values } = offer.result
    const { first_year: year } = values.energy
    expect(year.p50_kwh).toBeLessThanOrEqual(Math.min(exceedance.first_year.p50_kwh, annual.ac_kwh))
    expect(year.p90_kwh).toBeLessThanOrEqual(exceedance.first_year.p90_kwh)
    expect(year.p90_kwh).toBeLessThan(year.p50_kwh)
    expect(year.p50_kwh).toBeLessThan(year.p10_kwh)
    for (const [index, month] of values.energy.monthly.entries()) {
      expect(month.p50_kwh).toBeLessThanOrEqual(monthly[index]?.ac_kwh ?? 0)
      expect(month.p90_kwh).toBeLessThan(month.p50_kwh)
      expect(month.p50_kwh).toBeLessThan(month.p10_kwh)
    }
    const { bills } = payback
    expect(values.bills.saved_usd).toBeLessThanOrEqual(bills.annual_savings_usd)
    expect(values.bills.without_usd).toBeLessThanOrEqual(bills.without.total_usd)
    expect(values.bills.with_usd).toBeGreaterThanOrEqual(bills.with.total_usd)
    expect(values.cost.net_usd).toBeGreaterThanOrEqual(payback.net_cost_usd)
    expect(values.cost.gross_usd).toBe(payback.gross_cost_usd)
    expect(values.payback.npv_usd).toBeLessThanOrEqual(payback.npv_usd)
    expect(values.payback.years ?? Infinity).toBeGreaterThanOrEqual(payback.simple_payback.lasting_years ?? Infinity)
    for (const { year: at, p90_usd, p50_usd, p10_usd } of values.cash) {
      expect(p50_usd).toBeLessThanOrEqual(payback.cash_flow[at]?.cumulative_usd ?? 0)
      expect(p90_usd).toBeLessThanOrEqual(p50_usd)
      expect(p10_usd).toBeGreaterThanOrEqual(p50_usd)
    }
    // Every figure of energy that stands in the paper is one of these.
    expect(read.words).not.toContain(Math.ceil(annual.ac_kwh).toLocaleString('en-US'))
  })

  test('tells the price before incentives first, and an unchanged price of electricity before any other', () => {
    const { cost, savings } = offer.result.values
    const gross = read.words.indexOf(cost.gross_usd.toLocaleString('en-US'))
    const net = read.words.indexOf(cost.net_usd.toLocaleString('en-US'))
    expect(gross).toBeGreaterThan(0)
    if (cost.incentives.length > 0) expect(net).toBeGreaterThan(gross)
    expect(savings.lines[0]?.kind).toBe('unchanged')
    expect(savings.lines[0]?.rise_pct).toBe(0)
    const saved = savings.lines.map(({ saved_usd }) => saved_usd)
    expect(saved).toEqual(saved.toSorted((a, b) => a - b))
    const first = (savings.lines[0]?.saved_usd ?? 0).toLocaleString('en-US')
    const other = (savings.lines.at(-1)?.saved_usd ?? 0).toLocaleString('en-US')
    expect(read.words.indexOf(first)).toBeGreaterThan(0)
    expect(read.words.indexOf(first)).toBeLessThan(read.words.lastIndexOf(other))
  })
})

/** Warnings that must stand on the page of their figures. Source: list of the required warnings (own words). */
test('warnings stand on the page of what they warn about', async () => {
  const read = await readOffer(await (await prepare(loadSample('fleet/hartford-loan'))).pdf())
  const together = (...words: readonly string[]): boolean =>
    Array.from({ length: read.pages }, (_, index) => read.wordsOf(index + 1)).some((page) =>
      words.every((each) => page.includes(each)),
    )
  expect(together('Energy month by month', 'Production is an estimate', 'does not work in an outage')).toBe(true)
  expect(
    together(
      'Your electric bill, before and after',
      'can change or end the credit',
      'payment of the loan are both due',
    ),
  ).toBe(true)
  expect(together('Incentives that are counted', 'no federal residential credit')).toBe(true)
  expect(together('With the loan', 'Cash price', 'Total of payments', 'the payment can rise')).toBe(true)
  expect(together('What happens next', 'permission to operate')).toBe(true)
})

test('the price of the loan stands beside the cash price, by the formula of level payments', async () => {
  const { result } = await prepare(loadSample('fleet/hartford-loan'))
  const { loan } = result.values
  // Source: capital recovery, P r / (1 - (1 + r)^-n) with r = 6.5 % / 12 and n = 180, worked out by hand: 104.533 USD.
  const rate = 0.065 / 12
  const payment = (12000 * rate) / (1 - (1 + rate) ** -180)
  expect(payment).toBeCloseTo(104.533, 2)
  expect(loan?.payment_usd_per_month).toBe(104.54)
  expect(loan?.total_of_payments_usd).toBe(Math.ceil(payment * 180))
  expect(loan?.financed_price_usd).toBe(5800 + Math.ceil(payment * 180))
  expect(loan?.cash_price_usd).toBe(17800)
})

test('a fee of the loan is paid at purchase where the loan does not cover it, and the whole loan never costs less than its payments', async () => {
  const set = ['finance.loan.dealer_fee_usd=500']
  const { loan } = (await prepare(loadSample('fleet/hartford-loan', '', set))).result.values
  // 17,800 USD and 500 USD less 12,000 USD, and 180 payments of 104.533 USD.
  expect(loan).toMatchObject({ fee_usd: 500, down_usd: 6300, financed_price_usd: 6300 + 18816, term_years: 15 })
  const whole = ['finance.loan.principal_usd=18300', ...set]
  expect((await prepare(loadSample('fleet/hartford-loan', '', whole))).result.values.loan?.down_usd).toBe(0)
})

test('months add up to the year at most, and their range is that of the review of production', async () => {
  const loaded = loadSample('lark-hollow')
  const run = await runHouse(loaded).estimate()
  const { monthly, first_year: year } = (await prepare(loaded)).result.values.energy
  const sum = monthly.reduce((all, { p50_kwh: kwh }) => all + kwh, 0)
  expect(sum).toBeLessThanOrEqual(
    Math.min(run.result.values.annual.ac_kwh, run.result.values.exceedance.first_year.p50_kwh),
  )
  expect(sum).toBeGreaterThan(year.p50_kwh - 12)
  for (const [at, { p10_kwh: low, p90_kwh: high }] of monthRanges(run).entries()) {
    expect(monthly[at]?.p90_kwh).toBe(Math.floor(low))
    expect(monthly[at]?.p10_kwh).toBe(Math.floor(high))
  }
})

test('stations and what is not stated are told in the language of the offer', async () => {
  const words = async (language: 'en' | 'es', set: readonly string[] = []) =>
    (await readOffer(await (await prepare(loadSample('lark-hollow', '', set), { language })).pdf())).words
  expect(await words('en')).toMatch(/weighted mean of stations nearby, .+ \(\d+ km\) and \d+ more/u)
  const spanish = await words('es')
  expect(spanish).toMatch(/media ponderada de estaciones cercanas, .+ y \d+ más/u)
  expect(spanish).not.toMatch(/nearby| more\b|2026-03-02/u)
  expect(spanish).toContain('seguro adicional (no se indica, se cuenta como 0 USD)')
})

test('at no discount the band of the last year is the spread of the present value', async () => {
  const loaded = loadSample('lark-hollow', '', ['finance.discount_rate_pct=0'])
  const { values } = await prepare(loaded).then(({ result }) => result)
  const { uncertainty } = (await runHouse(loaded).payback()).values
  const last = values.cash.at(-1)
  expect(last?.p90_usd).toBe(Math.floor(uncertainty.npv_usd.p90 ?? 0))
  expect(last?.p10_usd).toBe(Math.floor(uncertainty.npv_usd.p10 ?? 0))
})

test('an option beside the offer is rounded as the offer is', async () => {
  const option = {
    name: 'Smaller (invented)',
    cost_usd: 9000.2,
    first_year_kwh: 5001.9,
    saved_first_year_usd: 700.9,
    payback_years: 12.01,
    npv_usd: 55.9,
  }
  const offer = await prepare(loadSample('lark-hollow'), { options: [option] })
  const { options, energy } = offer.result.values
  const [own, other] = options
  expect(own?.name).toBe('This proposal')
  expect(own?.first_year_kwh).toBe(energy.first_year.p50_kwh)
  expect(other).toEqual({
    name: 'Smaller (invented)',
    cost_usd: 9001,
    first_year_kwh: 5000,
    saved_first_year_usd: 700,
    payback_years: 12.1,
    npv_usd: 55,
  })
  expect((await readOffer(await offer.pdf())).words).toContain('Options side by side')
})

test('lines and groups of the bill of materials add up to the price', async () => {
  for (const detail of ['groups', 'lines'] as const) {
    const offer = await prepare(loadSample('lark-hollow'), { detail })
    const { cost } = offer.result.values
    const sum = cost.lines.reduce((all, { usd }) => all + usd, 0) + (cost.rest_usd ?? 0)
    expect(sum).toBeCloseTo(21900, 2)
    expect(cost.lines.length).toBeGreaterThan(detail === 'lines' ? 30 : 5)
    const { words } = await readOffer(await offer.pdf())
    for (const { name } of cost.lines.slice(0, 5)) expect(words).toContain(name.split(' ').slice(0, 3).join(' '))
  }
})

test('savings of a house with a loan are less by interest and fee, worked out by hand', async () => {
  const set = ['finance.loan.dealer_fee_usd=500']
  const { lines } = (await prepare(loadSample('fleet/hartford-loan', '', set))).result.values.savings
  const { values } = await runHouse(loadSample('fleet/hartford-loan', '', set)).payback()
  // Nominal money: level payments of 104.533 USD over 180 months less the 12,000 USD, and the fee.
  const interest = 12 * 15 * ((12000 * (0.065 / 12)) / (1 - (1 + 0.065 / 12) ** -180)) - 12000
  const saved = values.cash_flow.slice(1).reduce((sum, row) => sum + row.bill_savings_usd - row.replacement_usd, 0)
  const line = lines.find(({ kind }) => kind === 'assumed')
  expect(Math.abs((line?.saved_usd ?? 0) - (saved - interest - 500))).toBeLessThan(1.2)
})
