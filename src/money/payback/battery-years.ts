import type { Finance } from '../../project/index.js'
import type { StorageLife } from '../../storage/index.js'
import type { Dollars } from '../../values/index.js'
import {
  savingsAt,
  savingsCurve,
  yearLedgers,
  type HouseEnergy,
  type SavingsCurve,
  type YearLedgers,
} from '../bill/index.js'
import type { BillingCalendar } from '../calendar/index.js'
import { behindMeter, storageYears, type HouseBattery, type YearEnergy } from '../storage/index.js'
import type { RateSheet } from '../tariff/index.js'
import { yearCurve, type YearsInput } from '../years/index.js'

/** A house with a battery, as its years are worked out. */
export interface BatteryHouse {
  readonly battery: HouseBattery
  readonly energy: YearEnergy
  readonly sheet: RateSheet
  readonly sheetWithSystem: RateSheet
  readonly calendar: BillingCalendar
  /** The years, with the battery as new, where use, rate sheets or prices change. */
  readonly years?: YearsInput | undefined
  /** Hours of the house without the system added up, where that is done already. */
  readonly before?: YearLedgers
}

/** The energy of a house with its battery behind the meter, as new unless said. */
export function withBattery(energy: YearEnergy, battery: HouseBattery, capacityPct = 100): HouseEnergy {
  const { usageKwh, productionKwh } = energy
  return { kind: 'hourly', usageKwh, productionKwh, storage: behindMeter(battery.system, capacityPct) }
}

/** Life of the battery, and what its fade takes from the savings of each year, USD at base prices. */
export interface BatteryYears {
  readonly life: StorageLife
  readonly fadeUsd: readonly Dollars[]
}

/**
 * Bills of every year with the capacity of that year, less those with a battery as new.
 *
 * @param curves Savings of each year with the battery as new, exact at its scale. @param scales Output of each year over the first.
 */
export function batteryYears(
  house: BatteryHouse,
  curves: (year: number) => SavingsCurve,
  scales: readonly number[],
): BatteryYears {
  const { battery, energy, sheet, calendar, years } = house
  const before = house.before ?? yearLedgers(sheet, { kind: 'hourly', ...energy }, calendar)
  const life = storageYears(battery, years?.usageOf ?? (() => energy.usageKwh), energy.productionKwh, scales)
  const fadeUsd = life.years.map(({ capacityPct }, i) => {
    const scale = scales[i] ?? 1
    if (capacityPct === 100) return 0
    return savingsAt(curves(i + 1), scale) - fadedSavings({ ...house, before }, capacityPct, i + 1, scale)
  })
  return { life, fadeUsd }
}

/** Savings of a year with a battery that has lost capacity, USD as the curves have them. */
function fadedSavings(
  { battery, energy, sheet, sheetWithSystem, calendar, years, before }: BatteryHouse & { readonly before: YearLedgers },
  capacityPct: number,
  year: number,
  scale: number,
): Dollars {
  if (years !== undefined) {
    const storage = behindMeter(battery.system, capacityPct)
    return yearCurve({ ...years, scalesOf: () => [scale] }, year, { storage }).usdAt(0)
  }
  const faded = withBattery(energy, battery, capacityPct)
  const ledgers = { before, after: yearLedgers(sheetWithSystem, faded, calendar) }
  const own = savingsCurve({ sheet, sheetWithSystem, calendar, energy: faded, ledgers, grid: [], extraScales: [scale] })
  return own.usdAt(0)
}

/** Finance with the batteries that are bought again within the study. */
export function withReplacements(finance: Finance, battery: HouseBattery, life: StorageLife): Finance {
  const bought = life.years
    .filter(({ replaced }) => replaced)
    .map(({ year }) => ({ name: 'storage', year, usd: battery.replacementUsd }))
  return bought.length === 0 ? finance : { ...finance, replacements: [...(finance.replacements ?? []), ...bought] }
}
