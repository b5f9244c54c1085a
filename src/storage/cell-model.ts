import { LFP_CELL } from '../tables/storage/index.js'

/** Fractions of the new capacity that age and cycles have taken. */
export interface CellLoss {
  readonly calendar: number
  readonly cycle: number
}

/** What the model takes of a year of use. */
interface CellYear {
  readonly meanFilled: number
  readonly cycles: readonly { readonly depth: number; readonly count: number }[]
  readonly cRate: number
}

const SECONDS_PER_YEAR = 365 * 86_400
const ABSOLUTE_ZERO_C = -273.15

/** Calendar loss per square root of a second, of cells that stay `filled` (0 to 1) full. */
export function calendarRate(temperatureC: number, filled: number): number {
  const { k, activationJ, gasJ, referenceK, cubic, offset } = LFP_CELL.calendar
  const temperatureK = temperatureC - ABSOLUTE_ZERO_C
  const kT = k * Math.exp((-activationJ / gasJ) * (1 / temperatureK - 1 / referenceK))
  return kT * (cubic * (filled - 0.5) ** 3 + offset)
}

/** Loss per square root of a full cycle, a fraction, of cycles of one depth (0 to 1). */
export function cycleRate(cRate: number, depth: number): number {
  const { rate, rateOffset, cubic, middle, offset } = LFP_CELL.cycle
  return ((rate * cRate + rateOffset) * (cubic * (depth - middle) ** 3 + offset)) / 100
}

/**
 * Cells after one more year. Square-root laws grow from the loss that is there, so squares add up.
 *
 * @limits A model of cells, not of products; constant temperature; the two losses add.
 */
export function agedCell(before: CellLoss, temperatureC: number, year: CellYear): CellLoss {
  const calendar = Math.hypot(
    before.calendar,
    calendarRate(temperatureC, year.meanFilled) * Math.sqrt(SECONDS_PER_YEAR),
  )
  let square = before.cycle ** 2
  for (const { depth, count } of year.cycles) square += cycleRate(year.cRate, depth) ** 2 * count * depth
  return { calendar, cycle: Math.sqrt(square) }
}
