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
  const d = { symbol: 'd', value: rate, unit: `1/year, ${terms.money}`, from: 'finance.discount_rate_pct' }
  const n = { symbol: 'n', value: terms.years, unit: 'years', from: 'finance.years' }
  const owed = {
    symbol: 'B_0',
    value: flow.rows[0]?.loanOwedUsd ?? 0,
    unit: 'USD',
    from: 'cash flow, owed on the loan at the end of year t',
  }
  const note = (
    id: string,
    says: string,
    formula: string,
    rest: Pick<Step, 'inputs' | 'result' | 'source'> & { limits?: string },
  ): void => {
    worksheet.note({ id: `payback.${id}`, says, formula, ...rest })
  }
  const operating = netPresentValue(flow.flows.operating, rate)
  const invested = netPresentValue(flow.flows.investment, rate)
  note('npv', 'Net savings in present worth', 'NPV = sum_{t=0..n} CF_t / (1 + d)^t', {
    inputs: [d, n, { symbol: 'CF_0', value: flow.net[0] ?? 0, unit: 'USD', from: 'cash flow, year 0' }],
    result: { symbol: 'NPV', value: worth.npvUsd, unit: 'USD' },
    source: CFR('436.20'),
  })
  note(
    'sir',
    'Savings-to-investment ratio',
    'SIR = PV(savings - operation) / PV(investment + replacements - residual)',
    {
      inputs: [
        { symbol: 'PV(savings - operation)', value: operating, unit: 'USD', from: 'cash flow' },
        { symbol: 'PV(investment + replacements - residual)', value: invested, unit: 'USD', from: 'cash flow' },
      ],
      result: { symbol: 'SIR', value: worth.savingsToInvestment ?? 'none: nothing is invested', unit: '' },
      source: CFR('436.18(c)'),
    },
  )
  note('airr', 'Adjusted internal rate of return', 'AIRR = (1 + d) * SIR^(1/n) - 1', {
    inputs: [d, n, { symbol: 'SIR', value: worth.savingsToInvestment ?? 'none', unit: '', from: 'payback.sir' }],
    result: {
      symbol: 'AIRR',
      value: worth.adjustedInternal ?? 'none: the ratio is not above zero',
      unit: '1/year',
    },
    source: CFR('436.22'),
  })
  note('simple', 'Simple payback for good, interpolated inside the year', 'years until sum of CF_t - B_t stays >= 0', {
    inputs: [n, owed],
    result: { symbol: 'SPB', value: worth.simple.lasting ?? NEVER, unit: 'years' },
    source: CFR('436.18(d)'),
    limits: 'A rough screen: it ignores what comes after, and the value of time',
  })
  const discountedFormula = 'years until sum of CF_t / (1 + d)^t - B_t / (1 + d)^t stays >= 0'
  note('discounted', 'Discounted payback for good, interpolated inside the year', discountedFormula, {
    inputs: [d, n, owed],
    result: { symbol: 'DPB', value: worth.discounted.lasting ?? NEVER, unit: 'years' },
    source: CFR('436.18(d), flows discounted as NIST reports do'),
  })
  const rates =
    worth.internal.kind === 'one' ? worth.internal.rate : worth.internal.kind === 'none' ? 'none' : 'several'
  note('irr', 'Internal rate of return', 'IRR = r with sum of CF_t / (1 + r)^t = 0', {
    inputs: [n],
    result: { symbol: 'IRR', value: rates, unit: '1/year' },
    source: { document: 'ASTM E1057', standing: 'secondary' },
    limits: 'Rates from -99 % to 1000 % are searched',
  })
  note('lcoe', 'Levelised cost of energy, real', 'LCOE = PV(costs) / sum_{t=1..n} Q_t / (1 + d_real)^t', {
    inputs: [
      n,
      { symbol: 'd_real', value: terms.realDiscount, unit: '1/year, real', from: 'finance.discount_rate_pct' },
    ],
    result: { symbol: 'LCOE', value: worth.levelisedCostUsdPerKwh ?? 'none: no output', unit: 'USD/kWh' },
    source: { document: 'Short, Packey & Holt 1995, NREL/TP-462-5173', standing: 'from memory' },
    limits: 'A cost, not a saving on the bill: do not compare it with an average price that includes fixed charges',
  })
}
