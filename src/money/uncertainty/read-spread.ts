import type { Uncertainty } from '../../project/index.js'
import { DEFAULT_RATES, type PublishedRate } from '../../tables/money/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { Spread } from './monte-carlo.js'

/** Resolves the spreads of the random draw, recording every default. */
export function readSpread(uncertainty: Uncertainty, worksheet: Worksheet): Spread {
  const sigma = (key: keyof Uncertainty, rate: PublishedRate): number => {
    const { value, unit, why, source } = rate
    return (
      (uncertainty[key] ?? worksheet.assume({ path: `finance.uncertainty.${key}`, value, unit, why, source })) / 100
    )
  }
  const draw = (key: 'seed' | 'samples', value: number, why: string): number =>
    uncertainty[key] ??
    worksheet.assume({
      path: `finance.uncertainty.${key}`,
      value,
      unit: '',
      why,
      source: { document: '', standing: 'common practice, no source' },
    })
  return {
    seed: draw('seed', 1, 'any fixed number makes the draw repeatable'),
    samples: draw('samples', 2000, 'enough for P10 and P90 within a few tenths of a year'),
    yieldSigma: sigma('yield_sigma_pct', DEFAULT_RATES.yieldSigmaPct),
    weatherSigma: sigma('weather_sigma_pct', DEFAULT_RATES.weatherSigmaPct),
    escalationSigma: sigma('escalation_sigma_pct', DEFAULT_RATES.escalationSigmaPct),
    costSigma: sigma('cost_sigma_pct', DEFAULT_RATES.costSigmaPct),
  }
}
