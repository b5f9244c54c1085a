import { monthRanges } from '../../fieldwork/index.js'
import type { PaybackValues } from '../../money/index.js'
import type { YieldRun } from '../../yield/index.js'
import { CAUTIOUS } from './cautious.js'
import type { BillsValues, EnergyValues, RangeValues } from './proposal-values.js'

/** Years whose energy is told. */
const TOLD_YEARS = [1, 5, 10, 15, 20, 25]

export function energyValues(run: YieldRun, payback: PaybackValues): EnergyValues {
  const { annual, exceedance, monthly, lifetime, climate } = run.result.values
  const { first_year: year } = exceedance
  // No single figure is above the middle one, whichever way it was worked out.
  const middle = Math.min(year.p50_kwh, annual.ac_kwh)
  const spread = monthRanges(run)
  const { bills, cash_flow: cash } = payback
  const own = bills.with.generation_kwh - bills.with.export_kwh
  const use = bills.without.usage_kwh
  return {
    first_year: range(year.p90_kwh, middle, year.p10_kwh, CAUTIOUS.yearKwh),
    monthly: monthly.map(({ month, ac_kwh }, index) => {
      const { p10_kwh: low = ac_kwh, p90_kwh: high = ac_kwh } = spread[index] ?? {}
      const part = annual.ac_kwh === 0 ? 1 : middle / annual.ac_kwh
      return { month, ...range(low, ac_kwh * part, high, CAUTIOUS.monthKwh) }
    }),
    degradation_pct_per_year: lifetime.degradation_pct_per_year,
    years: cash
      .filter((row) => TOLD_YEARS.includes(row.year))
      .map(({ year: at, output_kwh }) => ({ year: at, kwh: CAUTIOUS.yearKwh(scaled(output_kwh, middle, payback)) })),
    use_kwh: CAUTIOUS.costKwh(use),
    offset_pct: use === 0 ? 0 : CAUTIOUS.sharePct((100 * middle) / use),
    own_use_kwh: CAUTIOUS.yearKwh(own),
    export_kwh: CAUTIOUS.yearKwh(bills.with.export_kwh),
    import_kwh: CAUTIOUS.costKwh(bills.with.import_kwh),
    weather: climate.name,
  }
}

/** Later years stand to the middle figure as they stand to the mean one. */
function scaled(kwh: number, middle: number, { first_year_kwh }: PaybackValues): number {
  return first_year_kwh === 0 ? 0 : (kwh * Math.min(middle, first_year_kwh)) / first_year_kwh
}

function range(low: number, middle: number, high: number, round: (kwh: number) => number): RangeValues {
  return { p90_kwh: round(Math.min(low, middle)), p50_kwh: round(middle), p10_kwh: round(Math.max(high, middle)) }
}

export function billsValues({ bills }: PaybackValues): BillsValues {
  const after = new Map(bills.with.bills.map((bill) => [bill.month, bill.total_usd]))
  return {
    tariff: bills.without.tariff,
    tariff_with_system: bills.with.tariff,
    monthly: bills.without.bills.map(({ month, total_usd }) => ({
      month,
      without_usd: CAUTIOUS.gainUsd(total_usd),
      with_usd: CAUTIOUS.costUsd(after.get(month) ?? 0),
    })),
    without_usd: CAUTIOUS.gainUsd(bills.without.total_usd),
    with_usd: CAUTIOUS.costUsd(bills.with.total_usd),
    saved_usd: CAUTIOUS.gainUsd(bills.annual_savings_usd),
  }
}
