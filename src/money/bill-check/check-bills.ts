import type { Tariff } from '../../project/index.js'
import { daysBetween } from '../../values/index.js'
import { sum, toCents } from '../../values/decimal/index.js'
import { StageError, Worksheet, type Result } from '../../worksheet/index.js'
import type { Bill } from '../bill/index.js'
import { readTariff, readTariffs } from '../tariff/index.js'
import type { BillLineCheck, CheckedBill, CheckedBillsValues, ExplanationValues } from './check-values.js'
import type { Change } from './changes.js'
import type { DayCount, PaidBill, StatedLine } from './paid-bill.js'
import { dayCountOf, isSame, lineTotal, priceBills, type BillSet } from './price-bills.js'
import { readBills } from './read-bills.js'
import { searchChanges } from './search.js'
import { recordBills, SAYS_DAYS, tellDays, tellDifferences } from './tell-bills.js'

/** Printed bills of a house. */
export interface BillsInput {
  readonly tariff: Tariff | undefined
  /** Name for messages, and the table itself: columns from, to, kwh, amount and others. */
  readonly file: string
  readonly text: string
  /** Which printed days count; found from how the bills follow each other when missing. */
  readonly days?: DayCount
}

/**
 * Compares printed bills with those of the tariff, and looks for one change of the tariff that explains all of them.
 *
 * @throws ProjectError with line and column when the table is damaged.
 * @throws StageError when there is no tariff, or a bill does not state what the tariff prices.
 */
export function checkBills({ tariff, file, text, days }: BillsInput): Result<CheckedBillsValues> {
  const { without, withSystem } = readTariffs(tariff)
  if (tariff === undefined) throw new Error('a tariff was read that is not there')
  const other = tariff.solar?.tariff
  const ids = idsOf([without, withSystem])
  const paid = readBills(file, text, ids)
  const solar = paid.some((bill) => bill.generationKwh !== undefined || bill.exportKwh !== undefined)
  const base = solar && other !== undefined ? 'tariff.solar.tariff' : 'tariff'
  const own = solar ? (other ?? tariff) : tariff
  const sheet = readTariff(own)
  const found = days ?? dayCountOf(paid)
  const set: BillSet = { bills: paid, days: found ?? 'last', solar }
  const worksheet = new Worksheet()
  tellDays(worksheet, set, days !== undefined, found === undefined)
  const bills = pricedWithPlaces(sheet, set)
  const off = bills.filter(({ bill, printed }) => !isSame(bill, printed, sheet.rounding))
  const worst = off.toSorted((a, b) => Math.abs(differenceOf(b)) - Math.abs(differenceOf(a)))[0]?.printed
  const { all, most } = worst === undefined ? { all: [], most: undefined } : searchChanges(own, set, worst)
  const counted = otherDays(own, set, worst)
  const changes = found === undefined ? [...counted, ...all] : [...all, ...counted]
  const [likeliest] = changes
  const suspect = likeliest === undefined ? null : keyOf(base, likeliest)
  const values: CheckedBillsValues = {
    tariff: sheet.name,
    days_counted: set.days,
    with_system: solar,
    bills: bills.map((one) => valuesOf(one, set.days, off.includes(one) ? suspect : null)),
    differing: off.length,
    computed_usd: sum(bills.map(({ bill }) => bill.total)).toNumber(),
    stated_usd: sum(paid.map((bill) => bill.amountUsd)).toNumber(),
    difference_usd: sum(bills.map(({ bill, printed }) => bill.total.minus(printed.amountUsd))).toNumber(),
    explanations: changes.map((change) => explanationOf(base, change)),
  }
  recordBills(worksheet, values, sheet)
  if (off.length > 0)
    tellDifferences(
      worksheet,
      values,
      most === undefined ? undefined : { ...most, key: keyOf(base, most.change) },
      base,
    )
  return worksheet.result(values)
}

interface PricedBill {
  readonly bill: Bill
  readonly printed: PaidBill
}

const differenceOf = ({ bill, printed }: PricedBill): number => bill.total.minus(printed.amountUsd).toNumber()

function idsOf(sheets: readonly ReturnType<typeof readTariff>[]): { periods: string[]; demand: string[] } {
  const unique = (names: readonly string[]): string[] => [...new Set(names)]
  return {
    periods: unique(sheets.flatMap((sheet) => sheet.periods)),
    demand: unique(sheets.flatMap((sheet) => sheet.demand.map(({ id }) => id))),
  }
}

/** @throws StageError that names the line of the bill. */
function pricedWithPlaces(sheet: ReturnType<typeof readTariff>, set: BillSet): PricedBill[] {
  const priced: PricedBill[] = []
  try {
    for (const bill of priceBills(sheet, set)) {
      const printed = set.bills[priced.length]
      if (printed !== undefined) priced.push({ bill, printed })
    }
  } catch (error) {
    const at = set.bills[priced.length]
    if (error instanceof StageError && at !== undefined)
      throw new StageError(error.where, `${at.place}: ${error.message}`, error.fix)
    throw error
  }
  return priced
}

/** The printed days counted the other way. */
function otherDays(tariff: Tariff, set: BillSet, worst: PaidBill | undefined): Change[] {
  if (worst === undefined) return []
  const days: DayCount = set.days === 'both' ? 'last' : 'both'
  const sheet = readTariff(tariff)
  try {
    const bills = [...priceBills(sheet, { ...set, days })]
    if (!bills.every((bill, i) => set.bills[i] !== undefined && isSame(bill, set.bills[i], sheet.rounding))) return []
  } catch (error) {
    if (error instanceof StageError) return []
    throw error
  }
  return [{ path: '', found: SAYS_DAYS[set.days], fits: SAYS_DAYS[days], tariff, oddness: 0 }]
}

const keyOf = (base: string, { path }: Change): string => (path === '' ? '--days' : `${base}.${path}`)

function explanationOf(base: string, change: Change): ExplanationValues {
  const { found, fits, also } = change
  return { key: keyOf(base, change), found, fits, ...(also === undefined ? {} : { also_fits: [...also] }) }
}

function valuesOf({ bill, printed }: PricedBill, days: DayCount, suspect: string | null): CheckedBill {
  const lines = [...printed.lines].map(([line, usd]: [StatedLine, typeof printed.amountUsd]): BillLineCheck => {
    const computed = lineTotal(bill, line)
    return {
      line,
      computed_usd: computed.toNumber(),
      stated_usd: usd.toNumber(),
      difference_usd: computed.minus(usd).toNumber(),
    }
  })
  const wrong = lines.toSorted((a, b) => Math.abs(b.difference_usd) - Math.abs(a.difference_usd))[0]
  return {
    from: printed.from,
    to: printed.to,
    days: daysBetween(printed.from, printed.to) + (days === 'both' ? 1 : 0),
    computed_usd: bill.total.toNumber(),
    stated_usd: printed.amountUsd.toNumber(),
    difference_usd: bill.total.minus(printed.amountUsd).toNumber(),
    lines,
    wrong_line: wrong === undefined || wrong.difference_usd === 0 ? null : wrong.line,
    computed_lines: bill.lines.map(({ id, says, amount }) => ({ id, says, amount_usd: toCents(amount).toNumber() })),
    suspect,
  }
}
