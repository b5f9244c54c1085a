import { TYPICAL_RUNNING_COSTS } from '../../tables/money/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { thirdPartyOf, type CashFlowInput } from '../cash-flow/index.js'
import { npvOf } from '../uncertainty/index.js'
import type { Worth } from './worth.js'

/** Tells what the answer would be with the usual replacement and upkeep, where the project is silent about them. */
export function tellRunningCosts(worksheet: Worksheet, input: CashFlowInput, worth: Worth): void {
  const { finance, dcRatingW, terms } = input
  // The owner of the system bears them.
  if (thirdPartyOf(finance) !== undefined) return
  const { inverterYear, inverterUsdPerW, upkeepUsdPerKwYear, source } = TYPICAL_RUNNING_COSTS
  const inverterUsd = Math.round(inverterUsdPerW * dcRatingW)
  const upkeepUsd = Math.round((upkeepUsdPerKwYear * dcRatingW) / 1000)
  const lacksInverter = finance.replacements === undefined && terms.years >= inverterYear
  const lacksUpkeep = finance.maintenance_usd_per_year === undefined
  if (!lacksInverter && !lacksUpkeep) return
  const npvUsd = npvOf({
    ...input,
    finance: {
      ...finance,
      ...(lacksInverter ? { replacements: [{ name: 'inverter', year: inverterYear, usd: inverterUsd }] } : {}),
      ...(lacksUpkeep ? { maintenance_usd_per_year: upkeepUsd } : {}),
    },
  })
  const missing = [lacksInverter ? 'new inverter' : '', lacksUpkeep ? 'upkeep' : ''].filter((word) => word !== '')
  const typical = [
    lacksInverter
      ? `an inverter for ${String(inverterUsd)} USD in year ${String(inverterYear)} (${String(inverterUsdPerW)} USD/W)`
      : '',
    lacksUpkeep ? `upkeep of ${String(upkeepUsd)} USD a year (${String(upkeepUsdPerKwYear)} USD/kW)` : '',
  ].filter((words) => words !== '')
  worksheet.find({
    severity: 'warning',
    id: 'payback.running-costs-missing',
    message: `no ${missing.join(' and no ')} is counted in ${String(terms.years)} years, as the project states none; with ${typical.join(' and ')} the net present value would be ${npvUsd.toFixed(0)} USD instead of ${worth.npvUsd.toFixed(0)} USD`,
    where: lacksInverter ? 'finance.replacements' : 'finance.maintenance_usd_per_year',
    source,
    fix: 'State finance.replacements ([] when none is expected within the study) and finance.maintenance_usd_per_year (0 when none).',
  })
}
