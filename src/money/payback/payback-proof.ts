import type { Source, Step, Worksheet } from '../../worksheet/index.js'
import type { CashFlow, FinanceTerms } from '../cash-flow/index.js'
import { netPresentValue } from '../life-cycle/index.js'
import { reportedDiscount } from '../cash-flow/index.js'
import type { Worth } from './worth.js'

const CFR = (place: string): Source => ({ document: '10 CFR 436', place, standing: 'read' })
const NEVER = 'not within the study'

/** Records the measures of a cash flow on the worksheet. */
export function recordWorth(worksheet: Worksheet, flow: CashFlow, terms: FinanceTerms, worth: Worth): void {
  const rate = reportedDiscount(terms)
  const common: Common = {
    d: { symbol: 'd', value: rate, unit: `1/year, ${terms.money}`, from: 'finance.discount_rate_pct' },
    n: { symbol: 'n', value: terms.years, unit: 'years', from: 'finance.years' },
  }
  const notes = flow.contract === undefined ? ofPurchase(flow, terms, worth, common) : [netWorth(flow, worth, common)]
  for (const { id, ...note } of notes) worksheet.note({ id: `payback.${id}`, ...note })
}

function ofPurchase(flow: CashFlow, terms: FinanceTerms, worth: Worth, common: Common): Step[] {
  const rate = reportedDiscount(terms)
  return [
    netWorth(flow, worth, common),
    savingsToInvestment(flow, rate, worth),
    adjustedReturn(worth, common),
    ...paybackYears(flow, worth, common),
    internalReturn(worth, common),
    levelisedCost(terms, worth, common),
  ]
}

/** Rate and years, which most measures take. */
type Common = Readonly<Record<'d' | 'n', Step['inputs'][number]>>

function netWorth(flow: CashFlow, worth: Worth, { d, n }: Common): Step {
  return {
    id: 'npv',
    says: 'Net savings in present worth',
    formula: 'NPV = sum_{t=0..n} CF_t / (1 + d)^t',
    inputs: [d, n, { symbol: 'CF_0', value: flow.net[0] ?? 0, unit: 'USD', from: 'cash flow, year 0' }],
    result: { symbol: 'NPV', value: worth.npvUsd, unit: 'USD' },
    source: CFR('436.20'),
  }
}

function savingsToInvestment({ flows }: CashFlow, rate: number, worth: Worth): Step {
  const presentWorth = (symbol: string, flow: readonly number[]): Step['inputs'][number] => ({
    symbol,
    value: netPresentValue(flow, rate),
    unit: 'USD',
    from: 'cash flow',
  })
  return {
    id: 'sir',
    says: 'Savings-to-investment ratio',
    formula: 'SIR = PV(savings - operation) / PV(investment + replacements - residual)',
    inputs: [
      presentWorth('PV(savings - operation)', flows.operating),
      presentWorth('PV(investment + replacements - residual)', flows.investment),
    ],
    result: { symbol: 'SIR', value: worth.savingsToInvestment ?? 'none: nothing is invested', unit: '' },
    source: CFR('436.18(c)'),
  }
}

function adjustedReturn(worth: Worth, { d, n }: Common): Step {
  return {
    id: 'airr',
    says: 'Adjusted internal rate of return',
    formula: 'AIRR = (1 + d) * SIR^(1/n) - 1',
    inputs: [d, n, { symbol: 'SIR', value: worth.savingsToInvestment ?? 'none', unit: '', from: 'payback.sir' }],
    result: {
      symbol: 'AIRR',
      value: worth.adjustedInternal ?? 'none: the ratio is not above zero',
      unit: '1/year',
    },
    source: CFR('436.22'),
  }
}

function paybackYears(flow: CashFlow, worth: Worth, { d, n }: Common): Step[] {
  const owed = {
    symbol: 'B_0',
    value: flow.rows[0]?.loanOwedUsd ?? 0,
    unit: 'USD',
    from: 'cash flow, owed on the loan at the end of year t',
  }
  return [
    {
      id: 'simple',
      says: 'Simple payback for good, interpolated inside the year',
      formula: 'years until sum of CF_t - B_t stays >= 0',
      inputs: [n, owed],
      result: { symbol: 'SPB', value: worth.simple.lasting ?? NEVER, unit: 'years' },
      source: CFR('436.18(d)'),
      limits: 'A rough screen: it ignores what comes after, and the value of time',
    },
    {
      id: 'discounted',
      says: 'Discounted payback for good, interpolated inside the year',
      formula: 'years until sum of CF_t / (1 + d)^t - B_t / (1 + d)^t stays >= 0',
      inputs: [d, n, owed],
      result: { symbol: 'DPB', value: worth.discounted.lasting ?? NEVER, unit: 'years' },
      source: CFR('436.18(d), flows discounted as NIST reports do'),
    },
  ]
}

function internalReturn({ internal }: Worth, { n }: Common): Step {
  const rates = internal.kind === 'one' ? internal.rate : internal.kind === 'none' ? 'none' : 'several'
  return {
    id: 'irr',
    says: 'Internal rate of return',
    formula: 'IRR = r with sum of CF_t / (1 + r)^t = 0',
    inputs: [n],
    result: { symbol: 'IRR', value: rates, unit: '1/year' },
    source: { document: 'ASTM E1057', standing: 'secondary' },
    limits: 'Rates from -99 % to 1000 % are searched',
  }
}

function levelisedCost(terms: FinanceTerms, worth: Worth, { n }: Common): Step {
  return {
    id: 'lcoe',
    says: 'Levelised cost of energy, real',
    formula: 'LCOE = PV(costs) / sum_{t=1..n} Q_t / (1 + d_real)^t',
    inputs: [
      n,
      { symbol: 'd_real', value: terms.realDiscount, unit: '1/year, real', from: 'finance.discount_rate_pct' },
    ],
    result: { symbol: 'LCOE', value: worth.levelisedCostUsdPerKwh ?? 'none: no output', unit: 'USD/kWh' },
    source: { document: 'Short, Packey & Holt 1995, NREL/TP-462-5173', standing: 'from memory' },
    limits: 'A cost, not a saving on the bill: do not compare it with an average price that includes fixed charges',
  }
}
