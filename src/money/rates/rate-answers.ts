/** Rules for solar customers that a record can name. */
export const SOLAR_RULES = {
  'net-metering': 'Net Metering',
  'net-billing-hourly': 'Net Billing Hourly',
  'net-billing-instant': 'Net Billing Instantaneous',
  'buy-all-sell-all': 'Buy All Sell All',
  none: 'none',
} as const

/** A rule for solar customers, as `import-rate --solar` takes it. */
export type SolarRuleName = keyof typeof SOLAR_RULES

/** What a person adds to a record, as it does not say it. */
export interface RateAnswers {
  /** Writes the tariff without what cannot be carried over. */
  readonly anyway?: boolean
  /** What tiers by time-of-use period count. */
  readonly tiersCount?: 'whole_bill' | 'each_period'
  readonly solar?: SolarRuleName
  /** USD/kWh for exports, or for all generation. */
  readonly sellUsdPerKwh?: number
  readonly settle?: 'monthly' | 'annual'
  /** 1 to 12. */
  readonly trueUpMonth?: number
  /** USD/kWh for kWh left at settlement. */
  readonly surplusUsdPerKwh?: number
  /** Day for which the record is to hold, `YYYY-MM-DD`. */
  readonly on?: string
  /** Version of the service, and the day of the download, for the line of the source. */
  readonly version?: string
  readonly downloaded?: string
}
