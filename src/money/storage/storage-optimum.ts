import { leastCost, type StorageFlows } from '../../storage/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { BillingCalendar } from '../calendar/index.js'
import type { RateSheet } from '../tariff/index.js'
import { partsOf } from '../calendar/index.js'
import { hourPrices } from './hour-prices.js'
import type { HouseBattery } from './read-storage.js'
import type { StorageValues } from './storage-values.js'

const cents = (usd: number): number => Math.round(usd * 100) / 100 + 0

/**
 * What the control reaches of the savings that a plan with perfect foresight would bring. The plan keeps reserve, export cap
 * and what the battery may charge from and export to; its windows are its own.
 */
export function storageOptimum(
  house: HouseBattery,
  energy: { readonly usageKwh: Float64Array; readonly productionKwh: Float64Array },
  flows: StorageFlows,
  sheet: RateSheet,
  calendar: BillingCalendar,
  worksheet: Worksheet,
): Required<Pick<StorageValues, 'optimum' | 'optimum_share_pct'>> {
  const none = (why: string) => {
    worksheet.find({
      severity: 'note',
      id: 'storage.no-optimum',
      message: `no optimum is worked out: ${why}, so that no hour has a price of its own`,
      where: 'tariff',
    })
    return { optimum: null, optimum_share_pct: null }
  }
  const parts = partsOf(energy.usageKwh)
  const prices = hourPrices(sheet, calendar, parts)
  if (typeof prices === 'string') return none(prices)
  const { battery, control } = house.system
  const steps = { stepH: 1 / parts, loadKwh: energy.usageKwh, pvKwh: energy.productionKwh }
  const cap = control.exportCapKw === undefined ? {} : { exportCapKw: control.exportCapKw }
  const limits = { chargeFrom: control.chargeFrom, batteryExport: control.batteryExport, ...cap }
  const least = leastCost(steps, battery, prices, limits, flows.startKwh)
  if (least === undefined) return none('exports are paid more than imports cost in some hours')
  let [without, controlled] = [0, 0]
  for (let h = 0; h < steps.loadKwh.length; h++) {
    const net = steps.loadKwh[h]! - steps.pvKwh[h]!
    without += net > 0 ? net * prices.buyUsd[h]! : net * prices.sellUsd[h]!
    controlled += flows.importKwh[h]! * prices.buyUsd[h]! - flows.exportKwh[h]! * prices.sellUsd[h]!
  }
  // Without a battery a cap curtails as well.
  if (control.exportCapKw !== undefined)
    for (let h = 0; h < steps.loadKwh.length; h++) {
      const over = steps.pvKwh[h]! - steps.loadKwh[h]! - control.exportCapKw * steps.stepH
      if (over > 0) without += over * prices.sellUsd[h]!
    }
  const gain = without - least
  const share = gain > 0 ? Number(((100 * (without - controlled)) / gain).toFixed(2)) : null
  worksheet.step({
    id: 'storage.optimum-share',
    says: 'What the control reaches of what perfect foresight would save on energy',
    formula: 'share = (W - C) / (W - L)',
    inputs: [
      {
        symbol: 'W',
        value: cents(without),
        unit: 'USD',
        from: 'prices per kWh times imports less exports, without battery',
      },
      { symbol: 'C', value: cents(controlled), unit: 'USD', from: 'the same with the battery as it is controlled' },
      { symbol: 'L', value: cents(least), unit: 'USD', from: 'the same at best, knowing every hour beforehand' },
    ],
    result: { symbol: 'share', value: share ?? 0, unit: '%' },
    source: {
      document: 'Least cost by going back through the hours, exact for constant efficiencies',
      standing: 'common practice, no source',
    },
  })
  return {
    optimum: { without_usd: cents(without), control_usd: cents(controlled), least_usd: cents(least) },
    optimum_share_pct: share,
  }
}
