import type { Tariff } from '../../project/index.js'
import { editDistance } from '../../values/index.js'
import { StageError } from '../../worksheet/index.js'
import { readTariff, type RateSheet } from '../tariff/index.js'
import { alternativesOf } from './alternatives.js'
import { unknownsOf, type Change, type Unknown } from './changes.js'
import type { PaidBill } from './paid-bill.js'
import { isSame, lineTotal, priceAlone, priceBills, type BillSet } from './price-bills.js'

/** What one change explains. */
export interface Explained {
  readonly change: Change
  /** Bills that come out as printed. */
  readonly count: number
}

/** Halvings of the range of a number: a price per kWh is then known to a millionth. */
const HALVINGS = 24
const MOST_DIGITS = 6
/** Lines that are rounded each make the total go up and down by a cent or two on its way. */
const SLACK_USD = 0.025
/** Values that are tried of one number of digits. */
const MOST_TRIED = 100

/**
 * Looks for single changes of a tariff after which every bill comes out to the cent.
 *
 * @param worst The bill that is off the most.
 * @returns Those that explain all, the likeliest slip first; without one, the one that explains most bills.
 */
export function searchChanges(
  tariff: Tariff,
  set: BillSet,
  worst: PaidBill,
): { all: Change[]; most: Explained | undefined } {
  const fitting: Change[] = []
  let most: Explained | undefined
  const judge = (change: Change): boolean => {
    const count = countSame(change.tariff, set)
    if (count > (most?.count ?? 0)) most = { change, count }
    if (count === set.bills.length) fitting.push(change)
    return count === set.bills.length
  }
  for (const unknown of unknownsOf(tariff)) judgeValues(unknown, set, worst, judge)
  for (const change of alternativesOf(tariff, groupsOf(tariff, set), set.solar))
    if (explainsAlone(change.tariff, set, worst)) judge(change)
  return {
    all: onePerKey(fitting).toSorted((a, b) => a.oddness - b.oddness),
    most: fitting.length > 0 ? undefined : most,
  }
}

/** The likeliest change of each key, with the span of the others that fit. */
function onePerKey(changes: readonly Change[]): Change[] {
  const best = new Map<string, Change[]>()
  for (const change of changes) best.set(change.path, [...(best.get(change.path) ?? []), change])
  return [...best.values()].flatMap((own) => {
    const [first] = own.toSorted((a, b) => a.oddness - b.oddness)
    const fits = own.map((one) => one.fits).toSorted((a, b) => (a < b ? -1 : 1))
    const [from, to] = [fits[0], fits.at(-1)]
    if (first === undefined) return []
    return [own.length > 1 && from !== undefined && to !== undefined ? { ...first, also: [from, to] as const } : first]
  })
}

function sheetOf(tariff: Tariff): RateSheet | undefined {
  try {
    return readTariff(tariff)
  } catch (error) {
    if (error instanceof StageError) return undefined
    throw error
  }
}

/** Bills that come out as printed; 0 for a tariff that cannot be. */
export function countSame(tariff: Tariff, set: BillSet): number {
  const sheet = sheetOf(tariff)
  if (sheet === undefined) return 0
  let [count, i] = [0, 0]
  try {
    for (const bill of priceBills(sheet, set)) {
      const paid = set.bills[i++]
      if (paid !== undefined && isSame(bill, paid, sheet.rounding)) count += 1
    }
  } catch (error) {
    if (error instanceof StageError) return 0
    throw error
  }
  return count
}

/** A quick look, so that most changes need no look at the other bills. With banks, no bill stands alone. */
function explainsAlone(tariff: Tariff, set: BillSet, worst: PaidBill): boolean {
  if (set.solar) return true
  const sheet = sheetOf(tariff)
  return sheet !== undefined && isSame(priceAlone(sheet, set, worst), worst, sheet.rounding)
}

/** Tries the roundest values of a number with which the worst bill comes out as printed. */
function judgeValues(unknown: Unknown, set: BillSet, worst: PaidBill, judge: (change: Change) => boolean): void {
  const at = set.bills.indexOf(worst)
  const totalOf = (value: number): number | undefined => {
    const sheet = sheetOf(unknown.set(value))
    if (sheet === undefined) return undefined
    if (!set.solar) return priceAlone(sheet, set, worst).total.toNumber()
    let i = 0
    for (const bill of priceBills(sheet, set)) if (i++ === at) return bill.total.toNumber()
    return undefined
  }
  const span = valuesGiving(totalOf, unknown, worst.amountUsd.toNumber())
  if (span === undefined) return
  const own = digitsOf(unknown.found ?? 0)
  for (let digits = 0; digits <= MOST_DIGITS; digits++) {
    const step = 10 ** -digits
    const first = Math.ceil((span[0] - 1e-7) / step)
    const last = Math.min(Math.floor((span[1] + 1e-7) / step), first + MOST_TRIED)
    let found = false
    for (let n = first; n <= last; n++) {
      const value = Number((n * step).toFixed(digits))
      if (value === unknown.found) continue
      const oddness = unknown.oddness + Math.max(0, digits - Math.max(own, 2)) + far(unknown.found, value)
      const change = { path: unknown.path, found: unknown.found, fits: value, tariff: unknown.set(value), oddness }
      if (judge(change)) found = true
    }
    if (found) return
  }
}

/** A slip is mostly one digit, or two in the wrong order; anything else is a choice that was made wrongly. */
function far(found: number | null, value: number): number {
  return found !== null && editDistance(String(found), String(value)) <= 1 ? 0 : 0.7
}

function digitsOf(value: number): number {
  return /\.(\d+)/u.exec(String(value))?.[1]?.length ?? 0
}

/** The farthest value towards an end of the range that a tariff can have: ends of tiers lie between those beside them. */
function reach(totalOf: (value: number) => number | undefined, found: number | null, end: number): number {
  if (found === null || totalOf(end) !== undefined) return end
  let [can, cannot] = [found, end]
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (can + cannot) / 2
    if (totalOf(middle) === undefined) cannot = middle
    else can = middle
  }
  return can
}

/** From and to which value a bill comes to a total; it only rises or only falls with the value. */
function valuesGiving(
  totalOf: (value: number) => number | undefined,
  { found, low, high }: Unknown,
  total: number,
): readonly [number, number] | undefined {
  const [from, to] = [reach(totalOf, found, low), reach(totalOf, found, high)]
  const [atFrom, atTo] = [totalOf(from), totalOf(to)]
  if (atFrom === undefined || atTo === undefined || atFrom === atTo) return undefined
  const rises = atTo > atFrom
  if (total < Math.min(atFrom, atTo) - SLACK_USD || total > Math.max(atFrom, atTo) + SLACK_USD) return undefined
  const edge = (isBefore: (one: number) => boolean): number => {
    let [a, b] = [from, to]
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (a + b) / 2
      if (isBefore(totalOf(middle) ?? Number.NaN)) a = middle
      else b = middle
    }
    return (a + b) / 2
  }
  const least = edge((one) => (rises ? one < total - SLACK_USD : one > total + SLACK_USD))
  const greatest = edge((one) => (rises ? one <= total + SLACK_USD : one >= total - SLACK_USD))
  return least <= greatest + 1e-6 ? [least, greatest] : undefined
}

const TAXED = ['fixed', 'minimum', 'energy', 'riders', 'demand'] as const

/** Groups that any of the bills has lines of: what a tax may be on. */
function groupsOf(tariff: Tariff, set: BillSet): string[] {
  const sheet = sheetOf(tariff)
  const bills = sheet === undefined ? [] : [...priceBills(sheet, set)]
  return TAXED.filter((group) => bills.some((bill) => !lineTotal(bill, group).eq(0)))
}
