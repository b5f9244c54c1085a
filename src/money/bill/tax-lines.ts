import { kwhDecimal } from '../exact/index.js'
import type { RateSheet, Taxes } from '../tariff/index.js'
import type { BillLine, BillLines } from './bill-lines.js'
import { ZERO, decimal } from '../../values/decimal/index.js'

const PERCENT = decimal(0.01)

function isTaxed(tax: Taxes, line: BillLine): boolean {
  if (line.group === 'credit') return !tax.beforeCredits
  if (line.group === 'surplus' || line.group === 'taxes') return false
  return tax.of === undefined || tax.of.some((of) => of === line.group || line.id.split('.').at(1) === of)
}

/**
 * Taxes and fees on the charges.
 *
 * @param billedMicro Billed energy, millionths of a kWh; a surplus is not taxed.
 */
export function addTaxLines(lines: BillLines, sheet: RateSheet, billedMicro: number): void {
  const untaxed = [...lines.lines]
  for (const tax of sheet.taxes) {
    if (tax.usdPerKwh !== undefined) {
      const quantity = kwhDecimal(Math.max(0, billedMicro))
      lines.add({ id: `tax.${tax.id}`, group: 'taxes', says: tax.id, quantity, unit: 'kWh', price: tax.usdPerKwh })
      continue
    }
    const base = untaxed.filter((line) => isTaxed(tax, line)).reduce((all, line) => all.plus(line.amount), ZERO)
    const percent = tax.percent ?? ZERO
    lines.add({
      id: `tax.${tax.id}`,
      group: 'taxes',
      says: `${tax.id} ${percent.toFixed()} %`,
      quantity: base.lt(0) ? ZERO : base,
      unit: 'USD',
      price: percent.times(PERCENT),
    })
  }
}
