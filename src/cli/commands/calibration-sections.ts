import type { ReviewValues } from '../../fieldwork/index.js'
import type { Section } from '../../report/index.js'

/** What the measured days say of the estimate. */
export function calibrationSections({ calibration }: ReviewValues): Section[] {
  if (calibration === undefined || calibration === null) return []
  return [
    {
      kind: 'facts',
      heading: 'The estimate calibrated with these days',
      facts: [
        { label: 'Mean year over the estimate', value: 100 * calibration.factor, unit: '%', decimals: 1 },
        {
          label: 'Measured over expected if the estimate were exact, standard deviation',
          value: calibration.measurement_pct,
          unit: '%',
          decimals: 1,
        },
      ],
    },
    {
      kind: 'table',
      heading: 'First year before and after',
      columns: [
        { heading: '' },
        { heading: 'P50', unit: 'kWh' },
        { heading: 'P90', unit: 'kWh' },
        { heading: 'Lasting doubt', unit: '%', decimals: 1 },
      ],
      rows: [
        ['estimate', calibration.prior_p50_kwh, calibration.prior_p90_kwh, calibration.prior_spread_pct],
        ['with these days', calibration.p50_kwh, calibration.p90_kwh, calibration.spread_pct],
      ],
    },
    {
      kind: 'table',
      heading: 'Its lasting terms (standard deviation, % of a year)',
      columns: [
        { heading: 'Term' },
        { heading: 'Before', unit: '%', decimals: 2 },
        { heading: 'After', unit: '%', decimals: 2 },
        { heading: 'Mean error', unit: '%', decimals: 2 },
      ],
      rows: calibration.terms.map(({ term, prior_pct: prior, posterior_pct: posterior, shift_pct: shift }) => [
        term,
        prior,
        posterior,
        shift,
      ]),
    },
  ]
}
