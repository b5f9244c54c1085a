import { decimal, type Decimal } from '../../values/decimal/index.js'
import { contractPrice, withExportPrice } from './read-contract.js'
import type { EnergyPrices, FixedCharges, RateSheet, SolarTerms, Tier } from './rate-sheet.js'

/** Factors on the prices of a rate sheet, 1 = as printed. */
export interface PriceFactors {
  readonly energy: number
  readonly fixed: number
  readonly export: number
}

/**
 * A rate sheet in the prices of a year. Prices per kWh and per kW follow `energy`, charges per bill and the minimum `fixed`, what the
 * utility pays `export`; percentages stay, and so does a promised export price.
 */
export function atPricesOf(sheet: RateSheet, factors: PriceFactors): RateSheet {
  const energy = timesFactor(factors.energy)
  const fixed = timesFactor(factors.fixed)
  const charges = (list: readonly FixedCharges[]) => list.map((one) => ({ ...one, usd: fixed(one.usd) }))
  const tiers = (list: readonly Tier[]): Tier[] => list.map((tier) => ({ ...tier, usdPerKwh: energy(tier.usdPerKwh) }))
  const prices = (one: EnergyPrices): EnergyPrices => {
    switch (one.kind) {
      case 'tiers':
        return { ...one, tiers: tiers(one.tiers) }
      case 'period tiers':
        return { ...one, ladders: one.ladders.map(tiers) }
      case 'periods':
        return { ...one, usdPerKwh: one.usdPerKwh.map(energy) }
    }
  }
  return {
    ...sheet,
    fixed: charges(sheet.fixed),
    minimum: sheet.minimum === undefined ? undefined : { ...sheet.minimum, usd: fixed(sheet.minimum.usd) },
    energy: sheet.energy.map(prices),
    tierAdders: sheet.tierAdders.map((one) => ({ ...one, usdPerKwh: energy(one.usdPerKwh) })),
    riders: sheet.riders.map((one) => ({ ...one, usdPerKwh: one.usdPerKwh.map(energy) })),
    demand: sheet.demand.map((one) => ({
      ...one,
      tiers: one.tiers.map((tier) => ({ ...tier, usdPerKw: energy(tier.usdPerKw) })),
    })),
    taxes: sheet.taxes.map((one) => ({
      ...one,
      usdPerKwh: one.usdPerKwh === undefined ? undefined : energy(one.usdPerKwh),
    })),
    solarFixed: sheet.solarFixed === undefined ? undefined : charges(sheet.solarFixed),
    solar: solarAt(sheet.solar, factors),
  }
}

/** @returns The same price where the factor is 1, so that an unchanged sheet stays what it is. */
function timesFactor(factor: number): (usd: Decimal) => Decimal {
  if (factor === 1) return (usd) => usd
  const exact = decimal(Number(factor.toFixed(10)))
  return (usd) => usd.times(exact)
}

function solarAt(solar: SolarTerms, factors: PriceFactors): SolarTerms {
  const paid = timesFactor(factors.export)
  switch (solar.rule) {
    case 'unpaid':
      return solar
    case 'net metering':
      return {
        ...solar,
        surplusUsdPerKwh: paid(solar.surplusUsdPerKwh),
        trueUpFeeUsd: timesFactor(factors.fixed)(solar.trueUpFeeUsd),
      }
    case 'net billing':
      return { ...solar, prices: { ...solar.prices, usdPerKwh: solar.prices.usdPerKwh.map(paid) } }
    case 'buy all, sell all':
      return { ...solar, usdPerKwh: paid(solar.usdPerKwh) }
  }
}

/** A sheet with what the utility pays in a year of the cash flow: the promised price, or that of the tariff. */
export function withContractOf(sheet: RateSheet, contractOf: RateSheet, year: number): RateSheet {
  const { exportContract } = contractOf
  if (exportContract === undefined) return sheet
  const price = contractPrice(exportContract, year)
  return price === undefined ? sheet : { ...sheet, solar: withExportPrice(sheet.solar, price) }
}
