export { DAY_KINDS } from './rate-sheet.js'
export type {
  DemandCharges,
  EnergyPrices,
  Tier,
  ExportContractTerms,
  ExportPrices,
  FixedCharges,
  LaterSheets,
  MinimumCharges,
  MoneyCreditTerms,
  RateSheet,
  Riders,
  SolarTerms,
  Taxes,
  Threshold,
  TierAdders,
} from './rate-sheet.js'
export { readTariff, readTariffs, type RateSheets } from './read-tariff.js'
export { scaleExportPrices } from './scale-export-prices.js'
export { contractPrice } from './read-contract.js'
export { atPricesOf, withContractOf, type PriceFactors } from './year-prices.js'
