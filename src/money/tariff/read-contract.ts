import type { SolarRule } from '../../project/index.js'
import type { PriceReader } from './price-reader.js'
import type { ExportContractTerms, SolarTerms } from './rate-sheet.js'
import { tariffError } from './tariff-error.js'
import { ZERO, type Decimal } from '../../values/decimal/index.js'

/** Reads promised export prices. @throws StageError when the rule of the tariff has no export price that they could replace. */
export function readContract(
  rule: SolarRule | undefined,
  ofTariff: SolarTerms,
  price: PriceReader,
): ExportContractTerms | undefined {
  const { export_contract: contract } = rule ?? {}
  if (contract === undefined) return undefined
  const place = 'solar.export_contract'
  if (ofTariff.rule !== 'net billing' && ofTariff.rule !== 'buy all, sell all') {
    throw tariffError(
      place,
      `the tariff has ${ofTariff.rule === 'unpaid' ? 'no rule for exported energy' : 'net metering'}, so there is no export price that a contract could replace`,
      'State solar.net_billing (how exports are counted, and their price after the contract) or solar.buy_all_sell_all.',
    )
  }
  const usdOfYear = contract.steps.flatMap(({ years, usd_per_kwh: usd }, i) =>
    Array.from<Decimal>({ length: years }).fill(price(`${place}.steps.${String(i)}.usd_per_kwh`, usd)),
  )
  return { usdOfYear, afterwards: contract.afterwards, ofTariff }
}

/** What the utility pays in a year of the contract, counted from 1; undefined when it has run out and the tariff holds. */
export function contractPrice({ usdOfYear, afterwards }: ExportContractTerms, year: number): Decimal | undefined {
  return usdOfYear[year - 1] ?? (afterwards === 'unpaid' ? ZERO : undefined)
}

/** The rule of a tariff with one price for all that it pays for. */
export function withExportPrice(solar: SolarTerms, usdPerKwh: Decimal): SolarTerms {
  if (solar.rule === 'buy all, sell all') return { ...solar, usdPerKwh }
  if (solar.rule !== 'net billing') return solar
  return { ...solar, prices: { kind: 'monthly', usdPerKwh: Array.from<Decimal>({ length: 12 }).fill(usdPerKwh) } }
}
