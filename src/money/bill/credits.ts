import type { MoneyCreditTerms } from '../tariff/index.js'
import type { BillLine, BillLines } from './bill-lines.js'
import { ZERO, decimal, smaller, type Decimal } from '../../values/decimal/index.js'

const MINUS_ONE = decimal(-1)

/** What became of a credit in money on one bill. */
export interface CreditOutcome {
  readonly used: Decimal
  readonly bank: Decimal
  readonly paidOut: Decimal
  readonly lost: Decimal
}

/**
 * Pays charges with a credit as far as the tariff lets it, and settles the rest when it is due.
 *
 * @param available Credit of this bill and of the bank, USD.
 * @param floor Minimum of energy or bill that no credit goes below, USD.
 */
export function applyCredit(
  lines: BillLines,
  terms: MoneyCreditTerms,
  available: Decimal,
  floor: Decimal,
  floorOf: 'energy' | 'bill',
  month: number,
): CreditOutcome {
  const isGuarded = (line: BillLine): boolean =>
    floorOf === 'bill' || ['energy', 'riders', 'minimum'].includes(line.group)
  const offset = (guarded: boolean): Decimal =>
    lines.total((line) => isOffset(line, terms) && isGuarded(line) === guarded)
  const aboveFloor = lines.total(isGuarded).minus(floor)
  const room = offset(false).plus(smaller(offset(true), aboveFloor.gt(0) ? aboveFloor : ZERO))
  const used = room.gt(0) ? smaller(available, room) : ZERO
  lines.add({
    id: 'credit.used',
    group: 'credit',
    says: 'solar credit used',
    quantity: used,
    unit: 'USD',
    price: MINUS_ONE,
  })
  const rest = available.minus(used)
  const settles = terms.settle === 'monthly' || (terms.settle === 'annual' && month === terms.trueUpMonth)
  if (!settles) return { used, bank: rest, paidOut: ZERO, lost: ZERO }
  const paidOut = rest.times(terms.paidOut)
  lines.add({
    id: 'credit.paid_out',
    group: 'surplus',
    says: 'solar credit paid out',
    quantity: paidOut,
    unit: 'USD',
    price: MINUS_ONE,
  })
  return { used, bank: ZERO, paidOut, lost: rest.minus(paidOut) }
}

function isOffset(line: BillLine, terms: MoneyCreditTerms): boolean {
  if (line.group === 'surplus' || line.group === 'taxes') return false
  return terms.offsets === 'all' || line.bypassable
}
