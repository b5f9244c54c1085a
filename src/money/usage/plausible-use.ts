import { HOUSE_USE } from '../../tables/money/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import type { UsageYear } from './usage-year.js'
import type { KilowattHours } from '../../values/index.js'

const shown = (kwh: KilowattHours): string => String(Number(kwh.toPrecision(7)))

/**
 * Holds the use of a year against what a house can use, and each month against the others.
 *
 * @param where Path of the use in the project file.
 * @throws StageError outside the wide limits: mostly another unit, or readings that were added up wrongly.
 */
export function checkUse({ values, usageKwh }: UsageYear, where: string, worksheet: Worksheet): void {
  const { annual_kwh: annual, monthly_kwh: monthly } = values
  const { most, usual, hourKwh, source } = HOUSE_USE
  if (!(annual >= most.lowKwh && annual <= most.highKwh)) {
    throw new StageError(
      where,
      `the house uses ${shown(annual)} kWh a year; a house uses ${String(most.lowKwh)} to ${String(most.highKwh)} kWh`,
      'Check the unit (kWh, not Wh or MWh) and whether the values are the use of each month or interval, not readings of the meter.',
    )
  }
  if (annual < usual.lowKwh || annual > usual.highKwh) {
    worksheet.find({
      severity: 'warning',
      id: 'usage.implausible',
      message: `the house uses ${shown(annual)} kWh a year, outside the usual ${String(usual.lowKwh)} to ${String(usual.highKwh)} kWh`,
      where,
      source,
      fix: 'Compare with the yearly total on a bill; savings and payback follow it.',
    })
  }
  const largest = usageKwh.reduce((a, b) => Math.max(a, b), 0)
  if (largest > hourKwh) {
    worksheet.find({
      severity: 'warning',
      id: 'usage.hour-implausible',
      message: `the house uses ${shown(largest)} kWh in one hour, more than the ${String(hourKwh)} kWh that 200 A at 240 V carry`,
      where,
      source,
      fix: 'Look for a wrong reading in the file, and at its unit.',
    })
  }
  const odd = unlikeMonths(monthly)
  if (odd.length === 0) return
  worksheet.find({
    severity: 'warning',
    id: 'usage.month-unlike',
    message: `${odd.map((month) => `month ${String(month)} is ${shown(monthly[month - 1] ?? 0)} kWh`).join(', ')}, far from the mean of the other months`,
    where,
    source,
    fix: 'Compare with the bill of that month: a digit too many or too few looks like this.',
  })
}

/** Numbers of the months that lie far from the mean of the others. */
function unlikeMonths(monthly: readonly number[]): number[] {
  const { lowShare, highShare } = HOUSE_USE.month
  const all = monthly.reduce((sum, kwh) => sum + kwh, 0)
  return monthly.flatMap((kwh, i) => {
    const mean = (all - kwh) / (monthly.length - 1)
    return kwh < lowShare * mean || kwh > highShare * mean ? [i + 1] : []
  })
}
