import { addDays, daysBetween } from '../../values/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { RateSheet } from '../tariff/index.js'
import type { CheckedBillsValues, ExplanationValues } from './check-values.js'
import type { DayCount } from './paid-bill.js'
import type { BillSet } from './price-bills.js'
import type { Explained } from './search.js'

export const SAYS_DAYS: Readonly<Record<DayCount, string>> = {
  both: 'both printed days count',
  last: 'the last printed day counts, the first does not',
}

/** Which days were counted, and which lie in no bill. */
export function tellDays(worksheet: Worksheet, set: BillSet, stated: boolean, unknown: boolean): void {
  const { bills, days } = set
  if (!stated)
    worksheet.assume({
      path: '--days',
      value: SAYS_DAYS[days],
      unit: '',
      why: unknown
        ? 'the bills do not follow each other without a gap, so their days do not show it'
        : 'so the bills follow each other without a gap or a day twice',
      source: { document: 'Days of the printed bills', standing: 'project file' },
    })
  for (const [i, bill] of bills.entries()) {
    const before = bills[i - 1]
    if (before === undefined) continue
    const next = days === 'both' ? addDays(before.to, 1) : before.to
    if (bill.from === next) continue
    worksheet.find({
      severity: 'warning',
      id: 'bills.gap',
      message: `${bill.place}: ${daysBetween(next, bill.from)} days lie between the bill that ends on ${before.to} and this one${set.solar ? ', and what they left in the banks is not known' : ''}`,
      where: '',
      fix: 'Add the bill that is missing, or state --days when the days are counted otherwise.',
    })
  }
  if (set.solar)
    worksheet.find({
      severity: 'note',
      id: 'bills.banks-empty',
      message: 'the banks of kWh and of credit are empty before the first bill',
      where: 'tariff.solar',
      fix: 'Begin with the bill after a true-up.',
    })
}

/** The lines of every bill. */
export function recordBills(worksheet: Worksheet, values: CheckedBillsValues, { source, rounding }: RateSheet): void {
  for (const [i, bill] of values.bills.entries())
    worksheet.step({
      id: `bills.${String(i + 1).padStart(2, '0')}`,
      says: `Bill from ${bill.from} to ${bill.to} by the tariff, half a cent up`,
      formula:
        rounding === 'line' ? 'total = sum of the lines, each to the cent' : 'total = sum of the lines, to the cent',
      inputs: bill.computed_lines.map(({ id, amount_usd }) => ({
        symbol: id,
        value: amount_usd,
        unit: 'USD',
        from: 'tariff and printed kWh',
      })),
      result: { symbol: 'total', value: bill.computed_usd, unit: 'USD' },
      source,
    })
}

/** What differs, and what could explain it. */
export function tellDifferences(
  worksheet: Worksheet,
  values: CheckedBillsValues,
  most: (Explained & { readonly key: string }) | undefined,
  base: string,
): void {
  const { bills, differing, difference_usd: difference, explanations } = values
  const [first, second] = explanations
  const sign = difference > 0 ? 'more' : 'less'
  const amount = Math.abs(difference).toFixed(2)
  const sayChange = ({ key, found, fits }: Pick<ExplanationValues, 'key' | 'found' | 'fits'>): string =>
    found === null ? `${key} (not stated) of ${fits}` : `${key} of ${fits} in place of ${found}`
  worksheet.find({
    severity: 'error',
    id: 'bills.differ',
    message: `${differing} of ${bills.length} bills are not those of the tariff, which gives ${amount} USD ${sign} in all${first === undefined ? '' : `; ${sayChange(first)} explains every bill to the cent`}`,
    where: first === undefined || first.key === '--days' ? base : placeOf(first),
    fix:
      first === undefined
        ? 'Compare each line of a bill with its line here (--json), beginning with the smallest bill.'
        : 'Look at this key on the rate sheet and correct it.',
  })
  if (second !== undefined)
    worksheet.find({
      severity: 'note',
      id: 'bills.several-explanations',
      message: `other single changes explain every bill as well: ${explanations.slice(1, 6).map(sayChange).join('; ')}`,
      where: '',
      fix: 'State more bills, or their lines (energy, fixed, taxes), to tell them apart.',
    })
  if (first === undefined)
    worksheet.find({
      severity: 'warning',
      id: 'bills.unexplained',
      message:
        most === undefined
          ? 'no single change of the tariff explains any bill to the cent'
          : `no single change of the tariff explains all bills; ${sayChange({ ...most.change, key: most.key })} explains ${most.count} of ${bills.length}`,
      where: base,
      fix: 'Two keys may be wrong, the rate may have changed within the bills, or a charge is missing.',
    })
}

/** A key that is not stated has no place; what would hold it has. */
const placeOf = ({ key, found }: ExplanationValues): string =>
  found === null ? key.split('.').slice(0, -2).join('.') : key
