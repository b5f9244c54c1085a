import type { Finance, Incentive } from '../../project/index.js'
import type { Dollars, Kilowatts, Percent, Watts } from '../../values/index.js'
import type { HouseEnergy } from '../bill/index.js'
import type { BillingCalendar } from '../calendar/index.js'
import type { HouseBattery } from '../storage/index.js'
import type { RateSheet } from '../tariff/index.js'
import type { UseOfYear } from '../usage/index.js'

/** What the payback of a system is worked out from. */
export interface PaybackInput {
  readonly sheet: RateSheet
  /** Tariff of the solar customer when it is another one altogether. */
  readonly sheetWithSystem?: RateSheet
  /** Use and output of the first year; the output must be there. */
  readonly energy: HouseEnergy
  readonly calendar: BillingCalendar
  /** Cost before incentives from the bill of materials, USD; `finance.installed_cost_usd` replaces it. */
  readonly billOfMaterialsUsd?: Dollars
  /** DC rating at standard test conditions, W. */
  readonly dcRatingW: Watts
  readonly finance: Finance
  readonly incentives: Readonly<Record<string, Incentive>>
  /** As the project states it, percent; `finance` wins over `losses`. */
  readonly degradationPct?: Percent
  /** Use of each year, where it grows or loads come; the energy above is that of the first year. */
  readonly usageOf?: UseOfYear
  /** Whether the spread of the running sum of every year is told too. */
  readonly cashBand?: boolean
  /** Without the sensitivity table, for one of very many houses that are compared. */
  readonly brief?: boolean
  /** The battery; none when missing. Needs energy by the hour. */
  readonly battery?: BatteryInput
}

/** A battery and what is asked of it. */
export interface BatteryInput {
  readonly house: HouseBattery
  /** Rated AC output of all inverters, kW. */
  readonly acKw: Kilowatts
  /** Whether the optimum by perfect foresight is told too. */
  readonly optimum?: boolean
}
