import { MONTHS } from '../../values/index.js'
import { LADDER, type LadderStep, type YieldValues } from '../../yield/index.js'
import type { Section, TableData } from '../../report/index.js'

/** The monthly table of an energy estimate; for people with a small bar for each month. */
export function monthlyTable(values: YieldValues, bars = true): TableData {
  const most = Math.max(...values.monthly.map((month) => month.ac_kwh))
  return {
    columns: [
      { heading: 'Month', key: 'month' },
      { heading: 'On plane', unit: 'kWh/m2', decimals: 1, key: 'poa_kwh_m2' },
      { heading: 'DC', unit: 'kWh', key: 'dc_kwh' },
      { heading: 'Clipped', unit: 'kWh', decimals: 1, key: 'clipped_kwh' },
      { heading: 'AC', unit: 'kWh', key: 'ac_kwh' },
      { heading: 'AC per kW', unit: 'kWh/kW', key: 'kwh_per_kw' },
      ...(bars ? [{ heading: '', align: 'left' as const }] : []),
    ],
    rows: values.monthly.map((month) => [
      bars ? (MONTHS[month.month - 1] ?? '') : month.month,
      month.poa_kwh_m2,
      month.dc_kwh,
      month.clipped_kwh,
      month.ac_kwh,
      month.kwh_per_kw,
      ...(bars ? ['#'.repeat(most > 0 ? Math.max(0, Math.round((12 * month.ac_kwh) / most)) : 0)] : []),
    ]),
    total: [
      'Year',
      values.annual.poa_kwh_m2,
      values.annual.dc_kwh,
      values.annual.clipped_kwh,
      values.annual.ac_kwh,
      values.annual.kwh_per_kw,
      ...(bars ? [null] : []),
    ],
  }
}

const STEP_WORDS: Readonly<Record<LadderStep, string>> = {
  horizontal: 'sun on level ground, as energy of loss-free modules',
  plane: 'on the plane of the modules',
  shade: 'after shade of horizon, obstacles and roof',
  reflection: 'after reflection at slanting sun',
  dirt: 'after dirt',
  snow: 'after snow',
  bypass: 'after uneven shade of sections and strings',
  low_light: 'after weak light',
  temperature: 'after cell temperature',
  rating_shortfall: 'after shortfall of the rating',
  first_weeks_of_light: 'after the first weeks of light',
  years_in_use: 'after years in use',
  unequal_modules: 'after unequal modules',
  contacts: 'after contacts',
  dc_cables: 'after DC cables: DC at the inverters',
  inverter: 'after inverter efficiency',
  clipping: 'after the AC limit',
  ac_cables: 'after AC cables',
  out_of_order: 'after time out of order',
  night: 'after night consumption: AC delivered',
}

/** The way from sunlight to AC, a row for each loss. */
export function ladderSection(values: YieldValues): Section {
  const rows = LADDER.map((step, index) => {
    const kwh = values.ladder[step]
    const before = index === 0 ? undefined : values.ladder[LADDER[index - 1] as LadderStep]
    const change = before === undefined || before === 0 ? null : 100 * (kwh / before - 1)
    return [STEP_WORDS[step], change === null ? null : change, kwh] as const
  })
  return {
    kind: 'table',
    heading: 'From sunlight to AC',
    columns: [
      { heading: 'Step' },
      { heading: 'Change', unit: '%', decimals: 2 },
      { heading: 'Left', unit: 'kWh/year' },
    ],
    rows,
  }
}
