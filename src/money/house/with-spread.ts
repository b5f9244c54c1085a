import type { Finance } from '../../project/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { AGE_TERM, type YieldRun } from '../../yield/index.js'

/**
 * Finance with the spread of the energy estimate where the project states none: the estimate knows it better than a
 * default for all estimates.
 */
export function withSpread(finance: Finance, run: YieldRun, worksheet: Worksheet): Finance {
  const terms = run.result.values.uncertainty.filter(({ term }) => term !== AGE_TERM)
  const squares = (yearly: boolean): number =>
    terms.filter(({ lasts }) => lasts !== yearly).reduce((sum, { percent }) => sum + percent ** 2, 0)
  const stated = finance.uncertainty ?? {}
  const sigma = (key: 'yield_sigma_pct' | 'weather_sigma_pct', value: number, why: string): number =>
    stated[key] ??
    worksheet.assume({
      path: `finance.uncertainty.${key}`,
      value: Number(value.toFixed(2)),
      unit: '%',
      why,
      source: { document: 'Uncertainty of the energy estimate of this project', standing: 'project file' },
    })
  const lasting = sigma('yield_sigma_pct', Math.sqrt(squares(false)), 'the terms of the energy estimate that last')
  const weather = sigma('weather_sigma_pct', Math.sqrt(squares(true)), 'the year-to-year term of the energy estimate')
  return { ...finance, uncertainty: { ...stated, yield_sigma_pct: lasting, weather_sigma_pct: weather } }
}
