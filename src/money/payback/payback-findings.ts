import type { Incentive } from '../../project/index.js'
import { DEFAULT_RATES, HIGH_ESCALATION_PCT, PLAUSIBLE_USD_PER_W } from '../../tables/money/index.js'
import type { Source, Worksheet } from '../../worksheet/index.js'
import { thirdPartyOf, type CashFlow, type CashFlowInput } from '../cash-flow/index.js'
import type { Worth } from './worth.js'
import type { Dollars } from '../../values/index.js'

const FEDERAL_CREDIT_ENDED: Source = {
  document: 'Public Law 119-21 (26 USC 25D)',
  edition: '2025-07-04',
  place: 'IRS FS-2025-05: no credit for installations completed after 31 December 2025',
  standing: 'read',
}

/** Says that no incentive is assumed, and that those of the file are unchecked. */
export function tellIncentives(
  worksheet: Worksheet,
  incentives: Readonly<Record<string, Incentive>>,
  flow: CashFlow,
  grossCostUsd: Dollars,
): void {
  worksheet.find({
    severity: 'note',
    id: 'incentive.none-assumed',
    message:
      'no federal, state or utility incentive is assumed; the federal residential credit ended for installations completed after 2025-12-31',
    where: 'incentives',
    source: FEDERAL_CREDIT_ENDED,
  })
  for (const [id, incentive] of Object.entries(incentives)) {
    worksheet.find({
      severity: 'note',
      id: 'incentive.unchecked',
      message: `${incentive.name}: entered by the user, not checked (${incentive.source}, ${incentive.checked})`,
      where: `incentives.${id}`,
    })
  }
  const lumps = flow.incentives.lumps.reduce((a, b) => a + b, 0)
  if (lumps > grossCostUsd && grossCostUsd > 0) {
    worksheet.find({
      severity: 'warning',
      id: 'incentive.above-cost',
      message: `${lumps.toFixed(0)} USD of incentives are more than the price of ${grossCostUsd.toFixed(0)} USD`,
      where: 'incentives',
      fix: 'Check amounts and percentages; most programs pay no more than the cost, which cap_usd states.',
    })
  }
  if (flow.incentives.unusedCreditUsd > 0) {
    worksheet.find({
      severity: 'warning',
      id: 'incentive.credit-unused',
      message: `${flow.incentives.unusedCreditUsd.toFixed(2)} USD of tax credit find no tax to reduce within the study`,
      where: 'incentives',
    })
  }
}

/** Says when the answer is no, or not a single one, and when the cost looks wrong. */
export function tellWorth(worksheet: Worksheet, input: CashFlowInput, worth: Worth): void {
  if (thirdPartyOf(input.finance) === undefined) tellPurchase(worksheet, input, worth)
  tellEscalation(worksheet, input)
}

function tellPurchase(worksheet: Worksheet, input: CashFlowInput, worth: Worth): void {
  const { simple, internal } = worth
  if (simple.wholeYear === undefined) {
    worksheet.find({
      severity: 'warning',
      id: 'payback.never',
      message: `the system never pays back within ${String(input.terms.years)} years`,
      where: 'finance',
    })
  }
  if (simple.dipsAgainYear !== undefined) {
    const lasting =
      simple.lasting === undefined
        ? 'and stays so at the end'
        : `and it is paid back for good in year ${simple.lasting.toFixed(1)}`
    worksheet.find({
      severity: 'warning',
      id: 'payback.dips-again',
      message: `a later cost turns the running sum negative again in year ${String(simple.dipsAgainYear)}, ${lasting}`,
      where: 'finance.replacements',
    })
  }
  if (internal.kind !== 'one') {
    const why = internal.kind === 'none' ? internal.why : `there are ${String(internal.rates.length)}`
    worksheet.find({
      severity: 'note',
      id: 'payback.no-single-irr',
      message: `there is no single internal rate of return: ${why}`,
      where: 'finance',
      fix: 'Use the net present value or the adjusted internal rate of return.',
    })
  }
  const perWatt = input.grossCostUsd / input.dcRatingW
  if (perWatt < PLAUSIBLE_USD_PER_W.low || perWatt > PLAUSIBLE_USD_PER_W.high) {
    worksheet.find({
      severity: 'warning',
      id: 'payback.cost-implausible',
      message: `the installed cost is ${perWatt.toFixed(2)} USD/W, outside the usual ${String(PLAUSIBLE_USD_PER_W.low)} to ${String(PLAUSIBLE_USD_PER_W.high)} USD/W`,
      where: 'finance.installed_cost_usd',
      source: {
        document:
          'Published US residential prices 2018 to 2023 (NREL/TP-7A40-87303; LBNL distributed PV price reports)',
        standing: 'secondary',
      },
      fix: 'Check the cost; market medians lie well above bottom-up benchmarks.',
    })
  }
}

function tellEscalation(worksheet: Worksheet, input: CashFlowInput): void {
  const { escalation, years } = input.terms
  if (escalation !== undefined && escalation * 100 > HIGH_ESCALATION_PCT + 1e-9) {
    const percent = Number((escalation * 100).toFixed(2))
    worksheet.find({
      severity: 'warning',
      id: 'payback.escalation-high',
      message: `electricity is taken to rise ${String(percent)} % a year above inflation, to ${((1 + escalation) ** years).toFixed(1)} times its price in ${String(years)} years; savings and payback rest on it`,
      where: 'finance.electricity_escalation_pct',
      source: DEFAULT_RATES.realEscalationPct.source,
      fix: 'State the rise ABOVE inflation: published central values run from -0.5 to +0.1 % a year.',
    })
  }
}
