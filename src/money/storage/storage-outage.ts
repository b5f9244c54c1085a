import { LONGEST_OUTAGE_H, outageHours, type StorageFlows } from '../../storage/index.js'
import { quantile, sortReals, type Kilowatts } from '../../values/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { BillingCalendar } from '../calendar/index.js'
import { backupLimits } from './backup-limits.js'
import { essentialOf } from './essential.js'
import type { HouseBattery } from './read-storage.js'
import type { OutageMonthValues } from './storage-values.js'

/** How long the essential loads last, by month; undefined when nothing is backed up. */
export function storageOutage(
  house: HouseBattery,
  productionKwh: Float64Array,
  flows: Pick<StorageFlows, 'storedKwh' | 'startKwh'>,
  calendar: BillingCalendar,
  acKw: Kilowatts,
  worksheet: Worksheet,
): readonly OutageMonthValues[] | undefined {
  const { backup } = house.part.storage
  if (backup === undefined || backup.kind === 'none') return undefined
  const essential = essentialOf(backup)
  if (essential === undefined) return undefined
  const withModules = backupLimits(house, essential, acKw, worksheet)
  const lasts = outageHours(
    { kwhOfHour: essential.kwhOfHour, pvKwh: withModules ? productionKwh : undefined },
    house.system.battery,
    flows.storedKwh,
    flows.startKwh,
    (step) => calendar.clockHour[step] ?? 0,
  )
  worksheet.find({
    severity: 'note',
    id: 'storage.not-for-life',
    message: `hours of backup are an estimate for an average year${withModules ? '' : ' without the modules'}; never plan equipment that keeps a person alive on them`,
    where: 'storage.backup',
  })
  return Array.from({ length: 12 }, (_, m) => {
    const own = lasts.filter((__, h) => calendar.month[calendar.clockDay[h] ?? 0] === m + 1)
    const sorted = sortReals(own)
    const at = (share: number): number => Number(Math.min(LONGEST_OUTAGE_H, quantile(sorted, share)).toFixed(1))
    return { month: m + 1, p10_h: at(0.9), p50_h: at(0.5), p90_h: at(0.1) }
  })
}
